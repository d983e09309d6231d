import { z } from 'zod';
import { done, refused, type Outcome } from '../core/problem.ts';
import { issueToProblem } from './issueToProblem.ts';

// Pages are served with a policy that forbids code made from text; without this zod tries it once and is reported.
z.config({ jitless: true });

/** Text to JSON. Nothing is said of its shape. */
export const parseJsonText = (text: string): Outcome<unknown> => {
  try {
    const json: unknown = JSON.parse(text.replace(/^\uFEFF/, ''));
    return done(json);
  } catch (error) {
    return refused('file-not-json', {
      detail: error instanceof Error ? error.message : 'unreadable',
    });
  }
};

/**
 * The border: something from outside against a schema. Out comes a value of the schema's type, or the one problem that
 * is best mended first: what, where (`cells[3].speedMmPerS`) and what was wanted. The message of a schema's own
 * refinement is shown as the reason, so write it as the end of a sentence: 'power must rise from point to point'.
 */
export const parseWith = <Schema extends z.ZodType>(
  schema: Schema,
  json: unknown,
): Outcome<z.output<Schema>> => {
  const parsed = schema.safeParse(json);
  if (parsed.success) return done(parsed.data);
  const first = [...parsed.error.issues].sort((a, b) => urgency(a) - urgency(b))[0];
  if (first === undefined) throw new Error('A schema refused a value without saying why.');
  return { ok: false, problem: issueToProblem(schema, json, first) };
};

/** An unknown version explains all else; an unknown key often is a missing one misspelt. */
const urgency = (issue: z.core.$ZodIssue): number => {
  if (issue.path.length === 1 && issue.path[0] === 'version') return 0;
  return issue.code === 'unrecognized_keys' ? 1 : 2;
};
