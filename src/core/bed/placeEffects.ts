import { normalCdf } from '../../num/normal.ts';
import { priors } from '../cutmodel/priors.ts';
import { grades, type Grade } from '../reading/grade.ts';
import { chanceBelow, quantileOf, sumOf, times, type GridDensity } from './gridDensity.ts';
import { bedPlaces, bedSides, forEachPlace, type BedPlace, type BedSide } from './place.ts';

/** How many cells of one place got each grade; spoilt ones are left out. */
export type GradeCounts = Readonly<Record<Grade, number>>;

export type GradesByPlace = Readonly<Record<BedPlace, GradeCounts>>;

/** What is known of the sheet beforehand: the study's posterior means, or {@link scatterUnstudied}. */
export interface Scatter {
  /** Of shapes about the changeover, in ln speed. */
  readonly sigma: number;
  /** Width of the hanging band, in ln speed. */
  readonly hangBand: number;
}

export const scatterUnstudied: Scatter = {
  sigma: Math.exp(priors.lnSigma.mean),
  hangBand: Math.exp(priors.lnHangBand.mean),
};

/** How much slower the changeover lies here than in the other places (below 0: faster), in per cent. */
export interface Slower {
  readonly slowerPct: number;
  /** 5 % and 95 % of what is known. */
  readonly lowPct: number;
  readonly highPct: number;
  /** Probability that it is more than {@link weakPct} slower, and more than {@link evenWithinPct}; 0–1. */
  readonly chanceWeak: number;
  readonly chanceUneven: number;
}

export interface PlaceEffects {
  readonly places: Readonly<Record<BedPlace, Slower>>;
  /** Two neighbouring places against the two opposite. */
  readonly sides: Readonly<Record<BedSide, Slower>>;
  /** Fisher information of one more cell about its place's ln changeover speed, where the cells now stand. */
  readonly informationPerCell: number;
}

/** What counts as weaker: a changeover that lies more than this slower. */
export const weakPct = 5;
/** A bed is called even where no place is likely slower than this. */
export const evenWithinPct = 10;
/** Standard deviation of a place's effect on ln speed before anything is read. Judgement from common practice, no source. */
export const placeSd = 0.1;
/** The chosen setting is believed to let two thirds out; how surely, in ln speed. */
const level = { inSigmas: 0.43, sd: 0.3 } as const;

/** Steps of the grid: 5 sd of a place, 4 sd of the level, which moves by whole steps of the same grid. */
const stepLn = 0.0125;
const reach = 40;
const levelStep = 3;
const levelReach = 32;
/** Points with less than this part of the likeliest one's weight move no figure that is shown. */
const negligible = 1e-5;

/**
 * The posterior of what the place does to the changeover. Each place has an effect δ ~ N(0, 0.1²) on ln v50 and all share
 * one level; grades are ordinal with the cut model's law for one setting, P(out) = Φ(m/σ), P(out or hangs) = Φ((m+g)/σ),
 * misread as there. By quadrature: given the level the places are independent, so that differences are convolutions on a
 * grid. ~10 ms.
 */
export const placeEffects = (
  grades: GradesByPlace,
  scatter: Scatter = scatterUnstudied,
): PlaceEffects => {
  const curves = gradeCurves(scatter);
  const levels = levelsOf(grades, curves, scatter);
  const mix = (of: (effects: Effects) => GridDensity): GridDensity =>
    mixture(levels.map(({ weight, effects }) => ({ weight, density: of(effects) })));
  const effectOf = (name: BedPlace): Slower =>
    slowerOf(
      mix((effects) => {
        const others = bedPlaces.filter((other) => other !== name).map((other) => effects[other]);
        return sumOf(times(effects[name], 3), times(others.reduce(sumOf), -1));
      }),
      3,
    );
  const across = (name: BedSide, opposite: BedSide): GridDensity =>
    mix((effects) => sumOf(pairOf(effects, name), times(pairOf(effects, opposite), -1)));
  const [frontOverBack, leftOverRight] = [across('front', 'back'), across('left', 'right')];
  return {
    places: forEachPlace(effectOf),
    sides: {
      front: slowerOf(frontOverBack, 2),
      back: slowerOf(times(frontOverBack, -1), 2),
      left: slowerOf(leftOverRight, 2),
      right: slowerOf(times(leftOverRight, -1), 2),
    },
    informationPerCell: levels.reduce(
      (sum, { weight, lnMargin }) => sum + weight * informationAt(curves, lnMargin),
      0,
    ),
  };
};

type Effects = Readonly<Record<BedPlace, GridDensity>>;

const pairOf = (effects: Effects, side: BedSide): GridDensity => {
  const [one, two] = bedSides[side];
  return sumOf(effects[one], effects[two]);
};

/** Probability of each grade as it is read, at a margin in ln speed. */
type Curves = (lnMargin: number) => Readonly<Record<Grade, number>>;

