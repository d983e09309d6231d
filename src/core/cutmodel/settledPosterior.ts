import type { Link } from './links.ts';
import type { Model } from './model.ts';
import { posteriorOf, usualLines, type Posterior } from './posterior.ts';

/** A surprising card leaves few effective lines; then the posterior is computed again with more. */
const fewEffectiveLines = 100;
const linesAgain = 5 * usualLines;

/** The posterior by the usual number of lines, or by more where those are worth too few. */
export const settledPosterior = (
  model: Model,
  linkWeights: Readonly<Record<Link['name'], number>>,
): Posterior => {
  const quick = posteriorOf(model, linkWeights);
  return quick.effectivePoints < fewEffectiveLines
    ? posteriorOf(model, linkWeights, linesAgain)
    : quick;
};
