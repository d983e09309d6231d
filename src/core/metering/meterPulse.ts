/** A needle needs about this long to rise. Common practice, no source. */
const needleS = 0.3;
/** The longest pulse at a gentle power. Common practice, no source. */
const longestS = 1;
/** Up to this power a pulse may last so long; above it the pulse gets shorter as the power rises, so that it burns no more. */
const gentlePct = 20;

/**
 * How long a stationary pulse of the meter test may last at a power setting, s, to a tenth: as much energy as a second at 20 %,
 * no shorter than the needle needs.
 */
export const longestPulseS = (powerPct: number): number =>
  Math.max(
    needleS,
    Math.floor(10 * longestS * Math.min(1, gentlePct / Math.max(1, powerPct)) + 1e-9) / 10,
  );
