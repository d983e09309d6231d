import type { BelievedChangeover } from '../card/cardRequest.ts';
import type { Machine } from '../machine/machine.ts';
import type { Setting } from '../machine/setting.ts';
import { deliveredOrSetting } from '../tube/deliveredPower.ts';

/**
 * Where a sheet is believed to be cut through by one who knows a setting that cuts it: as was believed, but nowhere slower than
 * that setting shows, in proportion to the delivered power. Thus no mark is held to be gentler than the cut beside it says.
 */
export const besideCut = (
  believed: BelievedChangeover,
  { powerPct: cutPct, speedMmPerS, passes }: Setting,
  machine: Machine,
): BelievedChangeover => {
  const delivered = deliveredOrSetting(machine);
  const shownMmPerS = speedMmPerS / passes / delivered(cutPct);
  return (powerPct) => {
    const expected = believed(powerPct);
    return {
      ...expected,
      v50MmPerS: Math.max(expected.v50MmPerS, shownMmPerS * delivered(powerPct)),
    };
  };
};
