import { earlierAgreement } from '../../src/core/cutmodel/earlierAgreement.ts';
import { fit } from '../../src/core/cutmodel/fit.ts';
import { seededRandom, type SeededRandom } from '../../src/num/seededRandom.ts';
import { drawCard, drawStudy, drawTruth, type DrawnTruth } from './drawStudy.ts';

/** In what the new sheet differs from the earlier ones. */
export const differences = [
  'of-the-same-kind',
  'a-quarter-slower',
  'two-fifths-slower',
  'thrice-the-scatter',
  'a-third-of-the-scatter',
] as const;

export interface RuleMeasured {
  readonly difference: (typeof differences)[number];
  readonly workshops: number;
  /** Of 100 workshops, in how many the answer stops leaning on earlier sheets by the first twelve cells. */
  readonly stoppedPct: number;
  /** The same when asked anew after every third cell. */
  readonly everStoppedPct: number;
}

const changed = (truth: DrawnTruth, difference: RuleMeasured['difference']): DrawnTruth => {
  switch (difference) {
    case 'of-the-same-kind':
      return truth;
    case 'a-quarter-slower':
      return { ...truth, lnV50: truth.lnV50 + Math.log(0.75) };
    case 'two-fifths-slower':
      return { ...truth, lnV50: truth.lnV50 + Math.log(0.6) };
    case 'a-third-of-the-scatter':
      return { ...truth, sigma: truth.sigma / 3 };
    case 'thrice-the-scatter':
      return { ...truth, sigma: 3 * truth.sigma };
  }
};

/**
 * Workshops drawn from the model's own expectations: two earlier batches of two boards of twelve cells, and a new board of
 * twelve cells of another batch.
 */
export const measureEarlierRule = (
  difference: RuleMeasured['difference'],
  workshops: number,
  seed = 1,
): RuleMeasured => {
  const random = seededRandom(seed);
  let stopped = 0;
  let ever = 0;
  for (let n = 0; n < workshops; n += 1) {
    const truth = drawTruth(random);
    const history = ['b1', 'b2'].flatMap((batch) => {
      const batchEffect = truth.batchSd * random.normal();
      return ['s1', 's2'].flatMap((sheet) =>
        drawCard(truth, { cells: 12, batch, sheet, batchEffect }, random),
      );
    });
    const cells = shuffledCard(changed(truth, difference), random);
    const disagreesBy = (count: number): boolean => {
      const alone = drawStudy(cells.slice(0, count));
      return earlierAgreement(fit({ ...alone, history }), fit(alone)).disagrees;
    };
    const atTheEnd = disagreesBy(12);
    stopped += atTheEnd ? 1 : 0;
    ever += atTheEnd || [3, 6, 9].some(disagreesBy) ? 1 : 0;
  }
  return {
    difference,
    workshops,
    stoppedPct: (100 * stopped) / workshops,
    everStoppedPct: (100 * ever) / workshops,
  };
};

const shuffledCard = (truth: DrawnTruth, random: SeededRandom) => {
  const batchEffect = truth.batchSd * random.normal();
  return random.shuffle(
    drawCard(truth, { cells: 12, batch: 'now', sheet: 'now', batchEffect }, random),
  );
};
