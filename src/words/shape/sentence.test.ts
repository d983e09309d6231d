import { describe, expect, expectTypeOf, it } from 'vitest';
import {
  problemOf,
  refused,
  type ParamsOf,
  type Problem,
  type ProblemCode,
} from '../../core/problem.ts';
import type { StoreCode } from '../../core/problems/store.ts';
import type { Sentences } from './sentence.ts';

/*
 * What does not compile is tested by the compiler: each `@ts-expect-error` fails the check of types where the line below it
 * compiles after all.
 */
describe('a problem', () => {
  it('takes what its code carries', () => {
    expectTypeOf<ParamsOf<'tally-not-found'>>().toEqualTypeOf<{ readonly id: string }>();
    expectTypeOf<ParamsOf<'meter-flickers'>>().toEqualTypeOf<{ readonly powerPct: number }>();
    expectTypeOf<ParamsOf<'fires-above-rated'>['part']>().toEqualTypeOf<
      'cell' | 'marks' | 'trusted' | 'line' | 'setting'
    >();
    expect(problemOf('meter-flickers', { powerPct: 20 })).toEqual({
      code: 'meter-flickers',
      params: { powerPct: 20 },
    });
    expect(refused('sum-not-wanted')).toEqual({
      ok: false,
      problem: { code: 'sum-not-wanted', params: {} },
    });
  });

  it('takes nothing else', () => {
    // @ts-expect-error nothing of what it carries
    problemOf('meter-flickers');
    // @ts-expect-error a part of it is missing
    problemOf('card-code-changed', { card: 'LARK' });
    // @ts-expect-error of the wrong type
    problemOf('meter-flickers', { powerPct: '20' });
    // @ts-expect-error by another name
    problemOf('meter-flickers', { power: 20 });
    // @ts-expect-error more than it carries
    problemOf('meter-flickers', { powerPct: 20, currentMa: 4 });
    // @ts-expect-error it carries nothing
    problemOf('sum-not-wanted', { seconds: 5 });
    // @ts-expect-error none of the names
    problemOf('fires-above-machine', { part: 'window', powerPct: 50, most: 40 });
    // @ts-expect-error no such code
    refused('never-heard-of', {});
    const written: Problem = {
      code: 'meter-flickers',
      // @ts-expect-error the same for a problem that is written out
      params: { power: 20 },
    };
    expect(written.code).toBe('meter-flickers');
  });
});

describe('a sentence', () => {
  type Two = 'meter-flickers' | 'check-label-differs';
  const label = { message: () => 'It differs.', remedy: () => 'Look.' };

  it('may use what its code carries, figures as text', () => {
    const words = {
      'meter-flickers': {
        message: (p) => {
          expectTypeOf(p.powerPct).toEqualTypeOf<string>();
          return `It flickers at ${p.powerPct} %.`;
        },
        remedy: () => 'Look.',
      },
      'check-label-differs': {
        message: ({ cell }) => {
          expectTypeOf(cell).toEqualTypeOf<string | undefined>();
          return 'It differs.';
        },
        remedy: () => 'Look.',
      },
    } satisfies Sentences<Two>;
    expect(words['meter-flickers'].message({ powerPct: '20' })).toBe('It flickers at 20 %.');
  });

  it('may use nothing else', () => {
    const words = {
      'meter-flickers': {
        // @ts-expect-error the code does not carry it
        message: (p) => `It flickers at ${p.currentMa} mA.`,
        remedy: () => 'Look.',
      },
      'check-label-differs': label,
    } satisfies Sentences<Two>;
    expect(Object.keys(words)).toHaveLength(2);
  });

  it('is missing for no code, and there for none that nobody raises', () => {
    // @ts-expect-error one has none
    const tooFew = { 'check-label-differs': label } satisfies Sentences<Two>;
    const tooMany = {
      'check-label-differs': label,
      // @ts-expect-error this is of no code of theirs
      'check-odd': label,
    } satisfies Sentences<'check-label-differs'>;
    // @ts-expect-error one area is not all of them
    const all = { 'check-label-differs': label } satisfies Sentences<ProblemCode>;
    expect([tooFew, tooMany, all]).toHaveLength(3);
    expectTypeOf<StoreCode>().toExtend<ProblemCode>();
  });
});
