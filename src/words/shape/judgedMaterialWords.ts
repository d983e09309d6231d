/** What is said of a material that is refused or cautioned. */
export interface JudgedMaterialWords {
  readonly name: string;
  /** Whole sentences. */
  readonly reason: string;
  readonly hazards: readonly string[];
  /** Who says so, as a reader may look it up. */
  readonly sources: readonly string[];
}
