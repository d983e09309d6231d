import { firstBeliefs, type Beliefs } from './beliefs.ts';
import { compileStudy } from './compileStudy.ts';
import type { CutStudy, StudyCell } from './cutStudy.ts';
import type { Link } from './links.ts';
import type { NormalPrior } from './model.ts';
import { meanSdOf, posteriorOf, type Posterior } from './posterior.ts';
import { scaleWith } from './priorScales.ts';
import { priors } from './priors.ts';

/**
 * How much each may differ from one batch to the next, however well it is known of those before: standard deviations of
 * ln σ, ln g and b; a share of the rate of flaws; the share of the links' weights that stays as it was before any sheet.
 * Judgement, no source.
 */
const betweenBatches = {
  lnSigma: 0.1,
  lnHangBand: 0.2,
  powerExponent: 0.08,
  flawsShare: 0.5,
  linksKept: 0.1,
} as const;

/** Sheets of a batch that are taken together: each is one more unknown, and a posterior of three settles at once. */
const mostSheetsTogether = 3;
const lines = 300;

/**
 * Learns from sheets batch by batch: the posterior of one is the prior of the next, each quantity by its mean and standard
 * deviation (assumed density filtering: Opper 1998, in Saad, On-line Learning in Neural Networks). Changeovers are not
 * carried over: every batch has its own. Give the sheets oldest first, the cells of each with their batch. A batch whose
 * posterior does not settle teaches nothing. ~20 ms a batch.
 */
export const beliefsAfter = (
  study: Pick<CutStudy, 'machine' | 'stock'>,
  sheets: readonly (readonly StudyCell[])[],
): Beliefs => {
  let beliefs = firstBeliefs;
  for (const cells of together(sheets)) {
    const { model } = compileStudy({
      machine: study.machine,
      stock: study.stock,
      cells,
      tallies: [],
      promise: { outOf100: 97, surePct: 95, partLengthMm: 60, for: 'batch' },
      ask: {},
      beliefs,
    });
    const posterior = posteriorOf(model, beliefs.links, lines);
    if (posterior.converged && model.observations.length > 0) beliefs = beliefsIn(posterior);
  }
  return beliefs === firstBeliefs ? firstBeliefs : forAnotherBatch(beliefs);
};

const together = (sheets: readonly (readonly StudyCell[])[]): readonly (readonly StudyCell[])[] => {
  const groups: { readonly batch: string; readonly sheets: (readonly StudyCell[])[] }[] = [];
  for (const sheet of sheets) {
    const batch = sheet[0]?.batch ?? '';
    const last = groups.findLast((group) => group.batch === batch);
    if (last !== undefined && last.sheets.length < mostSheetsTogether) last.sheets.push(sheet);
    else groups.push({ batch, sheets: [sheet] });
  }
  return groups.map((group) => group.sheets.flat());
};

const beliefsIn = (posterior: Posterior): Beliefs => {
  const logOf = (column: Float64Array) => meanSdOf(posterior, (i) => Math.log(column[i] ?? NaN));
  const plain = (column: Float64Array) => meanSdOf(posterior, (i) => column[i] ?? NaN);
  const sheets = plain(posterior.sheetSd);
  const weightOf = (name: Link['name']): number =>
    posterior.links.find(({ link }) => link.name === name)?.probability ?? 0;
  return {
    lnSigma: logOf(posterior.sigma),
    lnHangBand: logOf(posterior.hangBand),
    powerExponent: plain(posterior.powerExponent),
    sheetSd: scaleWith(sheets.mean, sheets.sd),
    flawsPerMetre: plain(posterior.flawsPerMetre),
    links: {
      normal: weightOf('normal'),
      logistic: weightOf('logistic'),
      student3: weightOf('student3'),
    },
  };
};

const forAnotherBatch = (learnt: Beliefs): Beliefs => {
  const wider = ({ mean, sd }: NormalPrior, between: number): NormalPrior => ({
    mean,
    sd: Math.hypot(sd, between),
  });
  const kept = betweenBatches.linksKept;
  const linkOf = (name: Link['name']): number =>
    (1 - kept) * learnt.links[name] + kept * priors.links[name];
  const { mean, sd } = learnt.flawsPerMetre;
  return {
    ...learnt,
    lnSigma: wider(learnt.lnSigma, betweenBatches.lnSigma),
    lnHangBand: wider(learnt.lnHangBand, betweenBatches.lnHangBand),
    powerExponent: wider(learnt.powerExponent, betweenBatches.powerExponent),
    flawsPerMetre: { mean, sd: Math.max(sd, betweenBatches.flawsShare * mean) },
    links: {
      normal: linkOf('normal'),
      logistic: linkOf('logistic'),
      student3: linkOf('student3'),
    },
  };
};
