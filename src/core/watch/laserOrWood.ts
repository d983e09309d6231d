import { links } from '../cutmodel/links.ts';
import type { StudyCell } from '../cutmodel/cutStudy.ts';
import type { Fit } from '../cutmodel/fit.ts';
import { priors } from '../cutmodel/priors.ts';
import { presentLnV50 } from '../cutmodel/presentLevel.ts';
import { thinned, type Posterior } from '../cutmodel/posterior.ts';
import type { Grade } from '../reading/grade.ts';
import { referenceLengthMm } from '../reading/promise.ts';
import { referenceLengthsIn } from '../reading/referenceLengths.ts';

/** What may have changed since the proven setting was found. */
export const causes = ['laser', 'wood', 'both', 'neither'] as const;
export type Cause = (typeof causes)[number];

/** How much of it each cause has, and how far each has moved if it has. */
export interface LaserOrWood {
  /** 0 to 1; they sum to 1. */
  readonly share: Readonly<Record<Cause, number>>;
  /** The cause that is pointed at; `unclear` where none has a share of {@link leastShare}. */
  readonly pointsAt: Cause | 'unclear';
  /** By how much both sheets, and the new batch beside, cut faster than before, in ln of speed; all causes averaged. */
  readonly laser: { readonly mean: number; readonly sd: number };
  readonly wood: { readonly mean: number; readonly sd: number };
}

/** The strips that were cut in one go: one in the reference sheet, one in the new batch. Either may be empty. */
export interface TwoStrips {
  readonly reference: readonly StudyCell[];
  readonly newBatch: readonly StudyCell[];
}

/** Below this share no cause is pointed at. Judgement. */
const leastShare = 0.6;

/** How often each is thought to be the cause before a strip is cut, when someone asks. Judgement, no source. */
export const causePriors: Readonly<Record<Cause, number>> = {
  laser: 0.25,
  wood: 0.3,
  both: 0.1,
  neither: 0.35,
};

/** What a change amounts to, in ln of speed. A laser loses more often than it gains; batches differ as in the cut model. */
export const changeSizes = {
  laserSd: 0.12,
  laserLosesShare: 0.85,
  woodSd: priors.batchSdScale,
  /** Unchanged is not to the last per cent. */
  unchangedSd: 0.015,
} as const;

const step = 0.025;
const shifts = Array.from({ length: 41 }, (_, i) => (i - 24) * step);
const pointCount = 300;
const sheetNodes = [-2.1, -1.4, -0.7, 0, 0.7, 1.4, 2.1];

/**
 * A small Bayesian model of two strips cut the same day. The level of the reference sheet has moved by ℓ, what the laser
 * gives; that of the new batch by ℓ + w, w what the wood gives:
 *
 *     ln v50(kept back) = its own history + ℓ + sheet        ln v50(new batch) = the same history + ℓ + w + sheet
 *
 * ℓ is 0 but for {@link changeSizes}.unchangedSd, or, where the laser changed, half-normal to either side, the loss 85 times in
 * 100; w the same with the cut model's batch scatter. The four causes have the weights {@link causePriors}. Everything else is
 * taken from the posterior of the history (`found`: the cells of the kept-back batch as its own, others as history),
 * each sheet with a sheet effect of its own. ~60 ms.
 */
export const laserOrWood = (fitted: Fit, strips: TwoStrips): LaserOrWood => {
  const points = thinned(fitted.posterior, pointCount);
  const reference = likelihoods(fitted, points, strips.reference);
  const fresh = likelihoods(fitted, points, strips.newBatch);
  // Chance of both strips at each pair of shifts, averaged over what is known of the rest.
  const chance = (laser: number, both: number): number => {
    let sum = 0;
    for (let i = 0; i < points.count; i += 1)
      sum += (reference[laser]?.[i] ?? NaN) * (fresh[both]?.[i] ?? NaN);
    return sum;
  };
  const sums = new Map<Cause, number>(causes.map((cause) => [cause, 0]));
  const l = { one: 0, two: 0 };
  const w = { one: 0, two: 0 };
  let all = 0;
  shifts.forEach((ell, a) => {
    shifts.forEach((sum, b) => {
      const wood = sum - ell;
      const likely = chance(a, b);
      for (const cause of causes) {
        const prior = causePriors[cause] * laserChance(cause, a) * woodChance(cause, wood);
        const weight = prior * likely;
        sums.set(cause, (sums.get(cause) ?? 0) + weight);
        all += weight;
        l.one += weight * ell;
        l.two += weight * ell * ell;
        w.one += weight * wood;
        w.two += weight * wood * wood;
      }
    });
  });
  const share = {
    laser: (sums.get('laser') ?? 0) / all,
    wood: (sums.get('wood') ?? 0) / all,
    both: (sums.get('both') ?? 0) / all,
    neither: (sums.get('neither') ?? 0) / all,
  };
  return {
    share,
    pointsAt: causes.find((cause) => share[cause] >= leastShare) ?? 'unclear',
    laser: meanSd(l, all),
    wood: meanSd(w, all),
  };
};

