import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

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
