import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import type { Grade } from '../reading/grade.ts';
import { evidenceIn, fastestOutAt } from './evidence.ts';
import { fitStudy } from './fitStudy.ts';

const graded = (out: boolean): Grade => (out ? 'out' : 'stays');

/** Half come out at `once` in one pass, and at `twice` in two. */
const card = (once: number, twice: number) =>
  [0.6, 0.7, 0.8, 0.9, 1.1, 1.25, 1.5].flatMap((part) =>
    [1, 2].flatMap((passes) =>
      [0, 1].map(() => ({
        powerPct: 30,
        passes,
        speedMmPerS: Math.round(2 * part * (passes === 1 ? once : twice)) / 2,
        grade: graded(part < 1),
        sheet: '1',
      })),
    ),
  );

const answerTo = (once: number, twice: number) =>
  fitStudy(plainStudy({ cells: card(once, twice), ask: { powerPct: 30 } }));

describe('whether more passes pay', () => {
  it('is not spoken of where every cell was cut in one', () => {
    const cells = card(12, 24).filter((cell) => cell.passes === 1);
    expect(fitStudy(plainStudy({ cells, ask: { powerPct: 30 } })).morePasses).toBeUndefined();
  });

  it('is yes where two run more than twice as fast, and no where they do not', () => {
    expect(answerTo(12, 33).morePasses?.quickerPct ?? 0).toBeGreaterThan(5);
    const [slower] = [answerTo(12, 18).morePasses];
    expect(slower?.passes).toBe(2);
    expect(slower?.quickerPct ?? 0).toBeLessThan(-10);
  });

  it('never lets what came out in two passes vouch for one', () => {
    const cells = card(12, 24);
    const found = evidenceIn(plainStudy({ cells }));
    const fastest = (passes: number): number =>
      Math.max(
        ...cells
          .filter((cell) => cell.grade === 'out' && cell.passes <= passes)
          .map((cell) => cell.speedMmPerS),
      );
    expect(fastestOutAt(found, 30)).toBe(fastest(1));
    expect(fastestOutAt(found, 30, 2)).toBe(fastest(2));
    expect(answerTo(12, 24).recommended?.speedMmPerS ?? 99).toBeLessThanOrEqual(fastest(1));
  });
});
