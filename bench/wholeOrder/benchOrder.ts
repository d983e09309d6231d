/** What is ordered. */
export interface BenchOrder {
  readonly parts: number;
  readonly partsPerSheet: number;
  readonly lengthMm: number;
}
