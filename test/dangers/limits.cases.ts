import type { Danger } from './danger.ts';

const machine = { maxPowerPct: 70, speedRangeMmPerS: [1, 100] };
const plywood = { material: 'plywood', thicknessMm: 3.1 };
const card = (change: object = {}, on: object = {}, stock: object = plywood): object => ({
  version: 1,
  study: { version: 1, machine: { ...machine, ...on }, stock },
  powerPct: 34,
  sheetMm: [200, 150],
  ...change,
});

/** What goes beyond a limit of machine, tube or material, by whichever part of a request. */
export const limitDangers: readonly Danger[] = [
  {
    what: 'a plain card keeps within every limit',
    door: 'card',
    ask: card(),
    then: { made: { mostPowerPct: 70, mostTimes: 3, mostMarksTimes: 0.5, speedsMmPerS: [1, 100] } },
  },
  {
    what: 'the power asked for lies above the machine’s limit',
    door: 'card',
    ask: card({ powerPct: 71 }),
    then: { refused: 'card-power-above-machine' },
  },
  {
    what: 'a setting said outright lies above the machine’s limit',
    door: 'card',
    ask: card({ rungs: [{ powerPct: 90, speedMmPerS: 40 }] }),
    then: { refused: 'card-power-above-machine' },
  },
];
