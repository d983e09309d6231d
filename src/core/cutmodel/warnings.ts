import { describePower, type PowerLimit } from '../tube/deliveredPower.ts';
import { problemOf, type Problem } from '../problem.ts';
import { aboutWelding } from './aboutWelding.ts';
import { cardsDisagree } from './cardsDisagree.ts';
import { slowerIsNoHelp } from './countedOrders.ts';
import { fastestOutAt } from './evidence.ts';
import type { CellRemark, Recommendation } from './fitAnswer.ts';
import type { Fit } from './fit.ts';
import { mistypedIn } from './mistyped.ts';
import { meanSdOf } from './posterior.ts';
import type { GradeOdds } from './remarks.ts';
import { priors } from './priors.ts';

/** Everything that an answer has to say beside its setting, the most pressing first. */
export const warningsOn = (
  fitted: Fit,
  recommended: Recommendation | null,
  remarks: readonly CellRemark[],
  odds: GradeOdds,
  limit: PowerLimit,
): readonly Problem[] => [
  ...overdrives(fitted, limit),
  ...aboutOrders(fitted),
  ...aboutCards(fitted),
  ...aboutWelding(fitted, recommended),
  ...aboutInput(fitted),
  ...aboutRecommendation(fitted, recommended),
  ...aboutCard(fitted, remarks, odds),
  ...aboutLearning(fitted),
  ...aboutAir(fitted),
];

const overdrives = ({ study }: Fit, limit: PowerLimit): readonly Problem[] => {
  const asked = study.ask.powerPct;
  const { ratedCurrentMa: ratedMa } = study.machine;
  const rated = ratedMa === undefined ? {} : { ratedMa };
  const overdriven = study.cells.filter(
    (cell) => describePower(study.machine, cell.powerPct).overdriven,
  );
  return [
    ...(asked !== undefined && asked > limit.powerPct + 1e-9
      ? [
          problemOf('asked-overdrives', {
            powerPct: asked,
            limitPct: Math.floor(limit.powerPct),
            because: limit.because,
            ...rated,
          }),
        ]
      : []),
    ...(overdriven.length > 0
      ? [
          problemOf('cells-overdrove', {
            cells: overdriven.length,
            powers: list(overdriven.map((cell) => cell.powerPct)),
            ...rated,
          }),
        ]
      : []),
  ];
};

/** Where an order failed for something that no speed mends. */
const aboutOrders = ({ study }: Fit): readonly Problem[] => {
  const said = slowerIsNoHelp(study);
  if (said === null) return [];
  const { setting, out, hangs, stays, spoilt } = said.order;
  return [
    problemOf('slower-would-not-help', {
      because: said.because,
      speedMmPerS: setting.speedMmPerS,
      parts: out + hangs + stays + spoilt,
      pockets: spoilt,
      fasterMmPerS:
        said.because === 'pockets' ? setting.speedMmPerS : said.faster.setting.speedMmPerS,
    }),
  ];
};

/** Where cards contradict one another an answer fits neither of them. */
const aboutCards = (fitted: Fit): readonly Problem[] => {
  const said = cardsDisagree(fitted);
  if (said === null) return [];
  return [
    problemOf('cards-disagree', {
      odd: said.odd,
      others: said.others.join(', '),
      byPct: Math.round(100 * Math.abs(Math.expm1(said.fasterBy))),
      way: said.fasterBy < 0 ? 'slower' : 'faster',
    }),
  ];
};

const aboutInput = ({ study, compiled, evidence }: Fit): readonly Problem[] => {
  const standsIn = evidence.outCells === 0 || evidence.notOutCells === 0;
  return [
    ...(compiled.slowCells.length > 0
      ? [
          problemOf('cut-on-corner-power', {
            cells: compiled.slowCells.length,
            startMmPerS: study.machine.powerRampStartMmPerS ?? 0,
          }),
        ]
      : []),
    ...(compiled.unusableCells.length > 0
      ? [
          problemOf('power-says-nothing', {
            cells: compiled.unusableCells.length,
            powers: list(compiled.unusableCells.flatMap((i) => study.cells[i]?.powerPct ?? [])),
          }),
        ]
      : []),
    ...(standsIn && evidence.hasTally ? [problemOf('tally-stood-in')] : []),
    ...(standsIn && !evidence.hasTally && evidence.hasHabit ? [problemOf('habit-stood-in')] : []),
  ];
};

