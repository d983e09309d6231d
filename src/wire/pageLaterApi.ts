import type { kerfApi } from './kerfApi.ts';
import {
  kerfAddresses,
  markAddresses,
  photoAddresses,
  scoreAddresses,
  watchAddresses,
} from './laterAddresses.ts';
import type { markApi } from './markApi.ts';
import type { AddressedAll } from './pageApi.ts';
import type { photoApi } from './photo.ts';
import type { scoreApi } from './score.ts';
import type { watchApi } from './watch.ts';

// What `pageApi.ts` is for the first screens, for those that come later.

/** Those of a setting that is watched. */
export const pageWatchApi: AddressedAll<typeof watchApi> = watchAddresses;

/** Those of the photographs of a card. */
export const pagePhotoApi: AddressedAll<typeof photoApi> = photoAddresses;

/** Those of kerf and joints. */
export const pageKerfApi: AddressedAll<typeof kerfApi> = kerfAddresses;

/** Those of marking strips. */
export const pageMarkApi: AddressedAll<typeof markApi> = markAddresses;

/** Those that hold promises against counts. */
export const pageScoreApi: AddressedAll<typeof scoreApi> = scoreAddresses;
