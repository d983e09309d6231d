/** A kind of material and nominal thickness, and what is known of the sheet at hand. */
export interface Stock {
  readonly material: string;
  /** A person has looked at what it is, where the name alone leaves that open. Never lifts a refusal. */
  readonly materialKnown?: true;
  readonly nominalThicknessMm: number;
  /** Caliper readings in several places; empty when nobody measured. */
  readonly thicknessReadingsMm: readonly number[];
  /** One delivery. */
  readonly batch?: string;
  /** One board. */
  readonly sheet?: string;
  readonly note?: string;
}
