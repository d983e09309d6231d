import { halton } from '../../num/halton.ts';
import { betaCdf } from '../../num/distributions.ts';
import { normalQuantile } from '../../num/normal.ts';
import { decisionOn, levelOf, scatterOf } from '../cutmodel/decisionOn.ts';
import type { Fit } from '../cutmodel/fit.ts';
import { links } from '../cutmodel/links.ts';
import { meanSdOf, thinned } from '../cutmodel/posterior.ts';
import { priors } from '../cutmodel/priors.ts';
import type { Setting } from '../machine/setting.ts';
import { referenceLengthsIn } from '../reading/referenceLengths.ts';
import type { LearntCorners } from './learntCorners.ts';
import { equivalentSpeed } from './placeVerdict.ts';

/** What of a part its promise depends on. */
export interface PartToPromise {
  readonly cutMm: number;
  /** Its weakest place, in ln speed; never above 0: a stronger place is no gain. */
  readonly marginChange: number;
  /** How much of what a corners card taught holds at that place; absent: nothing of it. */
  readonly learntShare?: number;
}

/** How many of the parts, with a band: nine times in ten the count lies in it. */
export interface Expected {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
}

/** Parts that are as hard to cut out as one another. */
export interface PartKind {
  readonly count: number;
  readonly cutMm: number;
  readonly marginChange: number;
  /** Of 100 sound ones, how many come out on average over what is known. */
  readonly outOf100Mean: number;
  /** How sure of the promise that was asked for, for this very part. */
  readonly surePct: number;
}

/** The study's promise carried to the parts of a drawing. */
export interface DrawingPromise {
  readonly parts: number;
  /** As asked for, echoed. */
  readonly outOf100: number;
  /** The hardest first, and no more than a person reads. */
  readonly kinds: readonly PartKind[];
  /** Sound parts that need a knife because of the setting. */
  readonly needKnife: Expected;
  /** Parts that a flaw in the sheet meets, whatever the setting; absent: the readings do not tell how many flaws there are. */
  readonly meetFlaw?: Expected;
}

/** Points of the posterior that are asked about every kind of part. */
const points = 1500;

/** Kinds that are told one by one. */
const mostKinds = 6;

/** Cut lengths within 2 % and places within 0.01 in ln speed are one kind: by the longer and the weaker of them. */
const lengthStep = 0.02;
const changeStep = 0.01;

/**
 * What a setting promises for the parts of one drawing, all of them cut from one sheet: each point of the posterior has a
 * sheet of its own by its scatter, and its parts fail one by one. The counts are a mixture of binomials over these points,
 * which takes parts that differ for parts alike: a band a little too wide. O(kinds · points).
 */
