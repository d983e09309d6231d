import type { Grade } from '../reading/grade.ts';
import type { CompiledStudy } from './compileStudy.ts';
import { links } from './links.ts';
import { cornerLossAt, marginAt, type Posterior } from './posterior.ts';

/** Points below this weight move no probability that is shown. */
const negligible = 1e-7;

/**
 * How probable each grade of a cell was, by all that is known (its own reading included): averaged over the posterior,
 * on the sheet it was cut from, misreading left out. Null where its power setting says nothing.
 */
export const gradeProbabilities = (
  compiled: CompiledStudy,
  posterior: Posterior,
  cellIndex: number,
): Readonly<Record<Grade, number>> | null => {
  const observation = compiled.model.observations[compiled.observationOfCell[cellIndex] ?? -1];
  if (!observation) return null;
  const { lengths, lengthM } = observation;
  const whole = (share: number): number => (lengths === 1 ? share : share ** lengths);
  let out = 0;
  let outOrHangs = 0;
  let flawed = 0;
  for (let i = 0; i < posterior.count; i += 1) {
    const weight = posterior.weight[i] ?? NaN;
    const link = links[posterior.link[i] ?? NaN];
    if (weight < negligible || !link) continue;
    const margin = marginAt(posterior, i, observation);
    const sigma = posterior.sigma[i] ?? NaN;
    const clear = Math.exp(-(posterior.flawsPerMetre[i] ?? NaN) * lengthM);
    out += weight * clear * whole(link.quickCdf(margin / sigma));
    const through =
      margin + cornerLossAt(posterior, i, observation) + (posterior.hangBand[i] ?? NaN);
    outOrHangs += weight * clear * whole(link.quickCdf(through / sigma));
    flawed += weight * (1 - clear);
  }
  return {
    out,
    hangs: Math.max(0, outOrHangs - out) + flawed / 2,
    stays: Math.max(0, 1 - outOrHangs - flawed) + flawed / 2,
  };
};
