import { seededRandom, type SeededRandom } from '../../num/seededRandom.ts';
import type { BedTest } from '../bed/bedTest.ts';
import type { ProvenSetting } from '../book/provenSetting.ts';
import type { Card } from '../card/card.ts';
import { designCard } from '../card/designCard.ts';
import { fitStudy } from '../cutmodel/fitStudy.ts';
import type { Metering } from '../metering/metering.ts';
import type { Setting } from '../machine/setting.ts';
import type { WorkshopMachine } from '../machine/workshopMachine.ts';
import type { ReadingEvent } from '../reading/readingEvent.ts';
import { defaultPromise } from '../reading/promise.ts';
import type { Stock } from '../stock/stock.ts';
import { stockThicknessMm } from '../stock/stockThickness.ts';
import { cardRequestFor } from '../study/cardRequestFor.ts';
import type { RecordedTally, Study } from '../study/study.ts';
import { toCutStudy } from '../study/toCutStudy.ts';
import {
  exampleBed as bed,
  exampleMachine as machine,
  exampleMachineId,
  exampleWorkshopMachine,
} from './exampleMachine.ts';
import { exampleCorners, exampleMetering } from './exampleTests.ts';
import { virtualWorkshop, type VirtualWorkshop, type WorkshopTraits } from './virtualWorkshop.ts';
import { exampleKeptId } from './exampleKeptId.ts';

/**
 * What a newcomer may walk about in: a machine, two sheets, their cards, one kept setting with its orders, and what was tested of the
 * machine itself. All of it invented.
 */
export interface ExampleWorkshop {
  readonly machines: readonly WorkshopMachine[];
  readonly studies: readonly Study[];
  readonly book: readonly ProvenSetting[];
  readonly meterings: readonly Metering[];
  readonly bedTests: readonly BedTest[];
}

/** How the invented sheets really cut; nobody but the virtual workshop knows. */
const cuts: WorkshopTraits = {
  material: 'plywood',
  nominalThicknessMm: 3,
  thicknessMm: 3.1,
  typicalPowerPct: 35,
  v50MmPerS: 21,
  powerExponent: 1,
  firingPct: 0,
  link: 'normal',
  sigma: 0.07,
  hangBand: 0.06,
  flawShare: 0,
  misreadShare: 0,
  tiltAcrossBed: 0,
  wedgePer100Mm: 0,
  driftOverCard: 0,
  sheetSd: 0.015,
  scatterGrowth: 0,
};

/**
 * The example workshop as it stands at `openedAt` (ISO 8601, UTC): the same every time but for its dates. Its cards are
 * designed and its answers computed by the very functions that serve real work. ~100 ms.
 */
export const exampleWorkshop = (openedAt: string): ExampleWorkshop => {
  const ago = (days: number, minutes = 0): string =>
    new Date(Date.parse(openedAt) - (days * 1440 - minutes) * 60_000).toISOString();
  const random = seededRandom(20);
  const ply = proven(ago, random);
  const answer = fitStudy(toCutStudy(ply.study));
  return {
    machines: [exampleWorkshopMachine(ago(100))],
    studies: [ply.study, justCut(ago, random)],
    book: [ply.entry],
    meterings: [
      exampleMetering(machine, { id: 'example-meter-1', at: ago(96), seed: 31 }),
      exampleMetering(machine, { id: 'example-meter-2', at: ago(13), seed: 32 }),
    ],
    bedTests: [exampleCorners({ machine, bed, cuts, answer, at: ago(11) })],
  };
};

type Ago = (days: number, minutes?: number) => string;

/** Plywood: a ladder, a second card where it taught most, a setting kept, two orders tallied. */
const proven = (ago: Ago, random: SeededRandom): { study: Study; entry: ProvenSetting } => {
  const workshop = virtualWorkshop(cuts, random);
  const blank = blankStudy('example-plywood', ago(12), {
    material: 'birch plywood',
    nominalThicknessMm: 3,
    thicknessReadingsMm: [3.1, 3.08, 3.14, 3.09],
    batch: 'spring delivery',
    sheet: 'board 2',
  });
  const first = withCard(blank, workshop, 'PLY4', 3, ago(12, 20));
  const study = withCard(first, workshop, 'PLY7', 4, ago(12, 70));
  const setting = surerSetting(study);
  const entry = entryFor(study, setting, ago(12, 90));
  const orders = [
    tallyOf(workshop, random, 'example-order-1', setting, 120, ago(9)),
    tallyOf(workshop, random, 'example-order-2', setting, 200, ago(2)),
  ].map((tally) => ({ ...tally, provenSettingId: entry.id }));
  return { study: { ...study, tallies: orders }, entry };
};

/** Acrylic: one card, read to the end, whose answer waits to be kept. */
const justCut = (ago: Ago, random: SeededRandom): Study => {
  const workshop = virtualWorkshop({ ...cuts, v50MmPerS: 12, sigma: 0.06, sheetSd: 0.01 }, random);
  const blank = blankStudy('example-acrylic', ago(1), {
    material: 'cast acrylic',
    nominalThicknessMm: 3,
    thicknessReadingsMm: [2.86, 2.9, 2.93],
    batch: 'clear, opened this month',
  });
  return withCard(blank, workshop, 'ACR3', 5, ago(1, 30));
};

