import { partCost, type CostAssumptions, type PartCost, type WayToCut } from './partCost.ts';

/** A way of cutting that also loses parts. */
export interface WayThatLoses extends WayToCut {
  /** Share of parts that are lost and cut again from new sheet, 0–1. */
  readonly lostShare: number;
}

export interface GoodPartCost extends PartCost {
  /** What the parts lost on the way to one good part cost. */
  readonly recut: number;
}

/**
 * Cost of one good part: a part, and every lost one before it over again, with its time, its tube, its sheet and its share
 * of knife. Parts are cut until one is good, so 1/(1 − lost) of them on average (the mean of a geometric distribution).
 * Infinite where all are lost.
 */
export const goodPartCost = (way: WayThatLoses, assumed: CostAssumptions): GoodPartCost => {
  const one = partCost(way, assumed);
  const total = way.lostShare < 1 ? one.total / (1 - way.lostShare) : Infinity;
  return { ...one, recut: total - one.total, total };
};
