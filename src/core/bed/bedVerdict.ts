import { fisherTest } from '../../num/twoByTwo.ts';
import {
  evenWithinPct,
  placeEffects,
  placeSd,
  scatterUnstudied,
  type GradeCounts,
  type GradesByPlace,
  type PlaceEffects,
  type Scatter,
} from './placeEffects.ts';
import { bedPlaces, bedSideNames, forEachPlace, type BedPlace, type BedSide } from './place.ts';

/** Where a fault may sit; each has its sentence in the words layer. */
export type BedSuspect = 'mirrors' | 'level' | 'sheet-flat' | 'lens';

/** What the four corners say together. `sure`: a probability, 0–1. */
export type BedVerdict =
  | { readonly kind: 'place'; readonly place: BedPlace; readonly sure: number }
  | { readonly kind: 'side'; readonly side: BedSide; readonly sure: number }
  /** No place is likely more than 10 % weaker; `sure` of the likeliest that it is not. */
  | { readonly kind: 'even'; readonly sure: number }
  | {
      readonly kind: 'untold';
      /** Cells more at each place that would tell; 0: nothing was read yet. */
      readonly cellsMoreEach: number;
      /** Where every cell ended alike the setting lies too far from the changeover. */
      readonly because: 'few' | 'all-out' | 'none-out' | 'place-unread';
    };

export interface BedReport {
  readonly effects: PlaceEffects;
  /**
   * The check that knows no model: Fisher's exact probability that so few come out here, by chance alone, against the
   * other three places; and the same allowing for the four places that were looked at (times four, at most 1).
   */
  readonly exact: Readonly<Record<BedPlace, { readonly p: number; readonly pOfFour: number }>>;
  readonly verdict: BedVerdict;
  /** Cheapest first; empty where nothing is accused. */
  readonly suspects: readonly BedSuspect[];
}

/** A place or side is named from this probability on. Over even beds fewer than 1 in 20 are accused: see the tests. */
export const accusedFrom = 0.95;
/** No place may be uneven with more than this for a bed to be called even. */
const evenBelow = 0.1;
/** 10 % point of the standard normal, and how far the lowest of four lies below their mean, in standard deviations. */
const evenQuantiles = 1.2816 + 1.0294;
const mostCellsMore = 99;

/**
 * Where the bed is weak, how surely, and what to look at. Mirrors out of line lose light in one corner, as a rule the
 * farthest from the tube; a bed that is not level, or a sheet that lifts, puts a side out of focus. Common practice, no
 * source. Where it cannot tell yet it says how many cells more would.
 */
export const bedReport = (
  grades: GradesByPlace,
  scatter: Scatter = scatterUnstudied,
): BedReport => {
  const effects = placeEffects(grades, scatter);
  const verdict = verdictOn(grades, effects);
  return {
    effects,
    exact: forEachPlace((place) => exactOf(grades, place)),
    verdict,
    suspects: suspectsOf(verdict),
  };
};

const read = ({ out, hangs, stays }: GradeCounts): number => out + hangs + stays;

const exactOf = (
  grades: GradesByPlace,
  place: BedPlace,
): { readonly p: number; readonly pOfFour: number } => {
  const rest = bedPlaces.filter((other) => other !== place).map((other) => grades[other]);
  const outElsewhere = rest.reduce((sum, { out }) => sum + out, 0);
  const readElsewhere = rest.reduce((sum, counts) => sum + read(counts), 0);
  const here = grades[place];
  const p = fisherTest({
    a: here.out,
    b: read(here) - here.out,
    c: outElsewhere,
    d: readElsewhere - outElsewhere,
  }).less;
  return { p, pOfFour: Math.min(1, 4 * p) };
};

const verdictOn = (grades: GradesByPlace, effects: PlaceEffects): BedVerdict => {
  const counts = bedPlaces.map((place) => grades[place]);
  const cells = counts.reduce((sum, each) => sum + read(each), 0);
  const out = counts.reduce((sum, each) => sum + each.out, 0);
  const cellsMoreEach = cellsMore(grades, effects.informationPerCell);
  if (counts.some((each) => read(each) === 0))
    return { kind: 'untold', cellsMoreEach: 0, because: 'place-unread' };
  if (out === cells) return { kind: 'untold', cellsMoreEach, because: 'all-out' };
  const place = mostOf(bedPlaces, (each) => effects.places[each].chanceWeak);
  const side = mostOf(bedSideNames, (each) => effects.sides[each].chanceWeak);
  if (Math.max(place.chance, side.chance) >= accusedFrom)
    return place.chance >= side.chance
      ? { kind: 'place', place: place.name, sure: place.chance }
      : { kind: 'side', side: side.name, sure: side.chance };
  if (out === 0) return { kind: 'untold', cellsMoreEach, because: 'none-out' };
  const uneven = mostOf(bedPlaces, (each) => effects.places[each].chanceUneven);
  if (uneven.chance <= evenBelow) return { kind: 'even', sure: 1 - uneven.chance };
  return { kind: 'untold', cellsMoreEach, because: 'few' };
};

const mostOf = <T>(
  names: readonly T[],
  chanceOf: (name: T) => number,
): { readonly name: T; readonly chance: number } =>
  names
    .map((name) => ({ name, chance: chanceOf(name) }))
    .reduce((most, each) => (each.chance > most.chance ? each : most));

/**
 * Cells more at each place until an even bed would as a rule be known to be so: the place that looks weakest must lie 1.28
 * standard deviations inside the 10 %. Variance of a place against the mean of three: 4/3·(1/0.1² + n·information)⁻¹.
 */
const cellsMore = (grades: GradesByPlace, informationPerCell: number): number => {
  const sdWanted = -Math.log(1 - evenWithinPct / 100) / evenQuantiles;
  const precisionWanted = 4 / 3 / sdWanted ** 2;
  const cellsWanted = (precisionWanted - placeSd ** -2) / informationPerCell;
  const fewest = Math.min(...bedPlaces.map((place) => read(grades[place])));
  return Math.min(mostCellsMore, Math.max(1, Math.ceil(cellsWanted - fewest)));
};

const suspectsOf = (verdict: BedVerdict): readonly BedSuspect[] => {
  if (verdict.kind === 'place') return ['sheet-flat', 'mirrors', 'level'];
  if (verdict.kind === 'side') return ['sheet-flat', 'level', 'mirrors', 'lens'];
  return [];
};