const blankStudy = (id: string, createdAt: string, stock: Stock): Study => ({
  version: 1,
  id,
  isExample: true,
  createdAt,
  stock,
  machineId: exampleMachineId,
  machine,
  machineChanges: [],
  promise: defaultPromise,
  aim: 'fastest',
  ask: { powerPct: 35 },
  tallies: [],
  cards: [],
  events: [],
});

/** Designs the next card of a study, cuts it in the virtual workshop and reads it. */
const withCard = (
  study: Study,
  workshop: VirtualWorkshop,
  code: string,
  seed: number,
  at: string,
): Study => {
  const { batch, sheet } = study.stock;
  const designed = designCard(
    cardRequestFor(toCutStudy(study), {
      code,
      seed,
      ...(batch === undefined ? {} : { batch }),
      ...(sheet === undefined ? {} : { sheet }),
    }),
  );
  if (!designed.ok) throw new Error(`The example's card cannot be made: ${designed.problem.code}`);
  const { card } = designed.value;
  return {
    ...study,
    cards: [...study.cards, card],
    events: [...study.events, ...readingsOf(card, workshop, at)],
  };
};

const readingsOf = (card: Card, workshop: VirtualWorkshop, at: string): readonly ReadingEvent[] => {
  const settings = new Map(card.rungs.map(({ letter, setting }) => [letter, setting]));
  const cells = card.cells.flatMap(({ rung, xMm, yMm }) => {
    const setting = settings.get(rung);
    return setting === undefined ? [] : [{ ...setting, ...onBed(workshop, xMm, yMm) }];
  });
  const grades = workshop.cutCard(cells);
  return card.cells.flatMap((cell, i): readonly ReadingEvent[] => {
    const grade = grades[i];
    const id = `example-${card.code}-${cell.id}`;
    if (grade === undefined) return [];
    return [{ id, cardCode: card.code, at, kind: 'graded', cell: cell.id, grade }];
  });
};

const onBed = ({ bed }: VirtualWorkshop, xMm: number, yMm: number) => ({
  xMm: bed.widthMm / 2 + xMm - 50,
  yMm: bed.heightMm / 2 + yMm - 30,
});

/** What the tool would have the workshop run in production: one step surer than the fastest that holds. */
const surerSetting = (study: Study): Setting => {
  const { recommended, oneStepSurer } = fitStudy(toCutStudy(study));
  const chosen = oneStepSurer ?? recommended;
  if (chosen === null) throw new Error('The example has no answer.');
  return { powerPct: chosen.powerPct, speedMmPerS: chosen.speedMmPerS, passes: 1 };
};

const entryFor = (study: Study, setting: Setting, keptAt: string): ProvenSetting => {
  const { powerPct, speedMmPerS } = setting;
  const { asked } = fitStudy({ ...toCutStudy(study), ask: { powerPct, speedMmPerS } });
  if (asked === undefined) throw new Error('The example has no forecast.');
  const { stock } = study;
  return {
    version: 1,
    id: exampleKeptId,
    code: 'LARK',
    isExample: true,
    keptAt,
    setting,
    aim: study.aim,
    promise: study.promise,
    outOf100Mean: asked.outOf100Mean,
    surePct: asked.sureOfPromisePct,
    holdsFor: {
      machineId: exampleMachineId,
      ...(machine.name === undefined ? {} : { machine: machine.name }),
      material: stock.material,
      nominalThicknessMm: stock.nominalThicknessMm,
      measuredThicknessMm: stockThicknessMm(stock),
      ...(stock.batch === undefined ? {} : { batch: stock.batch }),
    },
    cameFrom: {
      studyId: study.id,
      cardCodes: study.cards.map(({ code }) => code),
      cellCount: study.events.length,
      partsTallied: 0,
      habit: false,
    },
    note: 'Invented, to look at. Nobody ever cut this.',
  };
};

/** An order cut by the setting, with one part in eighty lost to a glue pocket. */
const tallyOf = (
  workshop: VirtualWorkshop,
  random: SeededRandom,
  id: string,
  setting: Setting,
  parts: number,
  at: string,
): RecordedTally => {
  const spoilt = Array.from({ length: parts }, () => random.uniform() < 1 / 80).filter(Boolean);
  const sound = parts - spoilt.length;
  const cut = Array.from({ length: sound }, () => ({ ...setting, ...onBed(workshop, 50, 30) }));
  const grades = workshop.cutCard(cut);
  const count = (grade: string): number => grades.filter((one) => one === grade).length;
  return {
    id,
    at,
    setting,
    out: count('out'),
    hangs: count('hangs'),
    stays: count('stays'),
    spoilt: spoilt.length,
    partLengthMm: 60,
    batch: 'spring delivery',
  };
};
