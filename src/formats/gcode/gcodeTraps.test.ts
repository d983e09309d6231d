import { param } from '../../../test/samples/param.ts';
import { describe, expect, it } from 'vitest';

import { checkToolpath } from '../../core/filecheck/checkToolpath.ts';
import { lengthMm } from '../../core/path/polyline.ts';
import { readGcode } from './readGcode.ts';

/** What a file is found to have, with the line of each. */
const found = (text: string): readonly string[] => {
  const read = readGcode(text);
  if (!read.ok) return [`${read.problem.code} ${String(param(read.problem, 'line'))}`];
  return checkToolpath(read.value).findings.map(({ code, severity, params }) =>
    [severity, code, param({ code, params }, 'where')]
      .filter((part) => part !== undefined)
      .join(' '),
  );
};
const clean = '(S1000 is 100 pct)\nG21 G90\nG0 X1 Y1\nM3 S300\nG1 X9 F600\nM5\nM2';
const changed = (from: string, to: string): readonly string[] => {
  const text = clean.replace(from, to);
  if (text === clean) throw new Error(`${from} is not there`);
  return found(text);
};

// What programs are found to have done at machines (common practice, no source); the rules are those of NIST RS274/NGC.
describe('a trap in a program', () => {
  it('is not found where there is none', () => {
    expect(found(clean)).toEqual([]);
  });

  it('of modes: steps or inches left on, units changed on the way, nothing said at all', () => {
    expect(changed('M5\nM2', 'M5\nG91')).toContain('remark check-left-relative');
    expect(changed('M5\nM2', 'M5\nG20')).toEqual([
      'remark check-left-inches',
      'remark check-program-unended',
    ]);
    expect(changed('G1 X9', 'G20 G1 X3')).toEqual([
      'remark check-units-mixed 5',
      'remark check-left-inches',
    ]);
    expect(changed('G21 G90\n', '')).toEqual([
      'remark check-units-unsaid',
      'remark check-distance-unsaid',
    ]);
  });

  it('of the beam: on in travel, left on, standing, in two ways', () => {
    expect(changed('G0 X1 Y1\nM3 S300', 'M3 S300\nG0 X1 Y1')).toEqual([
      'fault check-beam-on-in-travel 4',
    ]);
    expect(changed('G0 X1 Y1\nM3 S300', 'M4 S300\nG0 X1 Y1')).toEqual([
      'remark check-beam-on-in-travel 4',
    ]);
    expect(changed('M5\nM2', '')).toEqual([
      'fault check-beam-left-on',
      'remark check-program-unended',
    ]);
    expect(changed('M5', 'G4 P2\nM5')).toEqual(['fault check-beam-on-standing 6']);
    expect(changed('M5', 'G1 Z-5\nM5')).toEqual(['fault check-beam-on-standing 6']);
    expect(changed('M5', 'M4\nX1\nM5')).toEqual(['remark check-beam-modes-mixed 7']);
    // Waiting without the beam is nobody's trap.
    expect(changed('M5', 'M5\nG4 P2')).toEqual([]);
  });

  it('of power: beyond the scale, on another scale, below nothing', () => {
    expect(changed('S300', 'S1100')).toEqual(['fault check-power-above-scale 5']);
    expect(changed('S300', 'S0.3')).toEqual(['remark check-power-hardly-any 5']);
    expect(changed('S300', 'S-1')).toEqual(['gcode-unreadable 4']);
    expect(changed('S300', 'S0')).toEqual(['fault check-nothing-cut']);
    expect(changed('(S1000 is 100 pct)\n', '')).toEqual(['remark check-power-scale-unknown']);
  });

  it('of the zero: moved here, set or chosen in the machine', () => {
    expect(changed('G0', 'G92 X0 Y0\nG0')).toEqual(['remark check-zero-moved 3']);
    expect(changed('G0', 'G10 L2 P1 X5 Y5\nG0')).toEqual(['remark check-zero-moved 3']);
    expect(changed('G0', 'G55 G0')).toEqual(['remark check-zero-moved 3']);
    expect(changed('G0', 'G54 G0')).toEqual([]);
    expect(changed('M5\nM2', 'G92 X5\nM5')).toContain('remark check-offset-in-force');
  });

  it('of feed and arcs: a program that cannot be carried out, and where', () => {
    expect(changed(' F600', '')).toEqual(['gcode-unreadable 5']);
    expect(changed('F600', 'F0')).toEqual(['gcode-unreadable 5']);
    expect(changed('G1 X9', 'G2 X9 Y1 I3 J0')).toEqual(['gcode-unreadable 5']);
    expect(changed('G1 X9', 'G2 X9 R3')).toEqual(['gcode-unreadable 5']);
    expect(changed('G1 X9', 'G2 X9')).toEqual(['gcode-unreadable 5']);
    expect(changed('M5', 'G4\nM5')).toEqual(['gcode-unreadable 6']);
  });
});

describe('arcs', () => {
  const cut = (move: string) => {
    const read = readGcode(clean.replace('G1 X9', move));
    if (!read.ok) throw new Error(read.problem.code);
    return read.value.lines[0]?.points ?? [];
  };
  it('by centre and by radius are the same half circle of 4 mm, clockwise above and anticlockwise below', () => {
    for (const [move, top, bottom] of [
      ['G2 X9 Y1 I4', 5, 1],
      ['G2 X9 Y1 R4', 5, 1],
      ['G3 X9 Y1 I4', 1, -3],
      ['G3 X9 Y1 R4', 1, -3],
    ] as const) {
      const points = cut(move);
      expect(lengthMm(points)).toBeCloseTo(4 * Math.PI, 1);
      expect(Math.max(...points.map(([, y]) => y))).toBeCloseTo(top, 1);
      expect(Math.min(...points.map(([, y]) => y))).toBeCloseTo(bottom, 1);
    }
  });

  it('by a radius below zero go the long way round (NIST RS274/NGC 3.5.3.1)', () => {
    const [short, long] = [cut('G2 X9 Y1 R5'), cut('G2 X9 Y1 R-5')];
    expect(lengthMm(short) + lengthMm(long)).toBeCloseTo(10 * Math.PI, 1);
    expect(lengthMm(long)).toBeGreaterThan(lengthMm(short));
  });

  it('without an end are whole circles', () => {
    expect(lengthMm(cut('G3 I4'))).toBeCloseTo(8 * Math.PI, 1);
  });
});
