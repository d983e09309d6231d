import type { CompiledStudy } from '../cutmodel/compileStudy.ts';
import { answerForAim } from '../cutmodel/answerForAim.ts';
import { withoutEarlier, type CutStudy } from '../cutmodel/cutStudy.ts';
import { earlierAgreement } from '../cutmodel/earlierAgreement.ts';
import { fit, type Fit } from '../cutmodel/fit.ts';
import type { FitAnswer } from '../cutmodel/fitAnswer.ts';
import { effortOfEvidence } from '../cutmodel/posteriorOfMany.ts';
import { speedAt } from '../cutmodel/recommend.ts';
import type { Aim } from '../cutmodel/aims.ts';
import type { Explanation, Leaning, LeftOut, CalculatedBy, SpeedExplained } from './explanation.ts';
import { learntIn } from './learnt.ts';
import { leaveOut, type Part } from './leaveOut.ts';
import { nextCells } from './nextCells.ts';
import { mostWork } from './otherFits.ts';
import { cardsOf, earlierBatchesOf, rungsOf, type CardOf, type CellGroup } from './partsOf.ts';
import { smoothedWhole } from './reweigh.ts';
import { baselineAt, type Baseline } from './speedFrom.ts';
import { whatIf } from './whatIf.ts';

interface ExplainOptions {
  /** Absent: the cells of one sheet are one card. */
  readonly cardOf?: CardOf;
}

/**
 * Why an answer is what it is: how it moves without each cell, rung, card, order and earlier batch; what one more cell
 * would do; what was learnt and what rests on expectation; what other assumptions would give. `fitted` is the fit that the
 * answer comes from. ~1.2 s for 24 cells.
 */
export const explain = (
  fitted: Fit,
  answer: FitAnswer,
  { cardOf = (i) => fitted.study.cells[i]?.sheet ?? '' }: ExplainOptions = {},
): Explanation => {
  const { study, posterior, compiled } = fitted;
  const leans = (study.history ?? []).length > 0 || study.beliefs !== undefined;
  const alone = leans ? aloneOf(fitted) : fitted;
  const powerPct = answer.recommended?.powerPct ?? study.ask.powerPct ?? compiled.p0Pct;
  const baseline = answer.recommended === null ? null : baselineAt(fitted, powerPct);
  const speed = baseline === null ? undefined : speedExplained(fitted, baseline, cardOf);
  return {
    version: 1,
    answer,
    ...(speed === undefined ? {} : { speed }),
    learnt: learntIn(fitted, alone, powerPct),
    ...(leans ? { leaning: leaningOf(fitted, baseline, alone) } : {}),
    calculation: {
      points: posterior.count,
      effectivePoints: Math.round(posterior.effectivePoints),
      paretoShape: smoothedWhole(posterior).paretoShape,
      fits: speed === undefined ? 0 : partsBy(speed, 'fit'),
      rough: speed === undefined ? 0 : partsBy(speed, 'rough-weights'),
    },
  };
};

/** A study on its own, as `calc fit` answers it. */
export const explainStudy = (study: CutStudy): Explanation => explainAimed(fit(study));

/** The same by an aim, for a fit that is there. */
export const explainAimed = (
  fitted: Fit,
  aim: Aim = 'fastest',
  options: ExplainOptions = {},
): Explanation => explain(fitted, answerForAim(fitted, aim), options);

const speedExplained = (fitted: Fit, baseline: Baseline, cardOf: CardOf): SpeedExplained => {
  const { study, compiled } = fitted;
  const orderOf = ordersIn(compiled);
  // What matters most has its fits first.
  const assumed = whatIf(fitted, baseline);
  const without = onceEach(leaveOut(fitted, baseline), ({ cells, tallies, earlier, habit }) =>
    // Equal cells of one card weigh alike.
    JSON.stringify([
      cells?.map((i) => [compiled.observationOfCell[i], study.cells[i]?.powerPct]),
      tallies?.map(orderOf),
      earlier,
      habit,
    ]),
  );
  const group = ({ cells, name }: CellGroup) => ({ ...without({ cells }), cells, name });
  const cards = cardsOf(study, cardOf).map(group);
  const orders = study.tallies.map((tally, i) => ({
    ...without({ tallies: [i] }),
    name: tally.sheet ?? tally.batch ?? '',
    shapes: tally.out + tally.hangs + tally.stays + tally.spoilt,
  }));
  const earlier = earlierBatchesOf(study).map(({ name, cells }) => ({
    ...without({ earlier: cells }),
    name,
    shapes: cells.length,
  }));
  const habit = study.habit === undefined ? {} : { habit: without({ habit: true }) };
  const rungs = rungsOf(study, cardOf).map(group);
  return {
    powerPct: baseline.powerPct,
    speedMmPerS: baseline.speedMmPerS,
    holdingMmPerS: Math.exp(baseline.lnHolding),
    heldBy: baseline.heldBy,
    cells: study.cells.map((_, i) =>
      (compiled.observationOfCell[i] ?? -1) < 0 ? null : without({ cells: [i] }),
    ),
    rungs,
    cards,
    orders,
    ...habit,
    earlier,
    nextCells: nextCells(fitted, baseline),
    ...assumed,
  };
};

const onceEach = (
  without: (part: Part) => LeftOut,
  keyOf: (part: Part) => string,
): ((part: Part) => LeftOut) => {
  const known = new Map<string, LeftOut>();
  return (part) => {
    const key = keyOf(part);
    const said = known.get(key) ?? without(part);
    known.set(key, said);
    return said;
  };
};

/**
 * What this sheet tells by itself is said in whole per cents: fewer points than an answer's do. Readings that contradict one
 * another make it as dear as the answer: where that took all the time there is for reasons already, it is left out.
 */
const aloneOf = ({ study, posterior }: Fit): Fit | undefined =>
  posterior.work > mostWork ? undefined : fit(withoutEarlier(study), effortOfEvidence);

const leaningOf = (fitted: Fit, baseline: Baseline | null, alone: Fit | undefined): Leaning => ({
  shapes: fitted.compiled.observationOfEarlier.reduce((sum, { count }) => sum + count, 0),
  withMmPerS: baseline?.speedMmPerS ?? null,
  ...(alone === undefined
    ? {}
    : {
        withoutMmPerS: baseline === null ? null : speedAt(alone, baseline.powerPct),
        verdict: earlierAgreement(fitted, alone),
      }),
});

/** What an order says of its setting: alike for orders alike on sheets of their own. */
const ordersIn = ({ model, observationsOfTally }: CompiledStudy): ((tally: number) => unknown) => {
  const onSheet = new Map<number, number>();
  for (const { sheet, count } of model.observations)
    onSheet.set(sheet, (onSheet.get(sheet) ?? 0) + count);
  return (tally) => {
    const own = observationsOfTally[tally] ?? [];
    const shapes = own.reduce((sum, { count }) => sum + count, 0);
    return own.map(({ observation, count }) => {
      const cut = model.observations[observation];
      const isAlone = cut !== undefined && onSheet.get(cut.sheet) === shapes;
      return [count, isAlone ? { ...cut, count: 0, sheet: -1 } : observation];
    });
  };
};

const partsBy = (
  { cells, rungs, cards, orders, habit, earlier, nextCells: next }: SpeedExplained,
  by: CalculatedBy,
): number =>
  next.flatMap(({ after }) => Object.values(after)).filter((one) => one.by === by).length +
  new Set(
    [...cells, ...rungs, ...cards, ...orders, ...earlier, habit].flatMap((left) =>
      left?.by === by ? [`${String(left.shiftPct)}|${String(left.paretoShape)}`] : [],
    ),
  ).size;
