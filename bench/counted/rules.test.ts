import { describe, expect, it } from 'vitest';
import { tenthOf } from '../../test/everyCase.ts';
import { brokenRules } from './rules.ts';

/** The first of those that the night draws. */
const seeds = Array.from({ length: tenthOf(100) }, (_, i) => 1 + i);

describe('studies with counted orders', () => {
  it('have an answer; no bad order raises it, it never stands at a speed that failed, no clean one lowers it', () => {
    expect(
      seeds.flatMap((seed) => brokenRules(seed).map((rule) => `${String(seed)}: ${rule}`)),
    ).toEqual([]);
  }, 240_000);
});
