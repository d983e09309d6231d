import type { StudyCell } from '../../src/core/cutmodel/cutStudy.ts';
import type { Grade } from '../../src/core/reading/grade.ts';
import type { SeededRandom } from '../../src/num/seededRandom.ts';
import type { Hand } from '../shopKinds.ts';

/** One slip on the second card: what the hand does, and which cells it touches. */
export interface Slip {
  readonly hand: Hand;
  /** Asked after the card was cut. */
  readonly isTouched: (cell: StudyCell) => boolean;
}

export interface SlipKind {
  readonly name: string;
  /** Cells of each rung: a card of six rungs. */
  readonly cellsOfRung?: number;
  readonly slip: (random: SeededRandom) => Slip;
}

/** Counted from 0. */
const slippedCard = 1;
const slippedSheet = 'card 2';
const rungs = [0, 1, 2, 3, 4, 5];

/** One rung is cut at a speed made from the one that was meant. */
const rungCutAt = (
  rung: number,
  cutMmPerS: (meantMmPerS: number, ladder: readonly number[]) => number,
): Slip => {
  let typed = Number.NaN;
  return {
    hand: {
      cutMmPerS: (meant, card, ladder) => {
        if (card !== slippedCard || meant !== ladder[rung]) return meant;
        typed = meant;
        return cutMmPerS(meant, ladder);
      },
    },
    isTouched: (cell) => cell.sheet === slippedSheet && cell.speedMmPerS === typed,
  };
};

const wrongRung =
  (leastApart: number) =>
  (random: SeededRandom): Slip => {
    const pairs = rungs.flatMap((at) =>
      rungs.filter((other) => Math.abs(other - at) >= leastApart).map((other) => ({ at, other })),
    );
    const { at, other } = pairs[random.integer(pairs.length)] ?? { at: 0, other: 5 };
    return rungCutAt(at, (meant, ladder) => ladder[other] ?? meant);
  };

/** 17.5 becomes 7.5, 15 or 17; never so slow that no machine runs it. */
const digitDropped = (random: SeededRandom): Slip =>
  rungCutAt(random.integer(rungs.length), (meant) => {
    const text = String(meant);
    const shorter = Array.from({ length: text.length }, (_, i) =>
      text[i] === '.' ? Number.NaN : Number(text.slice(0, i) + text.slice(i + 1)),
    ).filter((speed) => speed >= 0.5 && speed !== meant);
    return shorter[random.integer(Math.max(1, shorter.length))] ?? meant;
  });

const grades: readonly Grade[] = ['out', 'hangs', 'stays'];

/** One cell's grade is tapped as another, or as the one that is farthest from it. */
const wrongTap =
  (opposite: boolean) =>
  (random: SeededRandom): Slip => {
    let tapped: StudyCell | undefined;
    return {
      hand: {
        noted: (cells, card) => {
          if (card !== slippedCard) return cells;
          const may = cells.filter(({ grade }) => !opposite || grade !== 'hangs');
          const chosen = may[random.integer(Math.max(1, may.length))];
          if (chosen === undefined) return cells;
          const others = grades.filter(
            (grade) => grade !== chosen.grade && (!opposite || grade !== 'hangs'),
          );
          const wrong = { ...chosen, grade: others[random.integer(others.length)] ?? 'hangs' };
          tapped = wrong;
          return cells.map((cell) => (cell === chosen ? wrong : cell));
        },
      },
      isTouched: (cell) => cell === tapped,
    };
  };

/** The whole card cuts faster or slower, as often the one as the other. */
const cardShifted =
  (share: number) =>
  (random: SeededRandom): Slip => {
    const shift = Math.log1p(share) * (random.uniform() < 0.5 ? -1 : 1);
    return {
      hand: { cardShift: (card) => (card === slippedCard ? shift : 0) },
      isTouched: ({ sheet }) => sheet === slippedSheet,
    };
  };

export const noSlip: SlipKind = {
  name: 'no slip',
  slip: () => ({ hand: {}, isTouched: () => false }),
};

export const slipKinds: readonly SlipKind[] = [
  { name: 'a rung cut at any other rung’s speed', slip: wrongRung(1) },
  { name: 'a rung cut at a speed three rungs away or more', slip: wrongRung(3) },
  { name: 'a digit dropped in a rung’s speed', slip: digitDropped },
  { name: 'a grade tapped as another', slip: wrongTap(false) },
  { name: 'out tapped as stays, or stays as out', slip: wrongTap(true) },
  { name: 'second card 10 % off', slip: cardShifted(0.1) },
  { name: 'second card 15 % off', slip: cardShifted(0.15) },
  { name: 'second card 10 % off, cards of 24', cellsOfRung: 4, slip: cardShifted(0.1) },
  { name: 'second card 15 % off, cards of 24', cellsOfRung: 4, slip: cardShifted(0.15) },
];
