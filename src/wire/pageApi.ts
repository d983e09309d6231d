import {
  addresses,
  kerfAddresses,
  markAddresses,
  orderAddresses,
  photoAddresses,
  scoreAddresses,
  watchAddresses,
} from './addresses.ts';
import type { api } from './api.ts';
import type { kerfApi } from './kerfApi.ts';
import type { markApi } from './markApi.ts';
import type { orderApi } from './order.ts';
import type { photoApi } from './photo.ts';
import type { Route } from './route.ts';
import type { scoreApi } from './score.ts';
import type { watchApi } from './watch.ts';

/** A route as the page carries it: its shapes are for the compiler, and weigh nothing. */
export interface Addressed<R extends Route> {
  readonly method: R['method'];
  readonly path: string;
  /** Never there. */
  readonly shapes?: R;
}

type AddressedAll<Api extends Readonly<Record<string, Route>>> = {
  readonly [Name in keyof Api]: Addressed<Api[Name]>;
};

/** Every route of the server, for the page. */
export const pageApi: AddressedAll<typeof api> = addresses;

/** Those of a setting that is watched. */
export const pageWatchApi: AddressedAll<typeof watchApi> = watchAddresses;

/** Those of an order that is cut sheet by sheet. */
export const pageOrderApi: AddressedAll<typeof orderApi> = orderAddresses;

/** Those of the photographs of a card. */
export const pagePhotoApi: AddressedAll<typeof photoApi> = photoAddresses;

/** Those of kerf and joints. */
export const pageKerfApi: AddressedAll<typeof kerfApi> = kerfAddresses;

/** Those of marking strips. */
export const pageMarkApi: AddressedAll<typeof markApi> = markAddresses;

/** Those that hold promises against counts. */
export const pageScoreApi: AddressedAll<typeof scoreApi> = scoreAddresses;