const gradeCurves =
  ({ sigma, hangBand }: Scatter): Curves =>
  (lnMargin) => {
    const out = normalCdf(lnMargin / sigma);
    const through = normalCdf((lnMargin + hangBand) / sigma);
    const read = (p: number): number =>
      (1 - priors.misreading) * p + (priors.misreading / 2) * (1 - p);
    return { out: read(out), hangs: read(through - out), stays: read(1 - through) };
  };

interface Level {
  readonly lnMargin: number;
  readonly weight: number;
  readonly effects: Effects;
}

/** The levels that weigh anything, their weights summing to 1, and the places' effects given each. */
const levelsOf = (grades: GradesByPlace, curves: Curves, { sigma }: Scatter): readonly Level[] => {
  const middle = level.inSigmas * sigma;
  const furthest = reach + levelStep * levelReach;
  const lnChances = Array.from({ length: 2 * furthest + 1 }, (_, i) => {
    const { out, hangs, stays } = curves(middle + (i - furthest) * stepLn);
    return { out: Math.log(out), hangs: Math.log(hangs), stays: Math.log(stays) };
  });
  const lnLikelihoods = forEachPlace((place) =>
    lnChances.map(
      (ln) =>
        grades[place].out * ln.out +
        grades[place].hangs * ln.hangs +
        grades[place].stays * ln.stays,
    ),
  );
  const all = Array.from({ length: 2 * levelReach + 1 }, (_, i) => {
    const first = levelStep * i;
    const given = forEachPlace((place) => effectGiven(lnLikelihoods[place], first));
    const off = (i - levelReach) * levelStep * stepLn;
    return {
      lnMargin: middle + off,
      lnWeight: bedPlaces.reduce(
        (sum, place) => sum + given[place].lnTotal,
        -0.5 * (off / level.sd) ** 2,
      ),
      effects: forEachPlace((place) => given[place].density),
    };
  });
  const top = Math.max(...all.map(({ lnWeight }) => lnWeight));
  const kept = all
    .map((each) => ({ ...each, weight: Math.exp(each.lnWeight - top) }))
    .filter(({ weight }) => weight > negligible);
  const total = kept.reduce((sum, { weight }) => sum + weight, 0);
  return kept.map((each) => ({ ...each, weight: each.weight / total }));
};

/** A place's effect given the common level, and ln of the probability of its grades there. */
const effectGiven = (
  lnLikelihood: readonly number[],
  first: number,
): { readonly density: GridDensity; readonly lnTotal: number } => {
  const logs = Array.from(
    { length: 2 * reach + 1 },
    (_, i) =>
      (lnLikelihood[first + i] ?? -Infinity) - 0.5 * (((i - reach) * stepLn) / placeSd) ** 2,
  );
  const top = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - top));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const counts = weights.map((weight) => weight > negligible);
  const [from, to] = [counts.indexOf(true), counts.lastIndexOf(true) + 1];
  return {
    density: {
      from: from - reach,
      weights: Float64Array.from(weights.slice(from, to), (weight) => weight / total),
    },
    lnTotal: top + Math.log(total),
  };
};

/** The parts need not begin or end alike. */
const mixture = (
  parts: readonly { readonly weight: number; readonly density: GridDensity }[],
): GridDensity => {
  const from = Math.min(...parts.map(({ density }) => density.from));
  const to = Math.max(...parts.map(({ density }) => density.from + density.weights.length));
  const weights = new Float64Array(to - from);
  let total = 0;
  for (const { weight, density } of parts) {
    const shift = density.from - from;
    for (const [i, each] of density.weights.entries()) {
      weights[shift + i] = (weights[shift + i] ?? NaN) + weight * each;
      total += weight * each;
    }
  }
  return { from, weights: weights.map((each) => each / total) };
};

/** From the density of `parts` times a difference of ln speed: a lower one is a slower changeover. */
const slowerOf = (density: GridDensity, parts: number): Slower => {
  const pctAt = (p: number): number =>
    100 * (1 - Math.exp((quantileOf(density, p) * stepLn) / parts));
  const chanceSlowerBy = (pct: number): number =>
    chanceBelow(density, (Math.log(1 - pct / 100) * parts) / stepLn);
  return {
    slowerPct: pctAt(0.5),
    lowPct: pctAt(0.95),
    highPct: pctAt(0.05),
    chanceWeak: chanceSlowerBy(weakPct),
    chanceUneven: chanceSlowerBy(evenWithinPct),
  };
};

/** Σ p′²/p over the three grades. */
const informationAt = (curves: Curves, lnMargin: number): number => {
  const h = 1e-4;
  const [before, here, after] = [curves(lnMargin - h), curves(lnMargin), curves(lnMargin + h)];
  return grades.reduce(
    (sum, grade) => sum + ((after[grade] - before[grade]) / (2 * h)) ** 2 / here[grade],
    0,
  );
};
