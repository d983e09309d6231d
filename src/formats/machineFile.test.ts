import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

import { plainDialect } from '../core/dialect/gcodeDialect.ts';
import { parseCardRequest } from './cardRequestFile.ts';
import { parseMachineFile } from './machineFile.ts';

describe('a machine file', () => {
  it('is accepted as its page shows it', () => {
    const page = readFileSync(join(import.meta.dirname, '../../docs/formats/machine.md'), 'utf8');
    const example: unknown = JSON.parse(/```json\n([^`]+)```/.exec(page)?.[1] ?? '');
    expect(parseMachineFile(example)).toMatchObject({
      ok: true,
      value: {
        sAtFullPower: 1000,
        machine: {
          maxPowerPct: 80,
          bed: { gapMm: 8 },
          motion: { accelerationMmPerS2: 800, corner: { rule: 'junction-deviation' } },
        },
      },
    });
  });

  it('may say how it wants its G-code: what is left out is plain, and the scale of S is taken from there', () => {
    const gcode = { sAtFullPower: 255, opening: ['G54'] };
    expect(parseMachineFile({ gcode })).toMatchObject({
      ok: true,
      value: { sAtFullPower: 255, machine: { gcode: { ...plainDialect, ...gcode } } },
    });
    expect(parseMachineFile({ gcode, sAtFullPower: 500 })).toMatchObject({
      ok: true,
      value: { sAtFullPower: 500 },
    });
    expect(parseMachineFile({ gcode: { opening: ['G1 X9 M03 S99'] } })).toMatchObject({
      ok: false,
      problem: { code: 'file-value-refused', params: { path: 'gcode.opening[0]' } },
    });
  });

  it('may say how the machine moves, and is told what is missing or not a rule', () => {
    const motion = {
      accelerationMmPerS2: 500,
      corner: { rule: 'speed-jump', xMmPerS: 8, yMmPerS: 0 },
      travelSpeedMmPerS: 200,
    };
    expect(parseMachineFile({ motion })).toMatchObject({
      ok: true,
      value: { machine: { motion } },
    });
    const without = { accelerationMmPerS2: 500, travelSpeedMmPerS: 200 };
    expect(parseMachineFile({ motion: without })).toMatchObject({
      ok: false,
      problem: { code: 'file-value-missing', params: { path: 'motion.corner' } },
    });
    const wrong = { ...motion, corner: { rule: 'jerk', mm: 1 } };
    expect(parseMachineFile({ motion: wrong })).toMatchObject({
      ok: false,
      problem: { params: { path: 'motion.corner.rule' } },
    });
    expect(parseMachineFile({ motion: { ...motion, accelerationMmPerS2: 0 } }).ok).toBe(false);
    expect(parseMachineFile({ motion: { ...motion, jerk: 0 } })).toMatchObject({
      ok: false,
      problem: { code: 'file-key-unknown' },
    });
  });

  it('may be empty, and is refused where it says what nobody knows', () => {
    expect(parseMachineFile({})).toMatchObject({
      ok: true,
      value: { machine: { maxPowerPct: 100 } },
    });
    expect(parseMachineFile({ maxPower: 80 })).toMatchObject({
      ok: false,
      problem: { code: 'file-key-unknown' },
    });
    expect(parseMachineFile({ sAtFullPower: 0 }).ok).toBe(false);
  });
});

describe('a card request', () => {
  const request = (machine: object, gcode?: object) =>
    parseCardRequest({
      version: 1,
      study: { version: 1, stock: { material: 'plywood', thicknessMm: 3 }, machine },
      ...(gcode === undefined ? {} : { gcode }),
    });
  const dialectOf = (read: ReturnType<typeof request>) => (read.ok ? read.value.gcode : undefined);

  it('takes the G-code of its machine, unless it says its own', () => {
    const machine = { gcode: { airOn: 'M7' } };
    expect(dialectOf(request({}))).toEqual(plainDialect);
    expect(dialectOf(request(machine))).toEqual({ ...plainDialect, airOn: 'M7' });
    expect(dialectOf(request(machine, { sAtFullPower: 255 }))).toEqual({
      ...plainDialect,
      sAtFullPower: 255,
    });
  });
});
