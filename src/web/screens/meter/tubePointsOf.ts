import type { TubePoint } from '../../../core/machine/machine.ts';
import type { MeterCurve } from '../../../core/metering/meterCurve.ts';

/**
 * A metering's curve as the few points by which a machine is told: where it stayed dark, then each setting with what it
 * draws, to 0.01 mA.
 */
export const tubePointsOf = ({ between, firing }: MeterCurve): readonly TubePoint[] => [
  ...(firing.darkAtPct === null ? [] : [{ powerPct: firing.darkAtPct, currentMa: 0 }]),
  ...between.x.map((powerPct, i) => ({
    powerPct,
    currentMa: Number((between.y[i] ?? NaN).toFixed(2)),
  })),
];
