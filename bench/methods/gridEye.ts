import { priorMedianV50MmPerS } from '../../src/core/cutmodel/priors.ts';
import { thicknessOf } from '../thickness.ts';
import { layOut, type Method } from './method.ts';

/**
 * The usual practice: 25 cells, five speeds from half to one and a half times the expected changeover, five powers about
 * the usual one, cut row by row; read by eye at the usual power, one step surer than the fastest that came out with all
 * slower ones. Common practice, no source.
 */
export const gridEye: Method = {
  name: 'grid-eye',
  play: (shop) => {
    const middle = priorMedianV50MmPerS(
      shop.stock.material,
      thicknessOf(shop),
      shop.typicalPowerPct / 100,
    );
    const speeds = [0.5, 0.75, 1, 1.25, 1.5].map((factor) => Math.round(2 * factor * middle) / 2);
    const powers = [-10, -5, 0, 5, 10].map((offset) => shop.typicalPowerPct + offset);
    const settings = speeds.flatMap((speedMmPerS) =>
      powers.map((powerPct) => ({ powerPct, speedMmPerS })),
    );
    const grades = shop.cutCard(
      layOut(
        shop,
        settings,
        settings.map((_, i) => i),
      ),
    );
    let fell = 0;
    while (fell < speeds.length && grades[fell * powers.length + 2] === 'out') fell += 1;
    return { speedMmPerS: speeds[fell - 2] ?? null };
  },
};
