/** A material by the name that a person gave it. */
export interface NamedMaterial {
  readonly material: string;
  /** A person has looked at what it is: a name that would be asked about passes. It lifts no refusal. */
  readonly materialKnown?: true;
}

/** Of a stock, or of what a kept setting holds for: the name alone, with what a person knows of it. */
export const namedMaterial = ({ material, materialKnown }: NamedMaterial): NamedMaterial => ({
  material,
  ...(materialKnown === undefined ? {} : { materialKnown }),
});