/** How much slower than even odds a promised speed may be before it is called thin evidence. */
const thinBelow = 0.92;

const aboutRecommendation = (
  fitted: Fit,
  recommended: Recommendation | null,
): readonly Problem[] => {
  if (!recommended) return [];
  const { decision, evidence, study } = fitted;
  const { powerPct, speedMmPerS } = recommended;
  const even = decision.fastestHolding(powerPct, 50);
  const cap = fastestOutAt(evidence, powerPct);
  const powers = study.cells.map((cell) => cell.powerPct);
  const beyond =
    powers.length > 0 &&
    (powerPct > Math.max(...powers) + 0.5 || powerPct < Math.min(...powers) - 0.5);
  return [
    ...(evidence.slowestMmPerS !== null && speedMmPerS < evidence.slowestMmPerS - 1e-9
      ? [
          problemOf('guess-below-slowest-cell', {
            speedMmPerS,
            slowestMmPerS: evidence.slowestMmPerS,
          }),
        ]
      : []),
    ...(cap !== null && Math.abs(speedMmPerS - cap) < 1e-9
      ? [problemOf('held-to-fastest-out', { speedMmPerS: cap, powerPct })]
      : []),
    ...(beyond ? [problemOf('power-beyond-the-card', { powerPct })] : []),
    ...(even !== null && speedMmPerS < thinBelow * even
      ? [
          problemOf('thin-evidence', {
            speedMmPerS,
            evenMmPerS: Math.floor(even * 10) / 10,
            powerPct,
            cells: evidence.graded,
          }),
        ]
      : []),
  ];
};

/** A row of cells whose grades were all but certain beforehand told little; mean doubt below this. */
const littleDoubt = 0.06;

const aboutCard = (
  fitted: Fit,
  remarks: readonly CellRemark[],
  odds: GradeOdds,
): readonly Problem[] => {
  const { study, decision, evidence, compiled } = fitted;
  if (evidence.graded === 0) return [];
  const again = remarks.filter((remark) => remark.kind === 'look-again');
  const asked = study.ask.powerPct ?? compiled.p0Pct;
  const v50 = decision.v50Quantile(asked, 0.5);
  const { slowestMmPerS, fastestMmPerS } = evidence;
  const off =
    v50 !== null &&
    slowestMmPerS !== null &&
    fastestMmPerS !== null &&
    (v50 < slowestMmPerS || v50 > fastestMmPerS);
  const idle = speedsThatToldLittle(fitted, odds);
  const noise = settingsThatDisagree(fitted);
  const mistyped = mistypedIn(fitted, odds);
  return [
    ...(off
      ? [
          problemOf('changeover-off-the-card', {
            v50MmPerS: Math.round(v50 * 10) / 10,
            powerPct: asked,
            slowestMmPerS,
            fastestMmPerS,
          }),
        ]
      : []),
    ...(idle.length > 0
      ? [problemOf('speeds-told-little', { speeds: list(idle), count: idle.length })]
      : []),
    ...(again.length > 0
      ? [
          problemOf('look-again', {
            cells: again.length,
            settings: again
              .map(({ cellIndex }) => {
                const cell = study.cells[cellIndex];
                return cell
                  ? `${String(cell.speedMmPerS)} mm/s ${String(cell.powerPct)} % ${cell.grade ?? ''}`
                  : '';
              })
              .join(', '),
          }),
        ]
      : []),
    ...mistyped.map(({ typed, behavesLike }) =>
      problemOf('behaves-like', {
        typed: settingText(typed),
        like: settingText(behavesLike),
      }),
    ),
    ...(noise.length > 0 && again.length === 0
      ? [problemOf('disagreement-is-noise', { speeds: list(noise), count: noise.length })]
      : []),
  ];
};

