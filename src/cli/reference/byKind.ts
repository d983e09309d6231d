import type { z } from 'zod';

import type { Answerer } from './referenceFile.ts';

/** Answers by the input's `kind`: each kind's schema reads the input and turns it into the answer. */
export const byKind =
  (kinds: Readonly<Record<string, z.ZodType<object>>>): Answerer =>
  (input) => {
    const { kind } = input;
    if (typeof kind !== 'string' || !Object.hasOwn(kinds, kind)) return undefined;
    return kinds[kind]?.parse(input);
  };