export const promiseForParts = (
  { compiled, posterior, study, decision }: Fit,
  setting: Setting,
  parts: readonly PartToPromise[],
  learnt?: Pick<LearntCorners, 'exponent' | 'lnCorners'>,
): DrawingPromise | null => {
  const { powerPct, speedMmPerS, passes } = setting;
  const lnPower = compiled.lnPowerOf(powerPct);
  const kinds = kindsOf(parts);
  if (lnPower === null || kinds.length === 0) return null;
  const few = thinned(posterior, points);
  const sheet = oneSheetEach(
    levelOf(compiled, few, study.promise, passes),
    scatterOf(few, study.promise),
  );
  /** What is not sure of the corners is not sure of a part whose weakest place is one. */
  const changeOf = ({ marginChange, learntShare = 0 }: Kind, point: number): number => {
    if (learnt === undefined || learntShare === 0) return marginChange;
    const off = learnt.exponent - (few.cornersExponent[point] ?? learnt.exponent);
    return Math.min(0, marginChange + learntShare * learnt.lnCorners * off);
  };
  const lnSpeed = Math.log(speedMmPerS);
  const shares = kinds.map((kind) => {
    const { cutMm } = kind;
    const lengths = referenceLengthsIn(cutMm);
    return Float64Array.from({ length: points }, (_, i) => {
      const level = (sheet[i] ?? NaN) + (few.powerExponent[i] ?? NaN) * lnPower;
      const margin = level - lnSpeed + changeOf(kind, i);
      const f = links[few.link[i] ?? NaN]?.quickCdf(margin / (few.sigma[i] ?? NaN)) ?? NaN;
      return lengths === 1 ? f : f ** lengths;
    });
  });
  const failing = meanOver(kinds, (k, i) => 1 - (shares[k]?.[i] ?? NaN));
  const flawed = meanOver(
    kinds,
    (k, i) => 1 - Math.exp((-(few.flawsPerMetre[i] ?? NaN) * (kinds[k]?.cutMm ?? NaN)) / 1000),
  );
  const hardest = kinds
    .map((kind, k) => ({ kind, mean: mean(shares[k] ?? new Float64Array()) }))
    .sort((a, b) => a.mean - b.mean)
    .slice(0, mostKinds);
  const flaws = meanSdOf(posterior, (i) => posterior.flawsPerMetre[i] ?? NaN);
  return {
    parts: parts.length,
    outOf100: study.promise.outOf100,
    kinds: hardest.map(({ kind: { learntShare = 0, ...kind }, mean: outMean }) => {
      if (learnt !== undefined && learntShare > 0) {
        const wish = { ...study.promise, partLengthMm: kind.cutMm };
        const { lnFastestAtP0 } = decisionOn(compiled, few, wish, passes);
        const holds = lnFastestAtP0.map((lnFastest, i) => {
          const held = lnFastest + (few.powerExponent[i] ?? NaN) * lnPower;
          return held + changeOf({ ...kind, learntShare }, i) >= lnSpeed ? 1 : 0;
        });
        return { ...kind, outOf100Mean: 100 * outMean, surePct: 100 * mean(holds) };
      }
      const speed = equivalentSpeed(speedMmPerS, kind.marginChange);
      const own =
        kind.cutMm === study.promise.partLengthMm && passes === 1
          ? decision
          : decisionOn(compiled, posterior, { ...study.promise, partLengthMm: kind.cutMm }, passes);
      return {
        ...kind,
        outOf100Mean: 100 * own.shareAt(powerPct, speed),
        surePct: 100 * own.sureAt(powerPct, speed),
      };
    }),
    needKnife: expected(parts.length, failing),
    // The prior of the flaw rate has an sd equal to its mean; half of that is the least that is worth a figure.
    ...(flaws.sd < priors.flawsPerMetreMean / 2
      ? { meetFlaw: expected(parts.length, flawed) }
      : {}),
  };
};

interface Kind extends PartToPromise {
  readonly count: number;
}

const kindsOf = (parts: readonly PartToPromise[]): readonly Kind[] => {
  const kinds = new Map<string, Kind>();
  for (const { cutMm, marginChange, learntShare = 0 } of parts) {
    const change = Math.floor(Math.min(0, marginChange) / changeStep + 1e-6) * changeStep;
    const key = `${String(Math.ceil(Math.log(Math.max(1, cutMm)) / lengthStep))} ${change.toFixed(2)} ${learntShare.toFixed(1)}`;
    const known = kinds.get(key);
    kinds.set(key, {
      count: (known?.count ?? 0) + 1,
      cutMm: Math.max(cutMm, known?.cutMm ?? 0),
      marginChange: Math.min(0, marginChange, known?.marginChange ?? 0),
      learntShare: Math.max(learntShare, known?.learntShare ?? 0),
    });
  }
  return [...kinds.values()];
};

/** One sheet for each point, on a fixed sequence: identical input, identical answer. */
const oneSheetEach = (level: Float64Array, scatter: Float64Array): Float64Array => {
  const places = halton(level.length, [2], { skip: 1 });
  return level.map((at, i) => at + (scatter[i] ?? NaN) * normalQuantile(places[i]?.[0] ?? NaN));
};

/** For each point the mean over all parts. */
const meanOver = (kinds: readonly Kind[], at: (kind: number, point: number) => number) => {
  const count = kinds.reduce((sum, kind) => sum + kind.count, 0);
  return Float64Array.from({ length: points }, (_, i) =>
    kinds.reduce((sum, kind, k) => sum + (kind.count / count) * at(k, i), 0),
  );
};

const mean = (values: Float64Array): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);

const expected = (count: number, shares: Float64Array): Expected => ({
  mean: count * mean(shares),
  low: mixtureQuantile(count, shares, 0.05),
  high: mixtureQuantile(count, shares, 0.95),
});

/** The least k that a mixture of binomials does not exceed with probability `p`. */
const mixtureQuantile = (count: number, shares: Float64Array, p: number): number => {
  const atMost = (k: number): number =>
    k >= count ? 1 : mean(shares.map((share) => betaCdf(1 - share, count - k, k + 1)));
  let [low, high] = [-1, count];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (atMost(middle) >= p) high = middle;
    else low = middle;
  }
  return high;
};
