import { fit } from '../../src/core/cutmodel/fit.ts';
import type { Posterior } from '../../src/core/cutmodel/posterior.ts';
import type { Parameters } from '../../src/core/cutmodel/parameters.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { answerShare, inShares, type Share } from '../shares.ts';
import { drawStudy } from './drawStudy.ts';

/** What is held against its truth. */
export const calibrated = ['lnV50', 'sigma', 'hangBand', 'powerExponent', 'sheetSd'] as const;
export type Calibrated = (typeof calibrated)[number];

/** Where the truths of one study stand in its posterior: the probability below each, 0–1. */
export interface StudyRanks {
  readonly index: number;
  readonly below: Readonly<Record<Calibrated, number>>;
  readonly effectivePoints: number;
  readonly converged: boolean;
}

interface RanksJob {
  readonly studies: number;
  readonly seed: number;
}

/** Draws so many studies and ranks each truth in its posterior, on every core. */
export const ranksOf = async (job: RanksJob): Promise<readonly StudyRanks[]> =>
  (await inShares<StudyRanks>(import.meta.url, job, job.studies)).toSorted(
    (a, b) => a.index - b.index,
  );

/** The posterior probability that a parameter is below a value. */
const probabilityBelow = (posterior: Posterior, name: Calibrated, value: number): number => {
  const column = posterior[name];
  let below = 0;
  for (let i = 0; i < posterior.count; i += 1) {
    if ((column[i] ?? 0) < value) below += posterior.weight[i] ?? 0;
  }
  return Math.min(1, below);
};

export const ranksOfStudy = (seed: number, index: number): StudyRanks => {
  const { study, truth } = drawStudy(seededRandom(seed * 104_729 + index), index % 4 === 3);
  const { posterior } = fit(study);
  const at = (name: Calibrated): number =>
    probabilityBelow(posterior, name, (truth satisfies Parameters)[name]);
  return {
    index,
    below: {
      lnV50: at('lnV50'),
      sigma: at('sigma'),
      hangBand: at('hangBand'),
      powerExponent: at('powerExponent'),
      sheetSd: at('sheetSd'),
    },
    effectivePoints: posterior.effectivePoints,
    converged: posterior.converged,
  };
};

await answerShare(({ job, part, parts }: Share<RanksJob>) => {
  const ranks: StudyRanks[] = [];
  for (let i = part; i < job.studies; i += parts) ranks.push(ranksOfStudy(job.seed, i));
  return ranks;
});
