import { usualCombMeasure } from '../../src/core/kerf/kerfComb.ts';
import type { MarkTest } from '../../src/core/marking/markTest.ts';
import type { KerfTest } from '../../src/core/kerf/kerfTest.ts';
import type { BedTest } from '../../src/core/bed/bedTest.ts';
import type { ProvenSetting } from '../../src/core/book/provenSetting.ts';
import type { Card } from '../../src/core/card/card.ts';
import type { FocusTest } from '../../src/core/focus/focusTest.ts';
import type { Metering } from '../../src/core/metering/metering.ts';
import { undescribedMachine } from '../../src/core/machine/machine.ts';
import type { WorkshopMachine } from '../../src/core/machine/workshopMachine.ts';
import { omit } from '../../src/core/omit.ts';
import type { Setting } from '../../src/core/machine/setting.ts';
import { usualPlanCosts } from '../../src/core/plan/planWish.ts';
import type { Grade } from '../../src/core/reading/grade.ts';
import { defaultPromise } from '../../src/core/reading/promise.ts';
import type { ReadingEvent } from '../../src/core/reading/readingEvent.ts';
import type { StartedOrder } from '../../src/core/study/startedOrder.ts';
import type { RecordedTally, SavedStudy, Study } from '../../src/core/study/study.ts';

/** Things to store and send in tests. Invented. */
export const sampleTime = '2031-05-06T07:08:09.000Z';

export const sampleSetting: Setting = {
  powerPct: 34,
  speedMmPerS: 17,
  passes: 1,
  air: { kPa: 100 },
};

/** An order of 300 parts, 30 a sheet. */
export const sampleOrder = (id = 'o1', over: Partial<StartedOrder> = {}): StartedOrder => ({
  id,
  startedAt: sampleTime,
  ...{ parts: 300, partsPerSheet: 30, partLengthMm: 180 },
  wish: 'promise',
  acceptNotOutOf100: 3,
  costS: usualPlanCosts,
  ...over,
});

/** A ladder of one power and two speeds, two cells each. */
export const sampleCard = (code = 'K7QX', over: Partial<Card> = {}): Card => ({
  version: 1,
  code,
  origin: 'described',
  rungs: [
    { letter: 'A', setting: { powerPct: 34, speedMmPerS: 14, passes: 1 } },
    { letter: 'B', setting: { powerPct: 34, speedMmPerS: 20, passes: 1 } },
  ],
  cells: ['A1', 'B1', 'A2', 'B2'].map((id, i) => ({
    id,
    rung: id.slice(0, 1),
    xMm: 10 + 20 * i,
    yMm: 12,
  })),
  shape: 'star',
  sizeMm: 14,
  shapeLengthMm: 60,
  widthMm: 100,
  heightMm: 30,
  outline: 'none',
  doubledNotch: 'lower-left',
  places: {},
  ...over,
});

export const sampleEvent = (
  id: string,
  over: { cardCode?: string; cell?: string; grade?: Grade } = {},
): ReadingEvent => ({
  id,
  cardCode: over.cardCode ?? 'K7QX',
  at: sampleTime,
  kind: 'graded',
  cell: over.cell ?? 'A1',
  grade: over.grade ?? 'out',
});

export const sampleTally = (id: string, over: Partial<RecordedTally> = {}): RecordedTally => ({
  id,
  at: sampleTime,
  setting: sampleSetting,
  out: 197,
  hangs: 2,
  stays: 0,
  spoilt: 1,
  partLengthMm: 160,
  ...over,
});

export const sampleStudy = (id: string, over: Partial<Study> = {}): Study => ({
  version: 1,
  id,
  isExample: false,
  createdAt: sampleTime,
  stock: { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [3.1, 3.2] },
  machineId: 'machine-1',
  machine: undescribedMachine,
  machineChanges: [],
  promise: defaultPromise,
  aim: 'fastest',
  ask: {},
  tallies: [],
  cards: [],
  events: [],
  ...over,
});

/** A study as a file has it: it names its machine. */
export const savedStudy = (study: Study): SavedStudy => omit(study, 'machine', 'machineChanges');

/** A study as a file had it before machines were things of their own. */
export const selfDescribedStudy = (study: Study) => omit(study, 'machineId', 'machineChanges');

/** The machine of the sample studies. */
export const sampleMachine = (
  id = 'machine-1',
  over: Partial<WorkshopMachine> = {},
): WorkshopMachine => ({
  version: 1,
  id,
  isExample: false,
  isDefault: id === 'machine-1',
  addedAt: sampleTime,
  machine: undescribedMachine,
  changes: [],
  ...over,
});

