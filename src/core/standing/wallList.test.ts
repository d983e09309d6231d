import { describe, expect, it } from 'vitest';

import { sampleEntry, sampleMarkTest } from '../../../test/samples/studies.ts';
import { wallListText } from '../../words/texts.ts';
import { usualCombMeasure } from '../kerf/kerfComb.ts';
import { undescribedMachine } from '../machine/machine.ts';
import { defaultPromise } from '../reading/promise.ts';
import type { KerfTest } from '../kerf/kerfTest.ts';
import type { MarkTest } from '../marking/markTest.ts';
import type { Standing } from './standing.ts';
import { wallList } from './wallList.ts';

const standing: Standing = {
  kind: 'holds',
  isGuess: false,
  why: { code: 'not-to-be-cut', params: {} },
  next: 'nothing-to-do',
  promise: defaultPromise,
  counted: { verdict: { kind: 'nothing-tallied' } } as unknown as Standing['counted'],
};
const base = sampleEntry('a');
const kept = (id: string, holdsFor: Partial<typeof base.holdsFor>, keptAt = base.keptAt) => ({
  entry: sampleEntry(id, { keptAt, holdsFor: { ...base.holdsFor, ...holdsFor } }),
  standing,
});

describe('the list for the wall', () => {
  it('goes by machine, material, thickness, the last kept first', () => {
    const list = wallList(
      [
        kept('thick', { machineId: 'm1', machine: 'B', nominalThicknessMm: 6 }),
        kept('old', { machineId: 'm1', machine: 'B' }, '2030-01-01T00:00:00.000Z'),
        kept('new', { machineId: 'm1', machine: 'B' }, '2031-01-01T00:00:00.000Z'),
        kept('acrylic', { machineId: 'm1', machine: 'B', material: 'acrylic' }),
        kept('other', { machineId: 'm2', machine: 'A' }),
      ],
      { kerfTests: [], markTests: [], machines: [] },
    );
    expect(list.map(({ name, lines }) => [name, lines.map(({ entry }) => entry.id)])).toEqual([
      ['A', ['other']],
      ['B', ['acrylic', 'new', 'old', 'thick']],
    ]);
  });

  it('shows the kerf that was kept with that very setting, and no other', () => {
    const test = (setting: KerfTest['setting']): KerfTest => ({
      version: 1,
      id: 'k1',
      at: '2031-02-02T00:00:00.000Z',
      machineId: 'm1',
      setting,
      stock: { material: base.holdsFor.material, nominalThicknessMm: 3 },
      measure: usualCombMeasure,
      combs: [
        { direction: 'across', strips: 10, nominalMm: 60, measuredMm: [58.2], barMm: [59.8] },
      ],
    });
    const entry = kept('a', { machineId: 'm1', nominalThicknessMm: 3 });
    const kerfOf = (setting: KerfTest['setting']) =>
      wallList([entry], { kerfTests: [test(setting)], markTests: [], machines: [] })[0]?.lines[0]
        ?.kerf?.kerfMm;
    expect(kerfOf(entry.entry.setting)).toBeCloseTo((59.8 - 58.2 + 0.045) / 9, 9);
    expect(kerfOf({ ...entry.entry.setting, speedMmPerS: 1 })).toBeUndefined();
  });

  it('shows the latest mark of each kind that was kept of that material, thickness and machine', () => {
    const entry = kept('a', { machineId: 'm1', nominalThicknessMm: 3 });
    const { material } = base.holdsFor;
    const of = (id: string, over: Partial<MarkTest>): MarkTest =>
      sampleMarkTest(id, {
        machineId: 'm1',
        stock: { material: material.toUpperCase(), nominalThicknessMm: 3 },
        ...over,
      });
    const markTests = [
      of('late', {}),
      of('early', {}),
      of('elsewhere', { machineId: 'm2', mark: { kind: 'tape', tape: 'paper' } }),
      of('thick', {
        stock: { material, nominalThicknessMm: 6 },
        mark: { kind: 'tape', tape: 'paper' },
      }),
    ];
    const line = wallList([entry], { kerfTests: [], markTests, machines: [] })[0]?.lines[0];
    expect(Object.keys(line?.marks ?? {})).toEqual(['engrave']);
    expect(line?.marks.engrave?.test.id).toBe('late');
    const lowered = { id: 'm1', machine: { ...undescribedMachine, maxPowerPct: 5 } };
    const held = wallList([entry], { kerfTests: [], markTests, machines: [lowered] })[0]?.lines[0];
    expect(held?.marks.engrave?.beyond?.code).toBe('fires-above-machine');
    if (held === undefined) throw new Error('no line');
    const run: Standing = { ...standing, why: { code: 'by-cards-alone', params: {} } };
    expect(wallListText.engrave({ ...held, standing: run })).toBe('not any more: beyond a limit');
  });
});
