import { answerFrom } from '../../src/core/cutmodel/fitStudy.ts';
import { cutThreeCards } from '../methods/throughcut.ts';
import type { OrderMethod, OrderShop } from './referee.ts';

/** Three cards of eight, then the promised speed to the end: what the tool asked for before it planned orders. */
export const cardsFirst: OrderMethod = {
  name: 'cards-first',
  play: (shop, random) => {
    const fitted = cutThreeCards(shop, random, {
      cellsAtMost: 24,
      settingsAtMost: 12,
      partLengthMm: shop.order.lengthMm,
    });
    const speedMmPerS = answerFrom(fitted).recommended?.speedMmPerS;
    // Without an answer there is no order: the referee counts it.
    if (speedMmPerS !== undefined) cutToTheEnd(shop, () => speedMmPerS);
  },
};

/** Sheet after sheet until there are good parts enough; `speedNow` is asked before each. */
export const cutToTheEnd = (
  shop: Pick<OrderShop, 'order' | 'done' | 'cutSheet'>,
  speedNow: (notOutBefore: number | null) => number,
): void => {
  let notOut: number | null = null;
  while (shop.done() < shop.order.parts) {
    const parts = Math.min(shop.order.partsPerSheet, shop.order.parts - shop.done());
    const [counted] = shop.cutSheet([{ speedMmPerS: speedNow(notOut), parts }]);
    notOut = counted ? (counted.hangs + counted.stays) / parts : null;
  }
};
