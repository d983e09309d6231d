/** One figure of the night, with what it must reach; without a bound it is only told. */
export interface Figure {
  readonly what: string;
  readonly value: number;
  readonly unit?: string;
  readonly atLeast?: number;
  readonly atMost?: number;
  /** The first cases that fell short, in words, for whoever mends them. */
  readonly cases?: readonly string[];
}

/** What is too long for a commit and is run at night: named, and measured figure by figure. */
export interface NightPart {
  readonly name: string;
  readonly about: string;
  readonly run: () => AsyncIterable<Figure> | Iterable<Figure>;
}

/** Whether a figure reaches what it must; a value that is no number does not. */
export const fallsShort = ({ value, atLeast, atMost }: Figure): boolean =>
  Number.isNaN(value) ||
  (atLeast !== undefined && value < atLeast) ||
  (atMost !== undefined && value > atMost);
