import { beliefsOf } from './beliefs.ts';
import type { Fit } from './fit.ts';
import type { Model } from './model.ts';
import { meanSdOf, posteriorOf, type Posterior } from './posterior.ts';
import { effortOfEvidence, posteriorOfMany } from './posteriorOfMany.ts';
import { isGreat } from './settledPosterior.ts';

/** One card that cuts otherwise than the other cards of its batch, by more than sheets of a batch differ. */
export interface CardsDisagreement {
  /** The sheet that stands apart, by its name in the study; of two cards the one cut later. */
  readonly odd: string;
  /** The other sheets of its batch. */
  readonly others: readonly string[];
  /** By how much it cuts faster than they do, in ln speed; below 0: slower. */
  readonly fasterBy: number;
  /**
   * How many times likelier all grades are if one of the cards stands apart than if all are sheets of one batch; shared
   * out over the cards that might have been the one, so that many cards do not find an odd one by their number.
   */
  readonly odds: number;
}

/** A card of fewer graded cells says too little by itself. */
const leastCells = 6;

/**
 * From these odds on people are asked. Low, since two cards of twelve cells never say it strongly; chosen by the rate of
 * false alarms, which `bench/mistakes` measures: below 2 in 100 studies without a slip.
 */
const leastOdds = 2;

/** A sheet whose effect lies less than this beside the others' is not looked into: it does not reach {@link leastOdds}. */
const looksBeyond = 0.02;

/**
 * Among several others one always lies farthest out. It is looked into only beyond so many times the scatter of sheets that
 * was learnt from them all: of ten sheets of one kind the farthest lies some 1.7 times it from the rest.
 */
const several = { others: 4, timesScatter: 2 } as const;

/** Fewer than an answer's: the evidence is wanted to a tenth of it, no quantile in its tails. */
const lines = 200;

/**
 * "These two cards disagree more than sheets do." Sheets of one batch have each an effect of their own, of a scatter that
 * is learnt with them. A card that was cut otherwise (another batch, thicker board, dirty lens, other settings typed) lies
 * outside that scatter. The sheet that lies farthest out is given a level of its own, as if it were of another batch, and
 * the two models' evidences are compared: Bayes factor, Kass & Raftery (1995), J. Am. Stat. Assoc. 90:773. Costs one more
 * posterior, and only where a sheet lies out.
 */
export const cardsDisagree = (fitted: Fit): CardsDisagreement | null => {
  const most = mostApart(fitted);
  return most !== null && most.odds >= leastOdds ? most : null;
};

/** The card that stands apart most, whatever its odds; null where no two can be held against each other. */
export const mostApart = (fitted: Fit): CardsDisagreement | null => {
  const { compiled, posterior } = fitted;
  const suspects = suspectsIn(fitted)
    .map((suspect) => ({ ...suspect, by: distanceOf(suspect, posterior) }))
    .filter(({ by, others }) => Math.abs(by) >= beyondOf(others.length, posterior))
    .sort((a, b) => Math.abs(b.by) - Math.abs(a.by));
  const [suspect] = suspects;
  if (!suspect) return null;
  const other = withLevelOfItsOwn(compiled.model, suspect.sheet);
  const { links } = beliefsOf(fitted.study);
  const apart = isGreat(other)
    ? posteriorOfMany(other, links, effortOfEvidence)
    : posteriorOf(other, links, lines);
  if (!apart.converged) return null;
  // Of two either may be called the odd one: that is one question, not two.
  const mayBeOdd = suspect.others.length > 1 ? suspect.others.length + 1 : 1;
  const level = apart.batch.at(-1);
  return {
    odd: suspect.name,
    others: suspect.others.map(({ name }) => name),
    fasterBy: distanceOf(suspect, apart) + meanSdOf(apart, (i) => level?.[i] ?? 0).mean,
    odds: Math.exp(apart.logEvidence - posterior.logEvidence) / mayBeOdd,
  };
};

const beyondOf = (others: number, posterior: Posterior): number =>
  others < several.others
    ? looksBeyond
    : Math.max(
        looksBeyond,
        several.timesScatter * meanSdOf(posterior, (i) => posterior.sheetSd[i] ?? NaN).mean,
      );

interface CardSheet {
  readonly name: string;
  readonly batch: string;
  /** Index of its effect. */
  readonly sheet: number;
  readonly cells: number;
}

interface Suspect extends CardSheet {
  readonly others: readonly CardSheet[];
}

/** Each sheet of a batch of several; of two sheets only the later, since each stands as far from the other. */
const suspectsIn = ({ study, compiled }: Fit): readonly Suspect[] => {
  const sheets = new Map<number, CardSheet>();
  study.cells.forEach(({ batch = '', sheet: name = '', grade, spoilt }, i) => {
    const sheet = compiled.model.observations[compiled.observationOfCell[i] ?? -1]?.sheet;
    if (sheet === undefined || grade === undefined || spoilt !== undefined) return;
    sheets.set(sheet, { name, batch, sheet, cells: (sheets.get(sheet)?.cells ?? 0) + 1 });
  });
  const read = [...sheets.values()].filter(({ cells }) => cells >= leastCells);
  return read.flatMap((card): readonly Suspect[] => {
    const ofBatch = read.filter(({ batch }) => batch === card.batch);
    const others = ofBatch.filter((other) => other !== card);
    const isEarlierOfTwo = others.length === 1 && ofBatch[0] === card;
    return others.length === 0 || isEarlierOfTwo ? [] : [{ ...card, others }];
  });
};

/** How far its sheet's effect lies above the others', in ln speed. */
const distanceOf = ({ sheet, others }: Suspect, posterior: Posterior): number => {
  const effect = (index: number): number => {
    const column = posterior.sheetEffect(index);
    return meanSdOf(posterior, (i) => column?.[i] ?? 0).mean;
  };
  const mean = others.reduce((sum, other) => sum + effect(other.sheet), 0) / others.length;
  return effect(sheet) - mean;
};

/** The model in which one sheet lies beside its batch by as much as a batch may. */
const withLevelOfItsOwn = (model: Model, sheet: number): Model => ({
  ...model,
  observations: model.observations.map((cut) =>
    cut.sheet === sheet ? { ...cut, batch: model.batches } : cut,
  ),
  batches: model.batches + 1,
});