export const sampleEntry = (id: string, over: Partial<ProvenSetting> = {}): ProvenSetting => ({
  version: 1,
  id,
  code: 'BK42',
  isExample: false,
  keptAt: sampleTime,
  setting: sampleSetting,
  aim: 'fastest',
  promise: defaultPromise,
  outOf100Mean: 98.2,
  surePct: 95.4,
  holdsFor: { material: 'birch plywood', nominalThicknessMm: 3 },
  cameFrom: { studyId: 'gone', cardCodes: ['K7QX'], cellCount: 4, partsTallied: 0, habit: false },
  ...over,
});

/** Two rounds up to rated current; the second setting below is where it stayed dark. */
export const sampleMetering = (id: string, over: Partial<Metering> = {}): Metering => ({
  version: 1,
  id,
  at: sampleTime,
  ratedCurrentMa: 19,
  readings: [
    { powerPct: 8, currentMa: 0 },
    ...[10, 20, 30, 40, 52, 64, 10, 20, 30, 40, 52, 64].map((powerPct, i) => ({
      powerPct,
      currentMa: Number((3.2 + 0.29 * (powerPct - 10) + (i % 3) / 10).toFixed(1)),
    })),
  ],
  waterC: 19,
  ...over,
});

/** Three lines up a ramp whose focus lies 69 mm along it, 7.4 mm below the nozzle. */
export const sampleFocusTest = (id: string, over: Partial<FocusTest> = {}): FocusTest => ({
  version: 1,
  id,
  at: sampleTime,
  ramp: { lengthMm: 120, blockMm: 8, nozzleGapMm: 12 },
  readings: {
    kind: 'fades',
    lines: [
      { fromMm: 30, toMm: 108, dose: 1 },
      { fromMm: 44, toMm: 94, dose: 0.7 },
      { fromMm: 52, toMm: 86, dose: 0.5 },
    ],
  },
  gaugeMm: 7.5,
  ...over,
});

/** Two combs and a few slots of one setting. */
export const sampleKerfTest = (id: string, over: Partial<KerfTest> = {}): KerfTest => ({
  version: 1,
  id,
  at: sampleTime,
  setting: sampleSetting,
  stock: { material: 'birch plywood', nominalThicknessMm: 3, batch: 'spring' },
  combs: [
    {
      place: '1X',
      direction: 'across',
      strips: 10,
      nominalMm: 60,
      measuredMm: [58.02, 58.0, 58.01],
      barMm: [59.8, 59.8],
    },
    {
      place: '1Y',
      direction: 'up',
      strips: 10,
      nominalMm: 60,
      measuredMm: [58.04],
      barMm: [59.81],
    },
  ],
  measure: usualCombMeasure,
  slots: [
    { drawnMm: 2.8, fit: 'press' },
    { drawnMm: 2.9, fit: 'slip' },
  ],
  tongueMm: 3.05,
  ...over,
});

/** An engraving beside a cut. */
export const sampleMarkTest = (id: string, over: Partial<MarkTest> = {}): MarkTest => ({
  version: 1,
  id,
  at: sampleTime,
  cut: sampleSetting,
  stock: { material: 'birch plywood', nominalThicknessMm: 3, batch: 'spring' },
  mark: {
    kind: 'engrave',
    setting: { powerPct: 14, speedMmPerS: 90, passes: 1, air: 'pump' },
    lineSpacingMm: 0.1,
  },
  note: 'brown, lines along the grain',
  ...over,
});

/** Sixteen cells, of which three hang at the back right. */
export const sampleBedTest = (id: string, over: Partial<BedTest> = {}): BedTest => ({
  version: 1,
  id,
  at: sampleTime,
  bed: { widthMm: 600, heightMm: 400 },
  setting: { powerPct: 34, speedMmPerS: 17, passes: 1 },
  scatter: { sigma: 0.08, hangBand: 0.06 },
  cells: (
    [
      ['FL', 'front-left'],
      ['FR', 'front-right'],
      ['BL', 'back-left'],
      ['BR', 'back-right'],
    ] as const
  ).flatMap(([letters, place]) =>
    [1, 2, 3, 4].map((n) => ({
      id: `${letters}${String(n)}`,
      place,
      grade: place === 'back-right' && n > 1 ? 'hangs' : 'out',
    })),
  ),
  ...over,
});
