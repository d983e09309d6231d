import type { Link } from './links.ts';
import type { Model } from './model.ts';
import { posteriorOf, type Posterior } from './posterior.ts';
import { posteriorOfMany, type Effort } from './posteriorOfMany.ts';

/** A surprising card leaves few effective lines; then the posterior is computed again in the way of great orders. */
const fewEffectiveLines = 100;

/** With more sheets an unknown for each costs more than to integrate them. */
const mostSheetsDrawn = 9;

/** Whether the effects of sheets are integrated from the first: many of them, or orders. */
export const isGreat = ({ sheets, observations }: Model): boolean =>
  sheets > mostSheetsDrawn || observations.some(({ counted }) => counted);

/** The posterior by lines where that is enough, and otherwise with the effects of sheets integrated, with this effort. */
export const settledPosterior = (
  model: Model,
  linkWeights: Readonly<Record<Link['name'], number>>,
  effort?: Effort,
): Posterior => {
  if (!isGreat(model)) {
    const quick = posteriorOf(model, linkWeights);
    if (quick.effectivePoints >= fewEffectiveLines) return quick;
  }
  return posteriorOfMany(model, linkWeights, effort);
};
