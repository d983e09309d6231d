import type { Setting } from '../machine/setting.ts';
import type { PromiseWish } from '../reading/promise.ts';
import type { Tally } from '../reading/tally.ts';

/** Sound parts or cells that were cut alike. */
export interface WatchedGroup {
  /** Faster than the proven setting: ln of the ratio of speeds, 0 for orders. */
  readonly lnFaster: number;
  /** Length of cut of one piece. */
  readonly lengthMm: number;
  readonly parts: number;
  readonly out: number;
}

/** One order, or one check strip, that is held against what its promise foresaw. */
export interface Watched {
  readonly id: string;
  /** ISO 8601, UTC. */
  readonly at: string;
  readonly kind: 'order' | 'strip';
  readonly batch?: string;
  /** Never empty; at least one part in all. */
  readonly groups: readonly WatchedGroup[];
  /** Lost to a pocket or a knot: they say nothing of the margin and count for nothing here. */
  readonly spoilt: number;
}

/** What the book says of a proven setting, as far as it is watched. */
export interface Foreseen {
  readonly setting: Setting;
  readonly promise: PromiseWish;
  /** Of 100 sound parts, how many were foreseen to come out. */
  readonly outOf100Mean: number;
  /** How sure the promise was at this setting. */
  readonly surePct: number;
}

/** An order as it is watched: a part that needs the knife did not come out. None where nothing sound was counted. */
export const watchedOrder = (
  tally: Tally & { readonly id: string; readonly at: string },
): readonly Watched[] => {
  const parts = tally.out + tally.hangs + tally.stays;
  if (parts === 0) return [];
  return [
    {
      id: tally.id,
      at: tally.at,
      kind: 'order',
      ...(tally.batch === undefined ? {} : { batch: tally.batch }),
      groups: [{ lnFaster: 0, lengthMm: tally.partLengthMm, parts, out: tally.out }],
      spoilt: tally.spoilt,
    },
  ];
};
