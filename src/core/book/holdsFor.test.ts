import { describe, expect, it } from 'vitest';
import { aStudy } from '../../../test/builders.ts';
import type { Machine } from '../machine/machine.ts';
import { defaultPromise } from '../reading/promise.ts';
import type { Stock } from '../stock/stock.ts';
import { holdsFor } from './holdsFor.ts';
import type { ProvenSetting } from './provenSetting.ts';

const entry: ProvenSetting = {
  version: 1,
  id: 'p1',
  code: 'X3MQ',
  isExample: false,
  keptAt: '2031-05-06T07:08:09.000Z',
  setting: { powerPct: 30, speedMmPerS: 14, passes: 1 },
  aim: 'fastest',
  promise: defaultPromise,
  outOf100Mean: 98,
  surePct: 95,
  holdsFor: {
    machine: 'Larkspur Lane',
    material: 'birch plywood',
    nominalThicknessMm: 3,
    measuredThicknessMm: 3,
    batch: 'spring',
    sheet: 'no. 4',
  },
  cameFrom: { studyId: 's', cardCodes: [], cellCount: 0, partsTallied: 0, habit: false },
};
const sheet: Stock = {
  material: 'Birch  Plywood',
  nominalThicknessMm: 3,
  thicknessReadingsMm: [3.02, 2.98],
  batch: 'Spring',
};
const machine: Machine = { ...aStudy().machine, name: 'larkspur lane' };
const codes = (over: {
  stock?: Partial<Stock>;
  machine?: Partial<Machine>;
  entry?: Partial<ProvenSetting>;
}) =>
  holdsFor(
    { ...entry, ...over.entry },
    { stock: { ...sheet, ...over.stock }, machine: { ...machine, ...over.machine } },
  ).map(({ code }) => code);

describe('what a proven setting holds for', () => {
  it('holds on the same sheet, however the names are typed', () => {
    expect(codes({})).toEqual([]);
  });

  it('names each difference', () => {
    expect(codes({ machine: { name: 'Elder Row' } })).toEqual(['holds-for-other-machine']);
    expect(codes({ machine: { maxPowerPct: 25 } })).toEqual(['holds-for-power-above-limit']);
    expect(codes({ machine: { speedRangeMmPerS: [1, 10] } })).toEqual([
      'holds-for-speed-out-of-range',
    ]);
    expect(codes({ stock: { material: 'poplar ply' } })).toEqual([
      'holds-for-material-named-otherwise',
    ]);
    expect(codes({ stock: { material: 'acrylic' } })).toEqual(['holds-for-other-material']);
    expect(codes({ stock: { nominalThicknessMm: 6, thicknessReadingsMm: [] } })).toEqual([
      'holds-for-other-thickness',
    ]);
    expect(codes({ stock: { batch: 'autumn' } })).toEqual(['holds-for-other-batch']);
  });

  it('tells machines apart by what they are, not by what they are called', () => {
    const kept = { ...entry, holdsFor: { ...entry.holdsFor, machineId: 'm1' } };
    const on = (machineId: string, name: string) =>
      holdsFor(kept, { stock: sheet, machine: { ...machine, name }, machineId }).map(
        ({ code }) => code,
      );
    expect(on('m1', 'renamed since')).toEqual([]);
    expect(on('m2', 'Elder Row')).toEqual(['holds-for-other-machine']);
    expect(on('m2', 'Larkspur Lane')).toEqual(['holds-for-another-machine']);
  });

  it('asks where nobody named the batch', () => {
    const unnamed: Stock = {
      material: 'birch plywood',
      nominalThicknessMm: 3,
      thicknessReadingsMm: [],
    };
    expect(holdsFor(entry, { stock: unnamed, machine }).map(({ code }) => code)).toEqual([
      'holds-for-batch-not-named',
    ]);
  });

  it('says how much slower a sheet goes that is thicker than its label', () => {
    // (3/3.21)^1.2 = 0.922
    const [difference] = holdsFor(entry, {
      stock: { ...sheet, thicknessReadingsMm: [3.21] },
      machine,
    });
    expect(difference).toEqual({
      code: 'holds-for-other-caliper',
      params: { keptMm: 3, hereMm: 3.21, speedChangePct: 8, which: 'slower' },
    });
  });

  it('minds batch and sheet only as far as the promise does', () => {
    const promised = (wish: 'sheet' | 'batch' | 'newBatch') => ({
      promise: { ...defaultPromise, for: wish },
    });
    expect(codes({ entry: promised('newBatch'), stock: { batch: 'autumn' } })).toEqual([]);
    expect(codes({ entry: promised('sheet') })).toEqual(['holds-for-sheet-not-named']);
    expect(codes({ entry: promised('sheet'), stock: { sheet: 'No. 5' } })).toEqual([
      'holds-for-other-sheet',
    ]);
    expect(codes({ entry: promised('sheet'), stock: { sheet: 'No. 4' } })).toEqual([]);
  });
});
