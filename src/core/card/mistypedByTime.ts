import type { Machine } from '../machine/machine.ts';
import type { MotionValues } from '../motion/motionValues.ts';
import type { Setting } from '../machine/setting.ts';
import { jobTime } from '../motion/jobTime.ts';
import { assumedMotion, timeErrorPctOf } from '../motion/timeBand.ts';
import type { Card } from './card.ts';
import { cardDrawing, type DrawnLayer } from './cardDrawing.ts';
import { layerMoves } from './cardMoves.ts';
import { cardTime } from './cardTime.ts';
import { entriesOf, type TypeInEntry } from './typeInList.ts';
import { slipKinds, slipsOf, type SlipKind } from './typingSlips.ts';

/** An entry of the control program that was probably typed wrong. */
export interface TypingSuspect {
  /** A rung's letter, `marks` or `window` (with the outline). */
  readonly label: string;
  readonly meant: Setting;
  readonly probably: Setting;
  readonly how: SlipKind;
  /** How probable it is that this entry was typed wrong, 0–1. */
  readonly probability: number;
}

/** What a told time says of what was typed. Power does not show in a time; speeds and passes do. */
export interface TimeVerdict {
  /** `motion-unknown`: without the machine's motion the band is too wide to tell. */
  readonly verdict: 'as-expected' | 'mistyped' | 'unclear' | 'motion-unknown';
  readonly expectedSeconds: number;
  /** A slip that changes the time by less than this does not show. */
  readonly showsFromSeconds: number;
  /** The likeliest first; at most three. */
  readonly suspects: readonly TypingSuspect[];
}

/**
 * Which entries of a card's settings were probably mistyped, from the time that the machine told. Each entry is typed wrong
 * with a small probability, in the ways of {@link slipsOf}; none, one or two of them are; or the time is off for a reason
 * that has nothing to do with typing. The posterior over these, with the error that the motion's fit owns up to.
 * O(entries² · slips²) beside one plan of an entry a slip: ~0.1 s.
 */
export const mistypedByTime = (
  card: Card,
  toldSeconds: number,
  { machine, before }: { readonly machine: Machine; readonly before?: Card },
): TimeVerdict => {
  const motion = machine.motion ?? assumedMotion.likely;
  const { seconds } = cardTime(card, motion);
  const sd = sdOf(seconds, motion);
  const told = {
    expectedSeconds: seconds,
    showsFromSeconds: clearlyOff * sd,
  };
  if (machine.motion === undefined) return { verdict: 'motion-unknown', ...told, suspects: [] };
  const slips = slipsOfCard(card, { machine, before, motion });
  const { none, mistyped, bySlip } = weigh(slips, seconds, toldSeconds, motion);
  const suspects = none > 0.5 ? [] : suspectsAmong(slips, bySlip);
  const verdict =
    none > 0.5 ? 'as-expected' : mistyped >= 0.8 && suspects.length > 0 ? 'mistyped' : 'unclear';
  return { verdict, ...told, suspects };
};

/** How often an entry is typed wrong, and how the ways share that. Common practice, no source. */
const slipRate = 0.01;
const waysShare: Readonly<Record<SlipKind, number>> = {
  'not-changed': 0.4,
  'digit-dropped': 0.25,
  'point-lost': 0.2,
  'digits-swapped': 0.15,
};
/** How often a time is off though everything was typed right: a pause, an override, another file. */
const otherReason = 0.02;
/** Whole seconds on a display. */
const readingSd = 0.3;
const clearlyOff = 2.5;

const sdOf = (seconds: number, motion: MotionValues): number =>
  Math.hypot((seconds * timeErrorPctOf(motion)) / 100, readingSd);

interface Slip {
  readonly entry: string;
  readonly meant: Setting;
  readonly probably: Setting;
  readonly how: SlipKind;
  /** Relative to the entry typed right. */
  readonly odds: number;
  /** By how much the card then takes longer. */
  readonly longerS: number;
}

interface Around {
  readonly machine: Machine;
  readonly before: Card | undefined;
  readonly motion: MotionValues;
}

const slipsOfCard = (card: Card, around: Around): readonly Slip[] => {
  const { layers } = cardDrawing(card);
  const entries = entriesOf(card);
  const known = new Map(
    around.before === undefined
      ? []
      : entriesOf(around.before).map(({ label, setting }) => [label, setting]),
  );
  return entries.flatMap((entry, i) => {
    const stoodThere = [entries[i - 1]?.setting, known.get(entry.label)];
    const own = layers.filter(({ colour }) => colour === entry.colour);
    return slipsOfEntry(
      entry,
      own,
      stoodThere.filter((setting) => setting !== undefined),
      around,
    );
  });
};

