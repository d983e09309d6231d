/** What the files that a danger may leave behind are held to. */
export interface HeldTo {
  /** Remarks that must be made, by code. */
  readonly says?: readonly string[];
  /** No power setting of anything that fires is higher, power in corners included. */
  readonly mostPowerPct?: number;
  /** No line energy is more than so many times that of the changeover which the card was designed for. */
  readonly mostTimes?: number;
  /** The same for words and marks. */
  readonly mostMarksTimes?: number;
  /** Stand in what the command prints, and in each drawing and program. */
  readonly cautions?: readonly string[];
  /** No speed of anything that fires lies outside. */
  readonly speedsMmPerS?: readonly [least: number, most: number];
}

/** The outcome that keeps people from harm: nothing is made, with this reason; or what is made keeps within bounds. */
export type Outcome =
  /** Where the doors say it in other words: each code. */
  { readonly refused: string | Readonly<Record<Way, string>> } | { readonly made: HeldTo };

/** Whoever asks: a file at the command line, or a program or page through HTTP. */
export type Way = 'command-line' | 'http';

/**
 * One request that could hurt someone, as a value. `ask` is what a file at the command line says; the runner of HTTP sends the
 * same in the shapes of the API.
 */
export interface Danger {
  readonly what: string;
  readonly door: 'card' | 'ramp' | 'kerf';
  readonly ask: object;
  readonly then: Outcome;
  /** Where not every door can be asked this. */
  readonly only?: Way;
}
