import { describe, expect, it } from 'vitest';
import { undescribedMachine, type Machine } from '../machine/machine.ts';
import { defaultPromise } from '../reading/promise.ts';
import { cardRequestFor } from '../study/cardRequestFor.ts';
import { designCard } from './designCard.ts';

const design = (
  thicknessMm: number,
  machine: Partial<Machine>,
  more: Parameters<typeof cardRequestFor>[1] = { code: 'K7QX', powerPct: 30 },
) => {
  const study = {
    machine: { ...undescribedMachine, ...machine },
    stock: { material: 'plywood', thicknessMm },
    cells: [],
    tallies: [],
    promise: defaultPromise,
    ask: {},
  };
  return designCard(cardRequestFor(study, more));
};
const codes = (outcome: ReturnType<typeof design>): readonly string[] =>
  outcome.ok
    ? outcome.value.remarks.map(({ code }) => code).filter((code) => code.includes('weak'))
    : [outcome.problem.code];

describe('a machine that is too weak for the sheet', () => {
  // 40 W cut 3 mm of plywood at 30 % at 3 to 5 mm/s, 6 mm at 60 % likewise; from memory, common practice.
  it('is not what cuts it every day', () => {
    expect(codes(design(3, { nominalW: 40 }))).toEqual([]);
    expect(codes(design(6, { nominalW: 40 }, { code: 'K7QX', powerPct: 60 }))).toEqual([]);
    expect(codes(design(10, { nominalW: 130 }))).toEqual([]);
    expect(codes(design(12, {}))).toEqual([]);
  });

  it('gets no card of shapes of which none would fall, and hears what would help', () => {
    expect(design(18, { nominalW: 30 })).toMatchObject({
      problem: {
        code: 'card-machine-too-weak',
        params: { powerPct: 30, speedMmPerS: 1, passes: 1, helps: 'power' },
      },
    });
    expect(codes(design(18, { nominalW: 40 }))).toEqual(['card-machine-too-weak']);
    // Kept to 60 %, more power is no way out; several passes are.
    expect(design(18, { nominalW: 30, maxPowerPct: 60 })).toMatchObject({
      problem: { params: { helps: 'passes', atPct: 60, times: 2 } },
    });
    expect(design(40, { nominalW: 30, maxPowerPct: 30 })).toMatchObject({
      problem: { params: { helps: 'nothing', atPct: 30, times: 4 } },
    });
  });

  it('is told that it may be, where that is not so likely', () => {
    expect(codes(design(15, { nominalW: 40 }))).toEqual(['card-machine-weak-for-it']);
  });

  it('is not held against settings that a person has said, nor against what was cut with', () => {
    const rungs = [1, 2, 3].map((speedMmPerS) => ({ powerPct: 30, speedMmPerS, passes: 1 }));
    expect(codes(design(18, { nominalW: 30 }, { code: 'K7QX', rungs }))).toEqual([
      'card-machine-weak-for-it',
    ]);
    const slowCut = { material: 'plywood', thicknessMm: 18, powerPct: 30, speedMmPerS: 1.5 };
    expect(codes(design(18, { slowCut }))).toEqual([]);
  });

  it('the slower it goes the less it is', () => {
    expect(codes(design(18, { nominalW: 30, speedRangeMmPerS: [0.2, 100] }))).toEqual([]);
  });
});
