import type { ProvenSetting } from '../../src/core/book/provenSetting.ts';
import type { Card } from '../../src/core/card/card.ts';
import { undescribedMachine } from '../../src/core/machine/machine.ts';
import { done } from '../../src/core/problem.ts';
import { defaultPromise } from '../../src/core/reading/promise.ts';
import type { ReadingEvent } from '../../src/core/reading/readingEvent.ts';
import type { SavedStudy } from '../../src/core/study/study.ts';
import type { Store } from '../../src/app/ports/ports.ts';

/** How much a workshop has gathered. */
export interface Grown {
  readonly sheets: number;
  readonly kept: number;
}

const materials = ['birch plywood', 'poplar plywood', 'cast acrylic', 'MDF', 'grey cardboard'];
const cellIds = ['A1', 'A2', 'B1', 'B2', 'C1', 'C2', 'D1', 'D2'];

const at = (n: number): string => new Date(Date.UTC(2031, 0, 1) + n * 60_000).toISOString();
const pick = (n: number): string => materials[n % materials.length] ?? '';
const alphabet = 'ABCDEFGHJKLMNPQRSTUVWXYZ23456789';
export const codeOf = (n: number): string =>
  [n >> 15, n >> 10, n >> 5, n].map((part) => alphabet[part & 31] ?? '').join('');

export const grownCard = (code: string): Card => ({
  version: 1,
  code,
  origin: 'described',
  rungs: ['A', 'B', 'C', 'D'].map((letter, i) => ({
    letter,
    setting: { powerPct: 40, speedMmPerS: 12 + 3 * i, passes: 1 },
  })),
  cells: cellIds.map((id, i) => ({ id, rung: id.slice(0, 1), xMm: 10 + 20 * i, yMm: 12 })),
  shape: 'star',
  sizeMm: 14,
  shapeLengthMm: 60,
  widthMm: 180,
  heightMm: 30,
  outline: 'none',
  doubledNotch: 'lower-left',
  places: {},
});

/** So many readings of one card; what was said of a shape last stands. */
export const readingsOf = (cardCode: string, count: number, from = 0): readonly ReadingEvent[] =>
  Array.from({ length: count }, (_, i): ReadingEvent => {
    const cell = cellIds[i % cellIds.length] ?? 'A1';
    return {
      id: `e${String(from + i)}`,
      cardCode,
      at: at(i),
      kind: 'graded',
      cell,
      grade: cell < 'C' ? 'out' : 'stays',
    };
  });

export const grownSheet = (n: number, events = cellIds.length): SavedStudy => {
  const code = codeOf(n);
  return {
    version: 1,
    id: `sheet-${String(n)}`,
    isExample: false,
    createdAt: at(n),
    stock: {
      material: pick(n),
      nominalThicknessMm: 3,
      thicknessReadingsMm: [3.1, 3.2],
      batch: `delivery ${String(n % 40)}`,
    },
    machineId: 'machine-1',
    promise: defaultPromise,
    aim: 'fastest',
    ask: { powerPct: 40 },
    tallies: [],
    cards: [grownCard(code)],
    events: readingsOf(code, events),
  };
};

export const grownKept = (n: number, sheets: number): ProvenSetting => ({
  version: 1,
  id: `kept-${String(n)}`,
  code: codeOf(n + 40_000),
  isExample: false,
  keptAt: at(100_000 + n),
  setting: { powerPct: 40, speedMmPerS: 13 + (n % 30) / 10, passes: 1 },
  aim: 'fastest',
  promise: defaultPromise,
  outOf100Mean: 98.2,
  surePct: 95.4,
  holdsFor: {
    machineId: 'machine-1',
    material: pick(n % sheets),
    nominalThicknessMm: 3,
    batch: `delivery ${String((n % sheets) % 40)}`,
  },
  cameFrom: {
    studyId: `sheet-${String(n % sheets)}`,
    cardCodes: [codeOf(n % sheets)],
    cellCount: cellIds.length,
    partsTallied: 0,
    habit: false,
  },
});

/** Fills an empty store as a workshop would over the years; the sheet last begun lies on the bed. */
export const grow = (store: Store, { sheets, kept }: Grown): Promise<unknown> =>
  store.change(async (session) => {
    await session.insertMachine({
      version: 1,
      id: 'machine-1',
      isExample: false,
      isDefault: true,
      addedAt: at(0),
      machine: { ...undescribedMachine, name: 'the left one' },
      changes: [],
    });
    for (let n = 0; n < sheets; n += 1) await session.insertStudy(grownSheet(n), at(n));
    for (let n = 0; n < kept; n += 1) await session.insertEntry(grownKept(n, sheets));
    return done(undefined);
  });
