import { virtualWorkshop, type WorkshopTraits } from '../../src/core/virtual/virtualWorkshop.ts';
import type { Grade } from '../../src/core/reading/grade.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import type { Card } from '../../src/core/card/card.ts';
import type { ReadingEvent } from '../../src/core/reading/readingEvent.ts';
import type { CutStudy } from '../../src/core/cutmodel/cutStudy.ts';
import { toCutStudy } from '../../src/core/study/toCutStudy.ts';
import { aStudy } from '../builders.ts';
import { sampleCard, sampleTime } from './studies.ts';

/** A plain workshop: 3 mm plywood, half the shapes out at 17 mm/s and 30 %, scatter 8 %. Invented. */
const traits: WorkshopTraits = {
  material: 'plywood',
  nominalThicknessMm: 3,
  thicknessMm: 3,
  typicalPowerPct: 30,
  v50MmPerS: 17,
  powerExponent: 1,
  firingPct: 0,
  link: 'normal',
  sigma: 0.08,
  hangBand: 0.06,
  flawShare: 0,
  misreadShare: 0,
  tiltAcrossBed: 0,
  wedgePer100Mm: 0,
  driftOverCard: 0,
  sheetSd: 0.015,
  scatterGrowth: 0,
};

const letters = ['A', 'B', 'C', 'D', 'E', 'F'];
/** Shares of the batch's own changeover, from all out to none. */
const rungShares = [0.76, 0.85, 0.93, 1.02, 1.12, 1.25];

export interface ReadCard {
  readonly card: Card;
  readonly events: readonly ReadingEvent[];
}

/**
 * A card of six speeds, two shapes each, as an invented workshop cut it and somebody read it. `level`: how fast the batch
 * cuts against the others.
 */
export const readCardOf = (
  code: string,
  seed: number,
  { level = 1, at = sampleTime, ...over }: Partial<Card> & { level?: number; at?: string } = {},
): ReadCard => {
  const workshop = virtualWorkshop(
    { ...traits, v50MmPerS: level * traits.v50MmPerS },
    seededRandom(seed),
  );
  const rungs = letters.map((letter, i) => ({
    letter,
    setting: {
      powerPct: 30,
      speedMmPerS: Math.round(2 * 17 * level * (rungShares[i] ?? 1)) / 2,
      passes: 1,
    },
  }));
  const cells = letters.flatMap((rung) =>
    [1, 2].map((n) => ({ id: `${rung}${String(n)}`, rung, xMm: 10, yMm: 10 })),
  );
  const grades = workshop.cutCard(
    cells.map(({ rung }) => ({
      ...(rungs.find(({ letter }) => letter === rung)?.setting ?? {
        powerPct: 30,
        speedMmPerS: 17,
        passes: 1,
      }),
      xMm: workshop.bed.widthMm / 2,
      yMm: workshop.bed.heightMm / 2,
    })),
  );
  const events = cells.map(({ id }, i): ReadingEvent => {
    const grade: Grade = grades[i] ?? 'stays';
    return { id: `${code}-${id}`, cardCode: code, at, kind: 'graded', cell: id, grade };
  });
  return { card: sampleCard(code, { rungs, cells, ...over }), events };
};

/** Four boards of an invented workshop whose changeover lies at 17 mm/s, as the model takes them. */
export const fourOldBoards = (): CutStudy => {
  const read = [1, 2, 3, 4].map((n) => readCardOf(`E${String(n)}`, n));
  return toCutStudy(
    aStudy({
      cards: read.map(({ card }) => card),
      events: read.flatMap(({ events }) => events),
    }),
  );
};
