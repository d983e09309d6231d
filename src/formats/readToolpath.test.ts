import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { readToolpath } from './readToolpath.ts';

const kindOf = (text: string): string => {
  const outcome = readToolpath(text);
  return outcome.ok ? outcome.value.kind : outcome.problem.code;
};

describe('a file for the machine', () => {
  it('is known by what is in it', () => {
    expect(kindOf('<?xml version="1.0"?>\n<svg width="1mm" height="1mm"/>')).toBe('svg');
    expect(kindOf('\uFEFF<svg width="1mm" height="1mm"/>')).toBe('svg');
    expect(kindOf('0\r\nSECTION\r\n2\r\nENTITIES\r\n0\r\nENDSEC\r\n0\r\nEOF')).toBe('dxf');
    expect(kindOf('; a program\nG21\nG1 X5 F100')).toBe('gcode');
    expect(kindOf('%\nN10 G21\n%')).toBe('gcode');
  });

  it('says of a program in what order the head travels and waits without the beam, and how fast', () => {
    const program = [
      'G21 G90',
      'G0 X10 Y0',
      'M3 S100',
      'G1 X20 F600',
      'M5',
      'G1 X20 Y30 F1200',
      'G4 P1.5',
      'M3 S100',
      'G1 X0 F600',
      'M5',
      'G0 X0 Y0',
    ];
    const read = readToolpath(program.join('\n'));
    expect(read.ok && read.value.unlit).toEqual([
      { beforeLine: 0, kind: 'travel', to: [10, 0] },
      { beforeLine: 1, kind: 'travel', to: [20, 30], speedMmPerS: 20, beam: 'off' },
      { beforeLine: 1, kind: 'wait', seconds: 1.5 },
      { beforeLine: 2, kind: 'travel', to: [0, 0] },
    ]);
  });

  it('is refused where it is nothing of these', () => {
    for (const text of [
      '',
      'hello',
      '{"version":1}',
      '%PDF-1.7',
      'AutoCAD Binary DXF\r\n\u001a\0',
    ]) {
      expect(kindOf(text)).toBe('drawing-kind-unknown');
    }
    expect(kindOf(`G21\n${'G1 X1 F100\n'.repeat(4_000_000)}`)).toBe('drawing-too-big');
  });

  it('never throws, whatever it is', () => {
    const begins = fc.constantFrom(
      '',
      '<svg ',
      '<svg width="1mm" height="1mm">',
      '0\nSECTION\n',
      'G21\n',
    );
    fc.assert(
      fc.property(begins, fc.string({ maxLength: 200 }), (start, rest) => {
        expect(typeof readToolpath(start + rest).ok).toBe('boolean');
      }),
      { numRuns: 400 },
    );
  });
});
