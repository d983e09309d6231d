import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import { explainStudy } from './explain.ts';
import { whyPicture } from './whyPicture.ts';

const rung = (
  powerPct: number,
  speedMmPerS: number,
  ...grades: readonly ('out' | 'hangs' | 'stays')[]
) => grades.map((grade) => ({ powerPct, speedMmPerS, grade, sheet: 's1' }));
const study = plainStudy({
  cells: [
    ...rung(30, 12, 'out', 'out'),
    ...rung(30, 15, 'out', 'hangs'),
    ...rung(30, 18, 'stays', 'stays'),
    ...rung(40, 16, 'out', 'out', 'out'),
    ...rung(40, 24, 'stays', 'stays'),
  ],
  ask: { powerPct: 30 },
});
const { speed } = explainStudy(study);
if (speed === undefined) throw new Error('this study has an answer');
const picture = whyPicture(study, speed);

describe('the picture of what carries an answer', () => {
  it('shows every graded cell once, none upon another', () => {
    expect(picture.marks).toHaveLength(study.cells.length);
    const places = picture.marks.map(({ x, y }) => `${x.toFixed(6)}/${y.toFixed(6)}`);
    expect(new Set(places).size).toBe(places.length);
  });

  it('puts faster cells further right, each in the band of its power', () => {
    const sorted = [...picture.marks].sort((a, b) => a.speedMmPerS - b.speedMmPerS);
    expect([...picture.marks].sort((a, b) => a.x - b.x)).toEqual(sorted);
    expect(picture.bands.map(({ powerPct }) => powerPct)).toEqual([40, 30]);
    for (const mark of picture.marks) {
      const band = picture.bands.find(({ powerPct }) => powerPct === mark.powerPct);
      expect(mark.y).toBeGreaterThan(band?.y ?? Infinity);
      expect(mark.y).toBeLessThan((band?.y ?? 0) + (band?.steps ?? 0));
    }
  });

  it('gives the largest ring to the cell that moves the answer most', () => {
    const shifts = speed.cells.map((left) => Math.abs(left?.shiftPct ?? 0));
    const most = shifts.indexOf(Math.max(...shifts));
    expect(picture.marks[most]?.size).toBe(1);
    for (const { size, x } of picture.marks) {
      expect(size).toBeGreaterThanOrEqual(0);
      expect(size).toBeLessThanOrEqual(1);
      expect(x).toBeGreaterThan(0);
      expect(x).toBeLessThan(1);
    }
  });
});
