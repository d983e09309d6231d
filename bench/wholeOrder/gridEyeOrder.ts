import { cutToTheEnd } from './cardsFirst.ts';
import { cutFixedGrid } from '../methods/fixedGrid.ts';
import type { OrderMethod } from './referee.ts';

/** More than this share not out, and a step slower is cut from then on. */
const tooMany = 0.1;

/**
 * The usual practice: a found grid of 25 cells read by eye at the usual power, one step surer, and a step slower after each
 * sheet with more than one failure in ten. Common practice, no source.
 */
export const gridEyeOrder: OrderMethod = {
  name: 'grid-eye',
  play: (shop) => {
    const { speeds, powers, grades } = cutFixedGrid({ ...shop, cutCard: shop.cutFoundCard }, 25);
    const usual = powers.indexOf(shop.typicalPowerPct);
    let fell = 0;
    while (fell < speeds.length && grades[fell * powers.length + usual] === 'out') fell += 1;
    const [slowest = 1, next = 2] = speeds;
    const step = next - slowest;
    const slower = (speed: number): number => Math.max(speed - step, speed / 2);
    let speedMmPerS = speeds[fell - 2] ?? slower(slowest);
    cutToTheEnd(shop, (notOut) => {
      if (notOut !== null && notOut > tooMany) speedMmPerS = slower(speedMmPerS);
      return speedMmPerS;
    });
  },
};
