import { beliefsOf } from '../cutmodel/beliefs.ts';
import type { Fit } from '../cutmodel/fit.ts';
import type { Model } from '../cutmodel/model.ts';
import { posteriorOf, usualLines, type Posterior } from '../cutmodel/posterior.ts';
import { posteriorOfMany } from '../cutmodel/posteriorOfMany.ts';

/** How an explanation fits its study and what differs from it: all in one way, as many as there is time for. */
export interface OtherFits {
  /** The posterior of the study itself, fitted that way. */
  readonly whole: Posterior;
  readonly fit: (model: Model) => Posterior;
  /** Takes so many fits if there are as many left: each asks first. */
  readonly take: (fits: number) => boolean;
}

/**
 * What the fits of one explanation may take together with the answer's own, as posteriors count their work: some two seconds
 * of processor. A fit for each part of a study of many sheets would take minutes, and its parts move the answer little.
 */
export const mostWork = 9e6;

/** So many times the lines that an answer takes: small shifts are to be told from the noise of the points. */
const timesAsFine = 3;
/** Finer only where so many fits can be made: other assumptions take seven, beside the study's own. */
const fitsWanted = 8;

/**
 * In the way of the answer itself: with the effects of sheets integrated where it did so, else by lines, more of them where
 * there is time.
 */
export const otherFitsOf = ({
  compiled,
  posterior,
  study,
}: Pick<Fit, 'compiled' | 'posterior' | 'study'>): OtherFits => {
  const { links } = beliefsOf(study);
  if (posterior.isIntegrated)
    return {
      whole: posterior,
      fit: (model) => posteriorOfMany(model, links),
      take: taking(mostWork - posterior.work, posterior.work),
    };
  const isFine = fitsWanted * timesAsFine * posterior.work <= mostWork;
  const byLines = (model: Model): Posterior =>
    posteriorOf(model, links, isFine ? timesAsFine * usualLines : usualLines);
  const whole = isFine ? byLines(compiled.model) : posterior;
  return { whole, fit: byLines, take: taking(mostWork - whole.work, whole.work) };
};

/** Takes fits of so much work each until it is spent. */
export const taking = (work: number, each: number): OtherFits['take'] => {
  let left = Math.max(0, Math.floor(work / each));
  return (fits) => {
    if (fits > left) return false;
    left -= fits;
    return true;
  };
};
