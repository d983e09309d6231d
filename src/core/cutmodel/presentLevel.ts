import type { CompiledStudy } from './compileStudy.ts';
import type { Posterior } from './posterior.ts';

/** For each point ln v50 at P0, first pass, for the air and the batch of what was cut last, averaged over its sheets. */
export const presentLnV50 = (compiled: CompiledStudy, posterior: Posterior): Float64Array => {
  const air = posterior.air[compiled.current.air];
  const batch = posterior.batch[compiled.current.batch];
  return posterior.lnV50.map((lnV50, i) => lnV50 + (air?.[i] ?? 0) + (batch?.[i] ?? 0));
};
