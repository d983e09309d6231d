import { describe, expect, it } from 'vitest';
import { plainDialect } from '../../../core/dialect/gcodeDialect.ts';
import { readOwnLines } from './ownLines.ts';

describe('lines of G-code of one’s own', () => {
  it('are taken as they are written, empty ones passed over', () => {
    expect(readOwnLines(' G54 \n\n(water on)\nM8\n')).toEqual({
      ok: true,
      value: ['G54', '(water on)', 'M8'],
    });
    expect(readOwnLines('')).toEqual({ ok: true, value: [] });
    const { closing } = plainDialect;
    expect(readOwnLines(closing.join('\n'))).toEqual({ ok: true, value: closing });
  });

  // RS-274: M3 and M4 start the spindle, which is the beam here; M30 ends the program.
  it.each(['M3', 'm03 S200', 'G1 X5 M4S10', 'M 3', 'N10 M3.0'])(
    'may not light the beam: %s',
    (line) => {
      expect(readOwnLines(`G21\n${line}`)).toEqual({
        ok: false,
        problem: { code: 'line-not-own-gcode', params: { text: line } },
      });
    },
  );

  // M62 to M68 are outputs in several dialects of RS-274, by the manuals of open-source controllers; M66 is an input.
  it.each([
    ['M62 P0', 'gcode-line-switches-output'],
    ['m 068 E0 Q5', 'gcode-line-switches-output'],
    ['M106', 'gcode-line-switches-output'],
    ['M42 P4 S255', 'gcode-line-switches-output'],
    ['M+3 S900', 'line-not-own-gcode'],
    ['M[1+2]', 'gcode-line-hides-words'],
    ['M#1', 'gcode-line-hides-words'],
    ['o<light> call', 'gcode-line-hides-words'],
    ['M98 P7', 'gcode-line-hides-words'],
    ['$32 = 0', 'gcode-line-sets-controller'],
  ])('may not light it by another way: %s', (line, code) => {
    expect(readOwnLines(line)).toEqual({ ok: false, problem: { code, params: { text: line } } });
  });

  it.each(['M66 P0 L3 Q5', 'M107', 'M7', 'G0 X62', 'M84', '(M64 P0)', '$X', 'M5'])(
    'may do what lights nothing: %s',
    (line) => {
      expect(readOwnLines(line)).toEqual({ ok: true, value: [line] });
    },
  );

  it.each(['M30', 'M48', '(not M3)', 'G0 X0 ; M3 comes later', '$H', 'M5'])('may be %s', (line) => {
    expect(readOwnLines(line).ok).toBe(true);
  });

  it('may not end or begin a file, nor go on for ever', () => {
    expect(readOwnLines('%').ok).toBe(false);
    expect(readOwnLines('G4 P1\n'.repeat(101))).toMatchObject({
      ok: false,
      problem: { code: 'own-gcode-too-long', params: { count: 101 } },
    });
  });
});
