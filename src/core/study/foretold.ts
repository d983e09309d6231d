/** What was foretold of a sheet before it was cut, kept with its count: so that what was said can be held against what came. */
export interface Foretold {
  /** Of 100 sound parts so many were to come out. */
  readonly outOf100: number;
  /** The share that was promised at its setting, and how surely. */
  readonly promisedOutOf100: number;
  readonly surePct: number;
  /** Where the fastest speed that keeps the promise was believed to lie: surely, as likely as not, hardly any faster. */
  readonly sureMmPerS?: number;
  readonly evenMmPerS?: number;
  readonly hardlyMmPerS?: number;
}
