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