const slipsOfEntry = (
  { label, setting: meant }: TypeInEntry,
  layers: readonly DrawnLayer[],
  stoodThere: readonly Setting[],
  { machine, motion }: Around,
): readonly Slip[] => {
  if (meant === undefined) return [];
  const [, fastest] = machine.speedRangeMmPerS;
  const speeds = slipsOf(
    meant.speedMmPerS,
    stoodThere.map(({ speedMmPerS }) => speedMmPerS),
  ).map(({ kind, value }) => ({
    how: kind,
    // No controller runs faster than its machine.
    probably: { ...meant, speedMmPerS: Math.min(value, fastest) },
  }));
  const passes = [...new Set([1, ...stoodThere.map((setting) => setting.passes)])]
    .filter((value) => value !== meant.passes)
    .map((value) => ({ how: 'not-changed' as const, probably: { ...meant, passes: value } }));
  const ways = [...speeds, ...passes];
  const secondsAt = (setting: Setting): number =>
    layers.reduce(
      (sum, layer) => sum + jobTime(layerMoves(layer, motion, setting), motion).seconds,
      0,
    );
  const right = secondsAt(meant);
  return slipKinds.flatMap((kind) => {
    const ofKind = ways.filter(({ how }) => how === kind);
    return ofKind.map(({ how, probably }) => ({
      entry: label,
      meant,
      probably,
      how,
      odds: (slipRate * waysShare[kind]) / ofKind.length,
      longerS: secondsAt(probably) - right,
    }));
  });
};

/** Posterior of none, of one or two slips, and of each slip. */
const weigh = (
  slips: readonly Slip[],
  expectedSeconds: number,
  toldSeconds: number,
  motion: MotionValues,
): { readonly none: number; readonly mistyped: number; readonly bySlip: readonly number[] } => {
  const likelihood = (longerS: number): number => {
    const seconds = Math.max(1, expectedSeconds + longerS);
    const sd = sdOf(seconds, motion);
    return Math.exp(-0.5 * ((toldSeconds - seconds) / sd) ** 2) / (sd * Math.sqrt(2 * Math.PI));
  };
  const bySlip = slips.map(({ odds, longerS }) => odds * likelihood(longerS));
  let mistyped = bySlip.reduce((sum, value) => sum + value, 0);
  slips.forEach((one, i) => {
    slips.slice(i + 1).forEach((other, k) => {
      if (one.entry === other.entry) return;
      const weight = one.odds * other.odds * likelihood(one.longerS + other.longerS);
      mistyped += weight;
      bySlip[i] = (bySlip[i] ?? NaN) + weight;
      bySlip[i + 1 + k] = (bySlip[i + 1 + k] ?? NaN) + weight;
    });
  });
  const none = likelihood(0);
  // Off by any factor up to 3, either way, all equally likely.
  const factor = Math.abs(Math.log(toldSeconds / expectedSeconds));
  const other = factor < Math.log(3) ? otherReason / (toldSeconds * Math.log(9)) : 0;
  const all = none + mistyped + other;
  // A time that nothing explains, to the last digit that a number holds.
  const share = (weight: number): number => (all > 0 ? weight / all : 0);
  return { none: share(none), mistyped: share(mistyped), bySlip: bySlip.map(share) };
};

const leastProbability = 0.15;
const mostSuspects = 3;

/** Entry by entry, each with its likeliest slip. */
const suspectsAmong = (
  slips: readonly Slip[],
  bySlip: readonly number[],
): readonly TypingSuspect[] =>
  [...new Set(slips.map(({ entry }) => entry))]
    .flatMap((label): readonly TypingSuspect[] => {
      const own = slips
        .map((slip, i) => ({ slip, probability: bySlip[i] ?? NaN }))
        .filter(({ slip }) => slip.entry === label)
        .sort((a, b) => b.probability - a.probability);
      const [best] = own;
      if (best === undefined) return [];
      const { meant, probably, how } = best.slip;
      const probability = own.reduce((sum, each) => sum + each.probability, 0);
      return [{ label, meant, probably, how, probability }];
    })
    .filter(({ probability }) => probability >= leastProbability)
    .sort((a, b) => b.probability - a.probability)
    .slice(0, mostSuspects);
