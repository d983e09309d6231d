/** Why there is no recommendation. */
export const reasonCodes = [
  'nothing-read-yet',
  'all-came-out',
  'none-came-out',
  'nothing-out-at-this-power',
  'no-power-holds-this-speed',
  'slower-than-the-machine',
  'most-cells-left-out',
  'power-not-known',
  'did-not-converge',
] as const;

/** What an answer has to say beside its setting. */
export const warningCodes = [
  'slower-would-not-help',
  'corners-rest-on-prior',
  'cut-on-corner-power',
  'power-says-nothing',
  'guess-below-slowest-cell',
  'held-to-fastest-out',
  'changeover-off-the-card',
  'speeds-told-little',
  'thin-evidence',
  'look-again',
  'behaves-like',
  'cards-disagree',
  'disagreement-is-noise',
  'scatter-rests-on-prior',
  'flaws-not-learnt',
  'tally-stood-in',
  'habit-stood-in',
  'air-compared',
  'asked-overdrives',
  'cells-overdrove',
  'power-beyond-the-card',
  'flaws-beside-the-promise',
] as const;

/** What the next card's sentence may be. */
export const nextCardCodes = [
  'cut-this-card',
  'not-worth-another-sheet',
  'reaches-the-answer',
  'first-card',
  'double-the-range-faster',
  'double-the-range-slower',
] as const;

export type ReasonCode = (typeof reasonCodes)[number];
export type WarningCode = (typeof warningCodes)[number];
export type NextCardCode = (typeof nextCardCodes)[number];
