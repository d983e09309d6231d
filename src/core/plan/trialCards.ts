import { energyCeiling } from '../card/ceiling.ts';
import { nearestStep } from '../machine/speedSteps.ts';
import { referenceLengthMm } from '../reading/promise.ts';
import type { TrialCard } from './playOut.ts';
import { oddsAt, type PlanPoints } from './planPoints.ts';
import type { PlanCosts } from './planWish.ts';

/** What is believed of the changeover at the plan's power, in ln(mm/s). */
export interface BelievedLevel {
  readonly mean: number;
  readonly sd: number;
}

/** Settings and shapes of the cards that are weighed against each other: cards pay for an order only while they are small. */
const sizes = [
  { settings: 3, cells: 3 },
  { settings: 3, cells: 6 },
  { settings: 4, cells: 4 },
  { settings: 4, cells: 8 },
  { settings: 5, cells: 5 },
  { settings: 6, cells: 6 },
] as const;

/** Ends of their ladders, in standard deviations about the believed changeover. */
const ends = [
  { low: -1.9, high: 0.8 },
  { low: -1.3, high: 0.8 },
  { low: -1.3, high: 1.2 },
  { low: -0.8, high: 0.8 },
] as const;

interface Ladder {
  readonly settings: number;
  readonly cells: number;
  readonly low: number;
  readonly high: number;
}

/** Cards about the believed changeover: ladders in even ratios of speed, none hotter than the ceiling on line energy. */
export const trialCards = (
  points: PlanPoints,
  costS: PlanCosts,
  believed: BelievedLevel,
  [least, most]: readonly [number, number],
): readonly TrialCard[] => {
  const slowest = Math.max(least, Math.exp(believed.mean) / energyCeiling);
  const seen = new Set<string>();
  return sizes.flatMap((size) =>
    ends.flatMap((span) => {
      const speeds = ladderSpeeds({ ...size, ...span }, believed, slowest, most);
      const key = `${speeds.join(' ')} of ${String(size.cells)}`;
      if (speeds.length < 2 || seen.has(key)) return [];
      seen.add(key);
      return [cardOf(points, costS, speeds, size.cells)];
    }),
  );
};

/** The card that a person cuts who takes all cards before the order: as good as three of eight, cut at once. */
export const threeCards = (
  points: PlanPoints,
  costS: PlanCosts,
  believed: BelievedLevel,
  [least, most]: readonly [number, number],
): TrialCard => {
  const slowest = Math.max(least, Math.exp(believed.mean) / energyCeiling);
  const speeds = ladderSpeeds(
    { settings: 12, cells: 24, low: -1.3, high: 0.8 },
    believed,
    slowest,
    most,
  );
  const card = cardOf(points, costS, speeds, 24);
  return { ...card, seconds: card.seconds + 2 * costS.card };
};

const ladderSpeeds = (
  { settings, low, high }: Ladder,
  { mean, sd }: BelievedLevel,
  slowest: number,
  fastest: number,
): readonly number[] => [
  ...new Set(
    Array.from({ length: settings }, (_, k) => {
      const wanted = Math.exp(mean + sd * (low + ((high - low) * k) / (settings - 1)));
      return nearestStep(Math.min(fastest, Math.max(slowest, wanted)));
    }),
  ),
];

const cardOf = (
  points: PlanPoints,
  costS: PlanCosts,
  speeds: readonly number[],
  cellsInAll: number,
): TrialCard => {
  const rungs = speeds.map((speedMmPerS, k) => ({
    speedMmPerS,
    cells: Math.floor(cellsInAll / speeds.length) + (k < cellsInAll % speeds.length ? 1 : 0),
  }));
  return {
    act: 'card',
    rungs,
    cuts: rungs.map(({ speedMmPerS, cells }) => ({
      odds: oddsAt(points, speedMmPerS, referenceLengthMm),
      parts: cells,
    })),
    seconds: rungs.reduce(
      (sum, { speedMmPerS, cells }) =>
        sum + costS.type + cells * (referenceLengthMm / speedMmPerS + costS.cell + costS.read),
      costS.card,
    ),
  };
};
