import { cutFixedGrid } from './fixedGrid.ts';
import type { Method } from './method.ts';

/**
 * The usual practice: a fixed grid read by eye at the usual power, one step surer than the fastest speed that came out
 * with all slower ones. Common practice, no source.
 */
export const gridEye: Method = {
  name: 'grid-eye',
  play: (shop, _random, limits) => {
    const { speeds, powers, grades } = cutFixedGrid(shop, limits.cellsAtMost);
    const usual = powers.indexOf(shop.typicalPowerPct);
    let fell = 0;
    while (fell < speeds.length && grades[fell * powers.length + usual] === 'out') fell += 1;
    return { speedMmPerS: speeds[fell - 2] ?? null };
  },
};
