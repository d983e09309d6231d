import { links } from '../cutmodel/links.ts';
import type { Observation } from '../cutmodel/model.ts';
import { asRead, careOf } from '../cutmodel/reading.ts';
import { cornerLossAt, marginAt, type Posterior } from '../cutmodel/posterior.ts';

const leastProbability = 1e-300;

/**
 * How probable one reading of one shape is at each point of a posterior, as the likelihood has it: flaws and misreading
 * included. ~0.1 ms for 1000 points.
 */
export const readingProbability = (posterior: Posterior, cut: Observation): Float64Array => {
  const { misread, overlooked } = careOf(posterior.model.priors, cut);
  const read = (true_: number): number => Math.max(leastProbability, asRead(misread, true_));
  return Float64Array.from({ length: posterior.count }, (_, i) => {
    const flaw = 1 - Math.exp(-(posterior.flawsPerMetre[i] ?? NaN) * cut.lengthM);
    if (cut.outcome === 'flaw') return Math.max(leastProbability, flaw);
    const link = links[posterior.link[i] ?? NaN];
    if (!link) return leastProbability;
    const cdf = misread > 0 ? link.quickCdf : link.cdf;
    const sigma = posterior.sigma[i] ?? NaN;
    const margin = marginAt(posterior, i, cut);
    const x = margin / sigma;
    const y = (margin + cornerLossAt(posterior, i, cut) + (posterior.hangBand[i] ?? NaN)) / sigma;
    const sound = 1 - flaw;
    const asFell = overlooked * flaw;
    switch (cut.outcome) {
      case 'out':
        return read(sound * share(cdf, x, cut.lengths));
      case 'not-out':
        return read(asFell + sound * missing(cdf, x, cut.lengths));
      case 'hangs':
        return read(
          0.5 * asFell +
            sound * Math.max(0, missing(cdf, x, cut.lengths) - missing(cdf, y, cut.lengths)),
        );
      case 'stays':
        return read(0.5 * asFell + sound * missing(cdf, y, cut.lengths));
    }
  });
};

type Sigmoid = (x: number) => number;

const share = (cdf: Sigmoid, x: number, lengths: number): number =>
  lengths === 1 ? cdf(x) : cdf(x) ** lengths;

/** 1 − F(x)ᴸ, without losing digits. */
const missing = (cdf: Sigmoid, x: number, lengths: number): number =>
  lengths === 1 ? cdf(-x) : -Math.expm1(lengths * Math.log1p(-cdf(-x)));
