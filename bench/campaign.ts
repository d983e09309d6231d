import { seededRandom } from '../src/num/seededRandom.ts';
import { wantedShare, type Limits, type Method } from './methods/method.ts';
import { cutShapes, type BenchCell, type WorkshopModule } from './workshop.ts';

/** How one campaign ended. */
export interface Result {
  readonly method: string;
  readonly seed: number;
  readonly cells: number;
  readonly cards: number;
  readonly settingsTyped: number;
  /** Recommended over the fastest that keeps the share; null without an answer. */
  readonly speedRatio: number | null;
  readonly kept: boolean | null;
  readonly sigma?: number;
}

/** Plays one method through one workshop. The method sees only what a user sees; the referee judges by the truth. */
export const play = (
  workshop: WorkshopModule,
  method: Method,
  seed: number,
  limits: Limits,
): Result => {
  const shop = workshop.openWorkshop(seed);
  let cells = 0;
  let cards = 0;
  const typed = new Set<string>();
  const cutCard = (card: readonly BenchCell[]) => {
    cells += card.length;
    cards += 1;
    for (const cell of card) {
      typed.add(`${String(cell.powerPct)}/${String(cell.speedMmPerS)}/${String(cell.passes)}`);
    }
    return cutShapes(shop, card);
  };
  const { speedMmPerS } = method.play(
    {
      machine: shop.machine,
      stock: shop.stock,
      bed: shop.bed,
      typicalPowerPct: shop.typicalPowerPct,
      ...(workshop.history ? { history: workshop.history(seed) } : {}),
      ...(workshop.oneBoard === true ? { oneBoard: true } : {}),
      ...(method.isTold && shop.truthForTheBound ? { truth: shop.truthForTheBound } : {}),
      cutCard,
    },
    seededRandom(seed * 7919 + 13),
    limits,
  );
  const powerPct = shop.typicalPowerPct;
  return {
    method: method.name,
    seed,
    cells,
    cards,
    settingsTyped: typed.size,
    speedRatio:
      speedMmPerS === null ? null : speedMmPerS / shop.fastestKeeping(wantedShare, powerPct),
    kept:
      speedMmPerS === null
        ? null
        : shop.trueOutShare({ powerPct, speedMmPerS, passes: 1, air: true }) >= wantedShare - 1e-9,
    ...(shop.sigmaForTheReferee === undefined ? {} : { sigma: shop.sigmaForTheReferee }),
  };
};
