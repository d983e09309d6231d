import type { ModelPriors, Observation } from './model.ts';

/** How far what was written down may stand off from what was cut. */
export interface ReadingCare {
  /** A grade is misread as each other grade with half this probability. */
  readonly misread: number;
  /** The share of flaws that was read by how the shape fell. */
  readonly overlooked: number;
}

/**
 * A card's cell is graded by its fall, a flaw under it or not; who counts an order tells a pocket from a part that was not
 * through, most of the time.
 */
export const careOf = (
  priors: ModelPriors,
  { counted }: Pick<Observation, 'counted'>,
): ReadingCare =>
  counted
    ? {
        misread: priors.misreading === 0 ? 0 : (priors.miscounting ?? priors.misreading),
        overlooked: priors.flawsOverlooked ?? 1,
      }
    : { misread: priors.misreading, overlooked: 1 };

/** The probability of a grade as it is written down, of its true one. */
export const asRead = (misread: number, true_: number): number =>
  0.5 * misread + (1 - 1.5 * misread) * true_;
