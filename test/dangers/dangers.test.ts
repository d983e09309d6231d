import { describe, expect, it } from 'vitest';
import { atCommandLine } from './atCommandLine.ts';
import { dangers } from './cases.ts';
import type { Danger, Way } from './danger.ts';
import { hold } from './held.ts';
import type { Came } from './made.ts';
import { throughHttp } from './throughHttp.ts';

const ways: Readonly<Record<Way, (danger: Danger) => Promise<Came>>> = {
  'command-line': atCommandLine,
  http: throughHttp,
};

describe.each(['command-line', 'http'] as const)('what could hurt someone, by %s', (way) => {
  const tried = dangers.filter(({ only = way }) => only === way);
  it.each(tried.map((danger) => [`${danger.door}: ${danger.what}`, danger] as const))(
    '%s',
    async (_, danger) => {
      const came = await ways[way](danger);
      if ('refused' in danger.then) {
        const { refused } = danger.then;
        expect(came.refused).toBe(typeof refused === 'string' ? refused : refused[way]);
        expect(came.written).toEqual([]);
      } else {
        expect(came.refused).toBeUndefined();
        hold(came, danger.then.made);
      }
    },
  );
});
