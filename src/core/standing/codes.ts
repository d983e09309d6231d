/** Why a sheet or a kept setting stands as it does. */
export const standingCodes = [
  'order-failed',
  'orders-since-failed',
  'run-before-failed',
  'checked-since',
  'slipped-once',
  'worse-than-foreseen',
  'more-than-allowed',
  'strip-says-slower',
  'strip-does-not-tell',
  'cards-say-slower',
  'no-answer-any-more',
  'less-sure-than-asked',
  'card-half-read',
  'outside-what-was-cut',
  'nothing-known',
  'not-worked-out',
  'borne-out',
  'as-promised',
  'strip-held',
  'by-cards-alone',
  'not-to-be-cut',
] as const;

export type StandingCode = (typeof standingCodes)[number];
