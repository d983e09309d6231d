import type { EdgeKind } from '../reading/edge.ts';
import { edgeBeliefs, type EdgeCut, type EdgeShare } from './edgeBeliefs.ts';
import type { HeatSpot } from './heat.ts';

/** Fewer edges say nothing that is worth saying. */
export const leastEdges = 6;

/** So many more of 100 edges are worth another setting, and a slower one: fewer are as good. */
const worthPreferring = 10;

/** How sure it has to be that there are more at all. */
const leastSurePct = 90;

export interface EdgePreference<Spot extends HeatSpot> {
  /** The edge at the answer itself. */
  readonly here: EdgeShare;
  readonly preferred?: { readonly spot: Spot; readonly share: EdgeShare };
}

/**
 * Whether another setting is to be preferred for its edge, among those that may be run: of those with the most edges of the
 * best grade, surely more and enough more than at the answer, the fastest. The settings to choose
 * from are the caller's, so nothing is preferred that does not keep the promise.
 */
export const preferEdge = <Spot extends HeatSpot>({
  cuts,
  kind,
  answer,
  mayRun,
}: {
  readonly cuts: readonly EdgeCut[];
  readonly kind: EdgeKind;
  readonly answer: HeatSpot;
  readonly mayRun: readonly Spot[];
}): EdgePreference<Spot> => {
  const beliefs = edgeBeliefs(cuts, kind);
  const here = beliefs.shareAt(answer);
  const known = mayRun.map((spot) => ({ spot, share: beliefs.shareAt(spot) }));
  const most = Math.max(...known.map(({ share }) => share.meanOf100));
  const enough = Math.max(most - worthPreferring, here.meanOf100 + worthPreferring);
  const [best] = known
    .filter(({ share }) => share.meanOf100 >= enough)
    .filter(({ spot }) => beliefs.surelyBetterPct(spot, answer) >= leastSurePct)
    .sort((a, b) => b.spot.speedMmPerS - a.spot.speedMmPerS);
  return best === undefined ? { here } : { here, preferred: best };
};
