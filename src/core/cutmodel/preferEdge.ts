import type { EdgeKind } from '../reading/edge.ts';
import { edgeBeliefs, type EdgeCut, type EdgeShare, type EdgeSpot } from './edgeBeliefs.ts';

/** Fewer edges say nothing that is worth saying. */
export const leastEdges = 6;

/** So many more of 100 edges are worth another setting. */
const worthPreferring = 10;

/** How sure it has to be that there are more at all. */
const leastSurePct = 90;

export interface EdgePreference<Spot extends EdgeSpot> {
  /** The edge at the answer itself. */
  readonly here: EdgeShare;
  readonly preferred?: { readonly spot: Spot; readonly share: EdgeShare };
}

/**
 * Whether another setting is to be preferred for its edge, among those that may be run: the one with the most edges of the
 * best grade, where they are surely more and enough more than at the answer. Of equals the fastest. The settings to choose
 * from are the caller's, so nothing is preferred that does not keep the promise.
 */
export const preferEdge = <Spot extends EdgeSpot>({
  cuts,
  kind,
  answer,
  mayRun,
}: {
  readonly cuts: readonly EdgeCut[];
  readonly kind: EdgeKind;
  readonly answer: EdgeSpot;
  readonly mayRun: readonly Spot[];
}): EdgePreference<Spot> => {
  const beliefs = edgeBeliefs(cuts, kind);
  const here = beliefs.shareAt(answer);
  const known = mayRun.map((spot) => ({ spot, share: beliefs.shareAt(spot) }));
  const most = Math.max(...known.map(({ share }) => share.meanOf100));
  const [best] = known
    .filter(({ share }) => share.meanOf100 >= most - asGood)
    .sort((a, b) => b.spot.speedMmPerS - a.spot.speedMmPerS);
  const isWorth =
    best !== undefined &&
    best.share.meanOf100 >= here.meanOf100 + worthPreferring &&
    beliefs.surelyBetterPct(best.spot, answer) >= leastSurePct;
  return isWorth ? { here, preferred: best } : { here };
};

/** Settings whose edges differ by less, of 100, are as good as each other. */
const asGood = 5;
