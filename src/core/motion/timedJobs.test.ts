import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { boxAround } from '../path/box.ts';
import type { Polyline } from '../path/polyline.ts';
import { jobsToTime, timedJobKinds, type JobToTime } from './timedJobs.ts';

const linesOf = ({ moves }: JobToTime): readonly Polyline[] =>
  moves.flatMap((move) => (move.kind === 'cut' ? [move.points] : []));

const jobsOn = (widthMm: number, heightMm: number, fastest = 100) =>
  jobsToTime({ bed: { widthMm, heightMm }, speedRangeMmPerS: [1, fastest] });

describe('jobs to be timed', () => {
  it('stay within four fifths of the bed, from its lower left corner, and never past 300 by 200 mm', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 100, max: 2000 }),
        fc.integer({ min: 60, max: 2000 }),
        (widthMm, heightMm) => {
          for (const job of jobsOn(widthMm, heightMm)) {
            const box = boxAround(linesOf(job));
            expect(box?.leftMm, job.kind).toBeGreaterThan(-1e-9);
            expect(box?.bottomMm, job.kind).toBeGreaterThan(-1e-9);
            expect(box?.rightMm, job.kind).toBeLessThan(Math.min(300, 0.8 * widthMm) + 1e-6);
            expect(box?.topMm, job.kind).toBeLessThan(Math.min(200, 0.8 * heightMm) + 1e-6);
          }
        },
      ),
    );
  });

  it('run to the far corner where travel is what they bring out, in rows of 5 mm where straight runs are', () => {
    const [far, , , long] = jobsOn(500, 300);
    expect(boxAround(linesOf(far ?? { kind: 'far-travel', moves: [] }))?.topMm).toBe(200);
    const [rows = []] = linesOf(long ?? { kind: 'long-runs', moves: [] });
    // Eight rows of 300 mm there and back: each begins where the last one ended, 5 mm further up.
    expect(rows.map(([x, y]) => `${String(x)} ${String(y)}`).slice(0, 5)).toEqual([
      '0 0',
      '300 0',
      '300 5',
      '0 5',
      '0 10',
    ]);
    expect(rows).toHaveLength(16);
    // A bed with room for 25.6 mm has five rows.
    const [, , , short] = jobsOn(500, 32);
    expect(linesOf(short ?? { kind: 'long-runs', moves: [] })[0]).toHaveLength(10);
  });

  it('come in the order of their worth, as many as are asked for, and no faster than the machine', () => {
    expect(jobsOn(500, 300).map(({ kind }) => kind)).toEqual([...timedJobKinds]);
    const machine = { speedRangeMmPerS: [1, 20] as const };
    const three = jobsToTime(machine, 3);
    expect(three.map(({ kind }) => kind)).toEqual(timedJobKinds.slice(0, 3));
    for (const { moves } of three)
      for (const move of moves) if (move.kind === 'cut') expect(move.speedMmPerS).toBe(20);
    expect(jobsOn(500, 300)[0]?.moves[0]).toMatchObject({ speedMmPerS: 80 });
  });
});