/** Speeds at which the cells' grades were, on the whole, as good as known from all the others. */
const speedsThatToldLittle = ({ study }: Fit, odds: GradeOdds): readonly number[] => {
  const bySpeed = new Map<number, number[]>();
  study.cells.forEach((cell, i) => {
    const out = odds[i]?.out;
    if (out === undefined) return;
    const doubt = Math.min(out, 1 - out);
    bySpeed.set(cell.speedMmPerS, [...(bySpeed.get(cell.speedMmPerS) ?? []), doubt]);
  });
  if (bySpeed.size < 2) return [];
  return [...bySpeed]
    .filter(([, doubts]) => doubts.reduce((a, b) => a + b, 0) / doubts.length < littleDoubt)
    .map(([speed]) => speed)
    .sort((a, b) => a - b);
};

/** Speeds at which equal settings, or a stronger one, ended worse: contradictions that scatter explains. */
const settingsThatDisagree = ({ study }: Fit): readonly number[] => {
  const graded = study.cells.filter(
    (cell) => cell.grade !== undefined && cell.spoilt === undefined,
  );
  const speeds = graded
    .filter(
      (cell) =>
        cell.grade !== 'out' &&
        graded.some(
          (other) =>
            other.grade === 'out' &&
            other.powerPct <= cell.powerPct &&
            other.speedMmPerS >= cell.speedMmPerS,
        ),
    )
    .map((cell) => cell.speedMmPerS);
  return [...new Set(speeds)].sort((a, b) => a - b);
};

/** σ, and what corners cost, are said to rest on their priors where the spread is still more than this share of the prior's. */
const restsOnPrior = 0.7;

const aboutLearning = ({ posterior, evidence }: Fit): readonly Problem[] => {
  if (evidence.graded === 0 && !evidence.hasTally) return [];
  const lnSigma = meanSdOf(posterior, (i) => Math.log(posterior.sigma[i] ?? NaN));
  const flaws = meanSdOf(posterior, (i) => posterior.flawsPerMetre[i] ?? NaN);
  const corners = meanSdOf(posterior, (i) => posterior.cornersExponent[i] ?? NaN);
  const learnt = flaws.sd < 0.5 * priors.flawsPerMetreMean;
  return [
    ...(lnSigma.sd > restsOnPrior * priors.lnSigma.sd
      ? [problemOf('scatter-rests-on-prior', { cells: evidence.graded })]
      : []),
    ...(learnt
      ? [
          problemOf('flaws-beside-the-promise', {
            flawsPerMetre: Math.round(flaws.mean * 100) / 100,
          }),
        ]
      : [problemOf('flaws-not-learnt')]),
    ...(posterior.layout.cornersExponent >= 0 &&
    corners.sd > restsOnPrior * priors.cornersExponent.sd
      ? [problemOf('corners-rest-on-prior')]
      : []),
  ];
};

/** Air levels against the commonest: by how much, and how sure. */
const aboutAir = ({ posterior, compiled }: Fit): readonly Problem[] =>
  posterior.air.map((effect, level) => {
    const { mean, sd } = meanSdOf(posterior, (i) => effect[i] ?? NaN);
    let faster = 0;
    for (let i = 0; i < posterior.count; i += 1) {
      if ((effect[i] ?? NaN) > 0) faster += posterior.weight[i] ?? NaN;
    }
    return problemOf('air-compared', {
      air: compiled.airLevels[level + 1] ?? '',
      against: compiled.airLevels[0] ?? '',
      fasterPct: Math.round(100 * Math.expm1(mean)),
      lowPct: Math.round(100 * Math.expm1(mean - 1.645 * sd)),
      highPct: Math.round(100 * Math.expm1(mean + 1.645 * sd)),
      sureFasterPct: Math.round(100 * faster),
    });
  });

const settingText = (setting: {
  readonly powerPct: number;
  readonly speedMmPerS: number;
}): string => `${String(setting.speedMmPerS)} mm/s at ${String(setting.powerPct)} %`;

const list = (values: readonly number[]): string =>
  [...new Set(values)]
    .sort((a, b) => a - b)
    .map(String)
    .join(', ');
