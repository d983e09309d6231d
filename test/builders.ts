import type { Card } from '../src/core/card/card.ts';
import { undescribedMachine } from '../src/core/machine/machine.ts';
import { defaultPromise } from '../src/core/reading/promise.ts';
import type { Study } from '../src/core/study/study.ts';

/** A small card for tests: rungs A (12 mm/s), B (15 mm/s), C (18 mm/s) at 30 %, two cells each, A1 … C2. */
export const aCard = (over: Partial<Card> = {}): Card => ({
  version: 1,
  code: 'K7QX',
  origin: 'designed',
  rungs: [
    { letter: 'A', setting: { powerPct: 30, speedMmPerS: 12, passes: 1 } },
    { letter: 'B', setting: { powerPct: 30, speedMmPerS: 15, passes: 1 } },
    { letter: 'C', setting: { powerPct: 30, speedMmPerS: 18, passes: 1, air: { kPa: 100 } } },
  ],
  cells: ['A1', 'A2', 'B1', 'B2', 'C1', 'C2'].map((id, index) => ({
    id,
    rung: id.slice(0, 1),
    xMm: 10 + 20 * (index % 3),
    yMm: 10 + 20 * Math.floor(index / 3),
  })),
  shape: 'star',
  sizeMm: 14,
  shapeLengthMm: 62,
  widthMm: 90,
  heightMm: 60,
  outline: 'last',
  doubledNotch: 'lower-left',
  places: {},
  ...over,
});

/** A study of 3 mm plywood for tests, with no card yet. */
export const aStudy = (over: Partial<Study> = {}): Study => ({
  version: 1,
  id: 'study-1',
  isExample: false,
  createdAt: '2025-03-01T09:00:00.000Z',
  stock: { material: 'plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] },
  machineId: 'machine-1',
  machine: undescribedMachine,
  machineChanges: [],
  promise: defaultPromise,
  aim: 'fastest',
  ask: { powerPct: 30 },
  tallies: [],
  cards: [],
  events: [],
  ...over,
});