const meanSd = ({ one, two }: { readonly one: number; readonly two: number }, all: number) => {
  const mean = one / all;
  return { mean, sd: Math.sqrt(Math.max(0, two / all - mean * mean)) };
};

const changed: Readonly<Record<'laser' | 'wood', ReadonlySet<Cause>>> = {
  laser: new Set(['laser', 'both']),
  wood: new Set(['wood', 'both']),
};

const density = (x: number, sd: number): number => Math.exp(-0.5 * (x / sd) ** 2) / sd;

/** Prior of ℓ over the shifts, summing to 1. */
const laserPrior = (isChanged: boolean): readonly number[] => {
  const { laserSd, laserLosesShare, unchangedSd } = changeSizes;
  const raw = shifts.map((x) =>
    isChanged
      ? (x < 0 ? laserLosesShare : x > 0 ? 1 - laserLosesShare : 0.5) * density(x, laserSd)
      : density(x, unchangedSd),
  );
  const sum = raw.reduce((a, b) => a + b, 0);
  return raw.map((value) => value / sum);
};
const laserPriors = { changed: laserPrior(true), same: laserPrior(false) };

const laserChance = (cause: Cause, at: number): number =>
  (changed.laser.has(cause) ? laserPriors.changed : laserPriors.same)[at] ?? NaN;

/** Of w; the grid of sums cuts its far tails off alike for all causes. */
const woodChance = (cause: Cause, wood: number): number => {
  const sd = changed.wood.has(cause) ? changeSizes.woodSd : changeSizes.unchangedSd;
  return density(wood, sd) / woodNormaliser(sd);
};

const woodNormaliser = (sd: number): number => {
  const known = normalisers.get(sd);
  if (known !== undefined) return known;
  let sum = 0;
  for (let i = -80; i <= 80; i += 1) sum += density(i * step, sd);
  normalisers.set(sd, sum);
  return sum;
};
const normalisers = new Map<number, number>();

/** Chance of a strip's grades at each shift, for each point: `[shift][point]`. An empty strip says nothing. */
const likelihoods = (
  fitted: Fit,
  points: Posterior,
  cells: readonly StudyCell[],
): readonly Float64Array[] => {
  const present = presentLnV50(fitted.compiled, points);
  const graded = cells.flatMap((cell) => {
    const lnPower = fitted.compiled.lnPowerOf(cell.powerPct);
    if (cell.grade === undefined || cell.spoilt !== undefined || lnPower === null) return [];
    const lengthMm = cell.shapeLengthMm ?? referenceLengthMm;
    return [
      {
        grade: cell.grade,
        lnPower,
        lnSpeed: Math.log(cell.speedMmPerS),
        lnPasses: Math.log(cell.passes),
        lnThickness: Math.log(
          (cell.thicknessMm ?? fitted.study.stock.thicknessMm) / fitted.study.stock.thicknessMm,
        ),
        lengths: referenceLengthsIn(lengthMm),
        lengthM: lengthMm / 1000,
        counted: false,
      },
    ];
  });
  const weights = sheetNodes.map((z) => Math.exp(-0.5 * z * z));
  const all = weights.reduce((a, b) => a + b, 0);
  return shifts.map((shift) =>
    Float64Array.from({ length: points.count }, (_, i) => {
      const link = links[points.link[i] ?? NaN];
      if (link === undefined) return 0;
      const sigma = points.sigma[i] ?? NaN;
      let sum = 0;
      sheetNodes.forEach((z, node) => {
        const level = (present[i] ?? NaN) + shift + z * (points.sheetSd[i] ?? NaN);
        let chance = (weights[node] ?? NaN) / all;
        for (const cell of graded) {
          const margin =
            level +
            (points.powerExponent[i] ?? NaN) * cell.lnPower -
            (points.thicknessExponent[i] ?? NaN) * cell.lnThickness +
            (points.passesExponent[i] ?? NaN) * cell.lnPasses -
            cell.lnSpeed;
          const clear = Math.exp(-(points.flawsPerMetre[i] ?? NaN) * cell.lengthM);
          chance *= gradeChance(cell.grade, {
            out: clear * link.quickCdf(margin / sigma) ** cell.lengths,
            outOrHangs:
              clear * link.quickCdf((margin + (points.hangBand[i] ?? NaN)) / sigma) ** cell.lengths,
            flawed: 1 - clear,
          });
        }
        sum += chance;
      });
      return sum;
    }),
  );
};

const gradeChance = (
  grade: Grade,
  is: { readonly out: number; readonly outOrHangs: number; readonly flawed: number },
): number => {
  const sound = {
    out: is.out,
    hangs: is.outOrHangs - is.out + is.flawed / 2,
    stays: 1 - is.outOrHangs - is.flawed / 2,
  };
  const { misreading } = priors;
  return 0.5 * misreading + (1 - 1.5 * misreading) * Math.max(0, sound[grade]);
};
