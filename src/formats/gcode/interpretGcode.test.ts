import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { GcodeProgram } from './gcodeProgram.ts';
import { interpretGcode } from './interpretGcode.ts';

const run = (text: string): GcodeProgram => {
  const outcome = interpretGcode(text);
  if (!outcome.ok) throw new Error(`line ${String(outcome.error.line)}: ${outcome.error.why}`);
  return outcome.program;
};
const whyNot = (text: string): string => {
  const outcome = interpretGcode(text);
  return outcome.ok ? 'nothing' : outcome.error.why;
};

// The reference cases of test/reference/t16_rs274_ngc.json are run by test/reference; here is what they leave out.
describe('a G-code program', () => {
  it('keeps its machine positions when G92 moves the zero (NIST RS274/NGC 3.5.18)', () => {
    const { moves, final } = run('G21 G90\nG0 X10 Y10\nG92 X0 Y0\nG1 X5 F100\nG92.1\nG1 X5\n');
    expect(moves.map(({ end }) => end)).toEqual([
      [10, 10, 0],
      [15, 10, 0],
      [5, 10, 0],
    ]);
    expect(final.offsetMm).toEqual([0, 0, 0]);
  });

  it('takes inverse time: F2 is half a minute for the move, whatever its length', () => {
    const { moves } = run('G93\nG1 X10 F2\nX20 F4');
    expect(moves.map(({ minutes }) => minutes)).toEqual([0.5, 0.25]);
    expect(whyNot('G93\nG1 X10 F2\nX20')).toBe('inverse time motion without F');
  });

  it('turns arcs in all three planes alike: a quarter of a circle of 10 mm is 15.708 mm', () => {
    for (const program of [
      'G17\nG3 X-10 Y10 I-10',
      'G18\nG3 Z-10 X10 K-10',
      'G19\nG3 Y-10 Z10 J-10',
    ]) {
      expect(run(`${program} F100`).moves[0]?.lengthMm).toBeCloseTo(5 * Math.PI, 9);
    }
    expect(run('G17\nG3 X-10 Y10 Z5 I-10 F100').moves[0]?.lengthMm).toBeCloseTo(
      Math.hypot(5 * Math.PI, 5),
      9,
    );
  });

  it('notes words that mean nothing to a laser, and goes on', () => {
    const { unknown, moves } = run('M106 P1\nT1 M6\nG64\nG1 X5 F100');
    expect(unknown).toEqual([
      { line: 1, word: 'M106' },
      { line: 2, word: 'M6' },
    ]);
    expect(moves).toHaveLength(1);
  });

  it('says what is wrong where it cannot go on', () => {
    expect(whyNot('G1 X5 X6 F100')).toBe('two X words on one line');
    expect(whyNot('M3 M5')).toBe('two M words of group spindle on one line');
    expect(whyNot('G4')).toBe('dwell without P');
    expect(whyNot('G1 X')).toMatch(/^cannot read/);
    expect(run('G1 X1e5 F100').unknown).toEqual([{ line: 1, word: 'E5' }]);
    expect(whyNot('G1 X99999999999 F1')).toBe('X is beyond all bounds');
    expect(whyNot('(open')).toBe('comment not closed');
    expect(whyNot('G2 X5 R1 F100')).toBe('arc radius too small to reach the end');
  });

  it('draws the same in inches as in mm (metamorphic)', () => {
    const points = fc.array(
      fc.tuple(fc.integer({ min: -200, max: 200 }), fc.integer({ min: -200, max: 200 })),
      { minLength: 1, maxLength: 20 },
    );
    fc.assert(
      fc.property(points, (xy) => {
        const program = (unit: number): string =>
          xy
            .map(
              ([x, y]) =>
                `G1 X${(x / unit).toFixed(8)} Y${(y / unit).toFixed(8)} F${(600 / unit).toFixed(6)}`,
            )
            .join('\n');
        const mm = run(`G21\n${program(1)}`).moves;
        const inches = run(`G20\n${program(25.4)}`).moves;
        mm.forEach(({ end, feedMmPerMin }, i) => {
          expect(inches[i]?.end[0]).toBeCloseTo(end[0], 5);
          expect(inches[i]?.end[1]).toBeCloseTo(end[1], 5);
          expect(inches[i]?.feedMmPerMin).toBeCloseTo(feedMmPerMin ?? 0, 3);
        });
      }),
    );
  });

  it('never throws, whatever the text', () => {
    const sign = fc.constantFrom(...Array.from('GMXYZIJKRFSPN0123456789.-+ ()\n;%/'));
    fc.assert(
      fc.property(fc.string({ unit: sign, maxLength: 200 }), (text) => {
        const outcome = interpretGcode(text);
        if (outcome.ok) {
          for (const { end, lengthMm } of outcome.program.moves) {
            expect([...end, lengthMm].every(Number.isFinite)).toBe(true);
          }
        }
      }),
      { numRuns: 500 },
    );
  });
});
