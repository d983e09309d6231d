import type { Mark } from '../../core/marking/mark.ts';
import { limitsBeside, type BesideCut } from '../../core/marking/markLimits.ts';
import { proposeEngraving, proposeScore } from '../../core/marking/proposeMarks.ts';
import { andThen, done, type Outcome, type Problem } from '../../core/problem.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';

export interface MarksBegunAsked extends BesideCut {
  /** Of the engraving. */
  readonly lineSpacingMm: number;
}

/** Where to begin with each mark that the beam makes, or why there is nowhere. */
export interface MarksBegun {
  readonly score: Outcome<Mark>;
  readonly engrave: Outcome<Mark>;
  /** What is to be said of what the sheet is of. */
  readonly ofMaterial: readonly Problem[];
}

/**
 * Where to begin with a score and an engraving beside a cut, from the tube and that cut: guesses, to be tried on scrap.
 * Refuses: a refused material.
 */
export const beginMarks = ({
  cut,
  stock,
  machine,
  lineSpacingMm,
}: MarksBegunAsked): Outcome<MarksBegun> => {
  const limits = limitsBeside({ cut, stock }, machine);
  return andThen(acceptMaterial(stock), (ofMaterial) =>
    done({
      score: proposeScore(cut, limits),
      engrave: proposeEngraving(cut, limits, lineSpacingMm),
      ofMaterial,
    }),
  );
};
