import { systematicResample } from '../../num/systematicResample.ts';
import { roughWeightedQuantile } from '../../num/weightedQuantile.ts';
import type { PromiseWish } from '../reading/promise.ts';
import { referenceLengthsIn } from '../reading/referenceLengths.ts';
import type { CompiledStudy } from './compileStudy.ts';
import { links } from './links.ts';
import type { Decision } from './decision.ts';
import type { Posterior } from './posterior.ts';
import { marginKeeping, marginalShare } from './marginalShare.ts';
import { openToo, type ThroughByPoint } from './openToo.ts';

/** Passes: speeds are those of a single pass over the sheet `passes` times. */
export const decisionOn = (
  compiled: CompiledStudy,
  posterior: Posterior,
  promise: PromiseWish,
  passes = 1,
): Decision => {
  const { count, weight } = posterior;
  const lengths = referenceLengthsIn(promise.partLengthMm);
  const share = promise.outOf100 / 100;
  const level = levelOf(compiled, posterior, promise, passes);
  const scatter = scatterOf(posterior, promise);
  const margins = links.map((link) =>
    posterior.links.some((used) => used.link === link) ? marginKeeping(link, share, lengths) : null,
  );
  const lnFastestAtP0 = level.map((atP0, i) => {
    const sigma = posterior.sigma[i] ?? NaN;
    const margin = margins[posterior.link[i] ?? NaN]?.((scatter[i] ?? NaN) / sigma) ?? NaN;
    return atP0 - sigma * margin;
  });
  const column = new Float64Array(count);
  let filled: { readonly base: Float64Array; readonly lnPower: number } | undefined;
  /** Fills `column` with base + b·ln(P/P0), unless it is that already. */
  const along = (base: Float64Array, lnPower: number): Float64Array => {
    if (filled?.base === base && filled.lnPower === lnPower) return column;
    filled = { base, lnPower };
    const { powerExponent } = posterior;
    for (let i = 0; i < count; i += 1) {
      column[i] = (base[i] ?? NaN) + (powerExponent[i] ?? NaN) * lnPower;
    }
    return column;
  };
  const through = (i: number, lnPower: number, lnSpeed: number): number => {
    const link = links[posterior.link[i] ?? NaN];
    if (!link) return 0;
    const margin = (level[i] ?? NaN) + (posterior.powerExponent[i] ?? NaN) * lnPower - lnSpeed;
    return marginalShare(link, margin, posterior.sigma[i] ?? NaN, scatter[i] ?? NaN, lengths);
  };
  const cutting: Decision = {
    lnFastestAtP0,
    fastestHolding: (powerPct, surePct = promise.surePct) => {
      const lnPower = compiled.lnPowerOf(powerPct);
      if (lnPower === null) return null;
      return Math.exp(
        roughWeightedQuantile(along(lnFastestAtP0, lnPower), weight, 1 - surePct / 100),
      );
    },
    sureAt: (powerPct, speedMmPerS, minPowerPct = powerPct) => {
      const lnPower = compiled.lnPowerOf(powerPct);
      const lnLeast = compiled.lnPowerOf(minPowerPct);
      if (lnPower === null || lnLeast === null) return 0;
      const lnSpeed = Math.log(speedMmPerS);
      const lnCorners = Math.max(0, lnPower - lnLeast);
      const fastest = along(lnFastestAtP0, lnPower);
      let sure = 0;
      for (let i = 0; i < count; i += 1) {
        const slowed = (posterior.cornersExponent[i] ?? NaN) * lnCorners;
        if ((fastest[i] ?? NaN) - slowed >= lnSpeed) sure += weight[i] ?? NaN;
      }
      return Math.min(1, sure);
    },
    shareAt: (powerPct, speedMmPerS) => {
      const lnPower = compiled.lnPowerOf(powerPct);
      if (lnPower === null) return 0;
      const lnSpeed = Math.log(speedMmPerS);
      let sum = 0;
      for (let i = 0; i < count; i += 1) {
        sum += (weight[i] ?? NaN) * through(i, lnPower, lnSpeed);
      }
      return Math.min(1, sum);
    },
    v50Quantile: (powerPct, p) => {
      const lnPower = compiled.lnPowerOf(powerPct);
      return lnPower === null
        ? null
        : Math.exp(roughWeightedQuantile(along(level, lnPower), weight, p));
    },
  };
  const { welding } = compiled;
  if (welding === undefined || passes !== 1) return cutting;
  const chosen = systematicResample(weight, lnFastestAtP0, pointsForWelding);
  const points = Array.from(chosen, (i): ThroughByPoint => ({
    weight: 1 / pointsForWelding,
    shareAt: (powerPct, speedMmPerS, minPowerPct) => {
      const lnPower = compiled.lnPowerOf(powerPct);
      const lnLeast = compiled.lnPowerOf(minPowerPct);
      if (lnPower === null || lnLeast === null) return 0;
      const slowed = (posterior.cornersExponent[i] ?? NaN) * Math.max(0, lnPower - lnLeast);
      return through(i, lnPower, Math.log(speedMmPerS) + slowed);
    },
  }));
  return openToo(cutting, { welding, points, promise, lengths });
};

/** Welding takes little away where a promise holds: so many points are right to a fraction of a per cent of it. */
const pointsForWelding = 1000;

/** ln v50 at P0 for what the promise is of: the present air; this batch or a new one; this sheet or all of them. */
export const levelOf = (
  compiled: CompiledStudy,
  posterior: Posterior,
  promise: PromiseWish,
  passes: number,
): Float64Array => {
  const { air, batch, sheet } = compiled.current;
  const airEffect = posterior.air[air];
  const batchEffect = promise.for === 'newBatch' ? undefined : posterior.batch[batch];
  const sheetEffect = promise.for === 'sheet' ? posterior.sheetEffect(sheet) : undefined;
  const lnPasses = Math.log(passes);
  return posterior.lnV50.map(
    (lnV50, i) =>
      lnV50 +
      (posterior.passesExponent[i] ?? NaN) * lnPasses +
      (airEffect?.[i] ?? 0) +
      (batchEffect?.[i] ?? 0) +
      (sheetEffect?.[i] ?? 0),
  );
};

/** What the promise averages over beside σ. */
export const scatterOf = (posterior: Posterior, promise: PromiseWish): Float64Array =>
  posterior.sheetSd.map((sheetSd, i) => {
    if (promise.for === 'sheet') return 0;
    return promise.for === 'batch' ? sheetSd : Math.hypot(sheetSd, posterior.batchSd[i] ?? NaN);
  });
