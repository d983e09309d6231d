import { describe, expect, it } from 'vitest';

import { sampleMarkTest } from '../../../test/samples/studies.ts';
import type { Machine } from '../machine/machine.ts';
import { markTestSays, marksOf, shadesKept } from './markTest.ts';

const machine: Machine = { maxPowerPct: 80, speedRangeMmPerS: [1, 400] };
const test = sampleMarkTest('e1', { machineId: 'm1' });

describe('a mark that is kept', () => {
  it('is its setting, held to its machine where that is known', () => {
    expect(markTestSays(test)).toMatchObject({ ok: true, value: { mark: test.mark } });
    expect(markTestSays(test, machine).ok).toBe(true);
    const weak = { ...machine, maxPowerPct: 10 };
    expect(markTestSays(test, weak)).toMatchObject({ problem: { code: 'fires-above-machine' } });
    const slow = { ...test, mark: { kind: 'score' as const, setting: test.cut } };
    expect(markTestSays(slow, machine)).toMatchObject({ problem: { code: 'fires-would-cut' } });
  });

  it('is not kept of a refused material, nor is tape on one', () => {
    const stock = { ...test.stock, material: 'PVC' };
    const tape = { kind: 'tape' as const, tape: 'film' as const };
    for (const mark of [test.mark, tape])
      expect(markTestSays({ ...test, stock, mark })).toMatchObject({
        ok: false,
        problem: { code: 'material-refused' },
      });
  });

  it('is found by material, thickness and machine, whatever batch and cut', () => {
    const { stock } = test;
    const found = (over: object) =>
      marksOf({ stock, machineId: 'm1', ...over }, [test], machine).engrave?.test.id;
    expect(found({})).toBe('e1');
    expect(found({ stock: { ...stock, batch: 'autumn' } })).toBe('e1');
    expect(found({ stock: { ...stock, nominalThicknessMm: 6 } })).toBeUndefined();
    expect(found({ machineId: 'm2' })).toBeUndefined();
  });

  it('is not to be run any more where its machine was kept to less since', () => {
    const of = { stock: test.stock, machineId: 'm1' };
    expect(marksOf(of, [test], machine).engrave).toEqual({ test });
    const lowered = { ...machine, maxPowerPct: 10 };
    expect(marksOf(of, [test], lowered).engrave?.beyond?.code).toBe('fires-above-machine');
    expect(marksOf(of, [test], undefined).engrave).toEqual({ test });
  });
});

describe('what was read on a strip of shades', () => {
  const settings = [8, 12, 18].map((powerPct) => ({ powerPct, speedMmPerS: 150, passes: 1 }));
  const shades = { settings, lineSpacingMm: 0.1, lightness: [80, null, 60], by: 'card', count: 4 };
  const read = { ...test, shades } as typeof test;
  const of = { stock: test.stock, machineId: 'm1' };

  it('is found again on this very strip alone, of this material and machine', () => {
    expect(shadesKept(of, { settings, lineSpacingMm: 0.1 }, [test, read])).toEqual(shades);
    expect(shadesKept(of, { settings, lineSpacingMm: 0.2 }, [read])).toBeUndefined();
    expect(
      shadesKept(of, { settings: settings.slice(1), lineSpacingMm: 0.1 }, [read]),
    ).toBeUndefined();
    expect(
      shadesKept({ ...of, machineId: 'm2' }, { settings, lineSpacingMm: 0.1 }, [read]),
    ).toBeUndefined();
  });

  it('is the latest', () => {
    const later = { ...read, id: 'e2', shades: { ...read.shades, count: 6 } } as typeof test;
    expect(shadesKept(of, { settings, lineSpacingMm: 0.1 }, [later, read])?.count).toBe(6);
  });
});
