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
      value: { sAtFullPower: 1000, machine: { maxPowerPct: 80, bed: { gapMm: 8 } } },
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
