/** Why a kerf or a joint cannot be told. */
export const kerfReasonCodes = [
  'kerf-no-comb',
  'kerf-not-positive',
  'joint-slots-unread',
  'joint-slots-mixed',
] as const;

/** What is to be said beside them. */
export const kerfRemarkCodes = [
  'kerf-one-place',
  'kerf-two-combs',
  'kerf-without-bar',
  'kerf-directions-differ',
  'kerf-wider-than-usual',
  'joint-between-slots',
  'joint-not-seen',
] as const;

export type KerfReasonCode = (typeof kerfReasonCodes)[number];
export type KerfRemarkCode = (typeof kerfRemarkCodes)[number];
