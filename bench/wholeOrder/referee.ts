import { usualPlanCosts } from '../../src/core/plan/planWish.ts';
import { referenceLengthMm } from '../../src/core/reading/promise.ts';
import { seededRandom, type SeededRandom } from '../../src/num/seededRandom.ts';
import { layoutOf, wantedShare } from '../methods/method.ts';
import {
  cutShapes,
  type BenchCell,
  type VisibleWorkshop,
  type WorkshopModule,
} from '../workshop.ts';
import type { BenchOrder } from './benchOrder.ts';
import { cheapestKnownS } from './cheapestKnown.ts';

/** How the parts cut at one setting ended. */
export interface PartsCounted {
  readonly speedMmPerS: number;
  readonly out: number;
  readonly hangs: number;
  readonly stays: number;
  readonly spoilt: number;
}

/** The workshop as someone sees it who cuts an order. All that is cut is cut at the usual power, but on found cards. */
export interface OrderShop extends VisibleWorkshop {
  readonly order: BenchOrder;
  /** Good parts there are by now. */
  readonly done: () => number;
  /** A card that lies ready as a file: none of its settings is typed. */
  readonly cutFoundCard: VisibleWorkshop['cutCard'];
  /** Cuts one sheet, in the order given, and counts it. */
  readonly cutSheet: (
    settings: readonly { readonly speedMmPerS: number; readonly parts: number }[],
  ) => readonly PartsCounted[];
}

/** A way of getting an order done: it cuts cards and sheets until there are parts enough. */
export interface OrderMethod {
  readonly name: string;
  readonly play: (shop: OrderShop, random: SeededRandom) => void;
}

/** How one order ended. */
export interface OrderResult {
  readonly method: string;
  readonly seed: number;
  readonly seconds: number;
  /** Over the cheapest plan of one who knows. */
  readonly excessPct: number;
  /** Sound parts not out, by the truth, over the parts cut. */
  readonly notOutShare: number;
  readonly cards: number;
  readonly typed: number;
  /** The order did not end with parts enough. */
  readonly noPlan: boolean;
  readonly sheets: number;
  /** Sheets with a setting that truly does not keep the promise. */
  readonly brokenSheets: number;
}

const costs = usualPlanCosts;

/** An order that takes more than so many times its sheets has no end. */
const mostTimes = 6;

class NoEnd extends Error {}

/** Plays one method through one order and charges it in seconds. The referee alone sees the truth. */
export const playOrder = (
  workshop: WorkshopModule,
  method: OrderMethod,
  seed: number,
  order: BenchOrder,
): OrderResult => {
  const shop = workshop.openWorkshop(seed);
  const powerPct = shop.typicalPowerPct;
  const spent = { seconds: 0, cards: 0, typed: 0, sheets: 0, brokenSheets: 0 };
  const made = { done: 0, cut: 0, notOut: 0 };
  let held = new Set<string>();
  const type = (cells: readonly Pick<BenchCell, 'powerPct' | 'speedMmPerS'>[]): void => {
    const wanted = new Set(cells.map((c) => `${String(c.powerPct)}/${String(c.speedMmPerS)}`));
    const fresh = [...wanted].filter((setting) => !held.has(setting)).length;
    spent.typed += fresh;
    spent.seconds += fresh * costs.type;
    held = wanted;
  };
  const cutFoundCard: VisibleWorkshop['cutCard'] = (cells) => {
    spent.cards += 1;
    spent.seconds += costs.card;
    for (const { speedMmPerS } of cells) {
      spent.seconds += referenceLengthMm / speedMmPerS + costs.cell + costs.read;
    }
    return cutShapes(shop, cells);
  };
  const cutCard: VisibleWorkshop['cutCard'] = (cells) => {
    type(cells);
    return cutFoundCard(cells);
  };
  const visible: VisibleWorkshop = {
    machine: shop.machine,
    stock: shop.stock,
    bed: shop.bed,
    typicalPowerPct: powerPct,
    ...(workshop.history ? { history: workshop.history(seed) } : {}),
    cutCard,
  };
  const mostSheets = mostTimes * Math.ceil(order.parts / order.partsPerSheet) + 10;

  const cutSheet: OrderShop['cutSheet'] = (settings) => {
    if (spent.sheets >= mostSheets) throw new NoEnd();
    spent.sheets += 1;
    spent.seconds += costs.count;
    const cells = settings.flatMap(({ speedMmPerS, parts }) =>
      Array.from({ length: parts }, () => ({ powerPct, speedMmPerS })),
    );
    type(cells);
    const places = cells.map((_, i) => i);
    const ends = shop.cutCard(
      layoutOf(visible, cells, places).map((cell) => ({ ...cell, lengthMm: order.lengthMm })),
    );
    let from = 0;
    const broken = new Set<number>();
    const counted = settings.map(({ speedMmPerS, parts }): PartsCounted => {
      const own = ends.slice(from, from + parts);
      from += parts;
      const countOf = (end: string): number => own.filter((one) => one === end).length;
      const [out, hangs, stays] = [countOf('out'), countOf('hangs'), countOf('stays')];
      const spoilt = parts - out - hangs - stays;
      spent.seconds += parts * (order.lengthMm / speedMmPerS + costs.part);
      spent.seconds += hangs * costs.knife + (stays + spoilt) * costs.recut;
      const setting = { powerPct, speedMmPerS, passes: 1, air: true };
      const share = shop.trueOutShare(setting, order.lengthMm);
      if (share < wantedShare - 1e-9) broken.add(speedMmPerS);
      made.done += out + hangs;
      made.cut += parts;
      made.notOut += parts * (1 - share);
      return { speedMmPerS, out, hangs, stays, spoilt };
    });
    if (broken.size > 0) spent.brokenSheets += 1;
    return counted;
  };

  try {
    method.play(
      { ...visible, order, done: () => made.done, cutFoundCard, cutSheet },
      seededRandom(seed * 7919 + 13),
    );
  } catch (error) {
    if (!(error instanceof NoEnd)) throw error;
  }
  const known = cheapestKnownS(shop, order, workshop.flawRate ?? 0);
  return {
    method: method.name,
    seed,
    ...spent,
    excessPct: 100 * (spent.seconds / known - 1),
    notOutShare: made.cut === 0 ? 0 : made.notOut / made.cut,
    noPlan: made.done < order.parts,
  };
};
