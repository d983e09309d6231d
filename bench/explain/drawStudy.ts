import { compileStudy } from '../../src/core/cutmodel/compileStudy.ts';
import type { CutStudy, StudyCell } from '../../src/core/cutmodel/cutStudy.ts';
import { links } from '../../src/core/cutmodel/links.ts';
import { priorMedianV50MmPerS, priors } from '../../src/core/cutmodel/priors.ts';
import { nearestStep } from '../../src/core/machine/speedSteps.ts';
import type { Grade } from '../../src/core/reading/grade.ts';
import { defaultPromise } from '../../src/core/reading/promise.ts';
import type { SeededRandom } from '../../src/num/seededRandom.ts';

/** One workshop and material, drawn from the model's own expectations. */
export interface DrawnTruth {
  readonly lnV50: number;
  readonly sigma: number;
  readonly hangBand: number;
  readonly sheetSd: number;
  readonly batchSd: number;
  readonly flawsPerMetre: number;
  readonly link: (typeof links)[number];
}

const powerPct = 30;

export const drawTruth = (random: SeededRandom): DrawnTruth => {
  const u = random.uniform();
  const index = u < 0.5 ? 0 : u < 0.7 ? 1 : 2;
  const [first] = links;
  if (first === undefined) throw new Error('there are links');
  return {
    lnV50:
      Math.log(priorMedianV50MmPerS('plywood', 3, powerPct / 100)) +
      priors.lnV50Sd * random.normal(),
    sigma: Math.exp(priors.lnSigma.mean + priors.lnSigma.sd * random.normal()),
    hangBand: Math.exp(priors.lnHangBand.mean + priors.lnHangBand.sd * random.normal()),
    sheetSd: priors.sheetSdScale * Math.abs(random.normal()),
    batchSd: priors.batchSdScale * Math.abs(random.normal()),
    flawsPerMetre: -priors.flawsPerMetreMean * Math.log(random.uniform()),
    link: links[index] ?? first,
  };
};

/** Speeds of a card about a level, from nearly all out to nearly none. */
const shares = [0.74, 0.84, 0.93, 1.02, 1.13, 1.27];

interface CardWish {
  readonly cells: number;
  readonly batch: string;
  readonly sheet: string;
  /** The batch's own level, ln. */
  readonly batchEffect: number;
}

/** A card of six speeds about what the truth would let expect, as it was read. */
export const drawCard = (
  truth: DrawnTruth,
  { cells, batch, sheet, batchEffect }: CardWish,
  random: SeededRandom,
): readonly StudyCell[] => {
  const level = truth.lnV50 + batchEffect + truth.sheetSd * random.normal();
  // The card is laid about a guess that is off by a tenth or so.
  const centre = truth.lnV50 + batchEffect + 0.1 * random.normal();
  return Array.from({ length: cells }, (_, i): StudyCell => {
    const speedMmPerS = nearestStep(Math.exp(centre) * (shares[i % shares.length] ?? 1));
    const grade = drawGrade(truth, level - Math.log(speedMmPerS), random);
    return { powerPct, speedMmPerS, passes: 1, batch, sheet, grade };
  });
};

const grades: readonly Grade[] = ['out', 'hangs', 'stays'];

const drawGrade = (truth: DrawnTruth, margin: number, random: SeededRandom): Grade => {
  const { link, sigma, hangBand, flawsPerMetre } = truth;
  const isFlawed = random.uniform() < 1 - Math.exp(-flawsPerMetre * 0.06);
  const u = random.uniform();
  const grade: Grade = isFlawed
    ? u < 0.5
      ? 'hangs'
      : 'stays'
    : u < link.cdf(margin / sigma)
      ? 'out'
      : u < link.cdf((margin + hangBand) / sigma)
        ? 'hangs'
        : 'stays';
  if (random.uniform() >= priors.misreading) return grade;
  return grades.filter((other) => other !== grade)[random.integer(2)] ?? grade;
};

export const drawStudy = (
  cells: readonly StudyCell[],
  history: readonly StudyCell[] = [],
): CutStudy => ({
  machine: { maxPowerPct: 100, speedRangeMmPerS: [0.5, 400] },
  stock: { material: 'plywood', thicknessMm: 3 },
  cells,
  ...(history.length > 0 ? { history } : {}),
  tallies: [],
  promise: defaultPromise,
  ask: { powerPct },
});

/** Whether a study has something that came out and something that did not. */
export const isAnswerable = (study: CutStudy): boolean => {
  const outcomes = compileStudy(study).model.observations.map(({ outcome }) => outcome);
  return outcomes.includes('out') && outcomes.some((outcome) => outcome !== 'out');
};
