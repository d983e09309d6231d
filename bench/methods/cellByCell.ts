import type { Grade } from '../../src/core/reading/grade.ts';
import type { VisibleWorkshop } from '../workshop.ts';
import { layoutOf } from './method.ts';

/** One cell cut at the usual power. */
export interface Trial {
  /** ln(mm/s) of the speed that was really typed. */
  readonly lnSpeed: number;
  readonly out: boolean;
}

export interface GradedTrial extends Trial {
  readonly grade: Grade;
}

/**
 * Cuts one cell at a time at the workshop's usual power, each a card of its own. Speeds are typed to 0.1 mm/s, finer than
 * a card's 0.5: to the favour of the methods that place their cells one by one.
 */
export const cellByCell =
  (shop: VisibleWorkshop): ((lnSpeed: number) => GradedTrial) =>
  (lnSpeed) => {
    const [slowest, fastest] = shop.machine.speedRangeMmPerS;
    const rounded = Number(Math.exp(lnSpeed).toFixed(1));
    const speedMmPerS = Math.min(fastest, Math.max(slowest, 0.1, rounded));
    const [grade = 'stays'] = shop.cutCard(
      layoutOf(shop, [{ powerPct: shop.typicalPowerPct, speedMmPerS }], [0]),
    );
    return { lnSpeed: Math.log(speedMmPerS), out: grade === 'out', grade };
  };
