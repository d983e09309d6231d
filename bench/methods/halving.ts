import { nearestStep } from '../../src/core/machine/speedSteps.ts';
import { priorMedianV50MmPerS } from '../../src/core/cutmodel/priors.ts';
import { thicknessOf } from '../thickness.ts';
import { layoutOf, type Method } from './method.ts';

const cells = 6;
const firstStep = Math.log(1.5);

/** Step halving at the usual power: faster after out, slower after not, half the step once it has turned. */
export const halving: Method = {
  name: 'halving',
  play: (shop) => {
    let lnSpeed = Math.log(
      priorMedianV50MmPerS(shop.stock.material, thicknessOf(shop), shop.typicalPowerPct / 100),
    );
    let step = firstStep;
    let fastest: number | null = null;
    let last: boolean | null = null;
    for (let i = 0; i < cells; i += 1) {
      const speedMmPerS = nearestStep(Math.exp(lnSpeed));
      const [grade] = shop.cutCard(
        layoutOf(shop, [{ powerPct: shop.typicalPowerPct, speedMmPerS }], [0]),
      );
      const out = grade === 'out';
      if (out && speedMmPerS > (fastest ?? 0)) fastest = speedMmPerS;
      if (last !== null && last !== out) step /= 2;
      lnSpeed += out ? step : -step;
      last = out;
    }
    return { speedMmPerS: fastest };
  },
};
