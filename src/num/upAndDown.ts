/** One trial of an up-and-down series. */
export interface UpDownTrial {
  readonly level: number;
  readonly responded: boolean;
}

export interface UpDownEstimate {
  readonly mean: number;
  /** By the 1948 formula, which holds where `ratio` is above 0.3. */
  readonly sd: number;
  readonly sdFormulaHolds: boolean;
  /** (N·B − A²)/N². */
  readonly ratio: number;
  /** The rarer response, the one that counts. */
  readonly usedResponse: boolean;
  /** N = Σ nᵢ, A = Σ i·nᵢ, B = Σ i²·nᵢ over its levels, i = 0 at its lowest. */
  readonly sums: readonly [n: number, a: number, b: number];
  readonly lowestLevel: number;
  /** Half a step up or down from the mean level. */
  readonly offset: 0.5 | -0.5;
}

/**
 * Mean and spread of a tolerance from an up-and-down series with a fixed step (Dixon & Mood 1948). Only the rarer
 * response is used (the positive where both are equally frequent). Null without any trial of it.
 *
 * @param risesWithLevel whether a higher level makes a response likelier.
 */
export const dixonMood = (
  trials: readonly UpDownTrial[],
  { step, risesWithLevel }: { readonly step: number; readonly risesWithLevel: boolean },
): UpDownEstimate | null => {
  const responses = trials.filter((trial) => trial.responded).length;
  const usedResponse = responses <= trials.length - responses;
  const used = trials.filter((trial) => trial.responded === usedResponse);
  if (used.length === 0) return null;
  const lowestLevel = Math.min(...used.map((trial) => trial.level));
  const indices = used.map((trial) => Math.round((trial.level - lowestLevel) / step));
  const n = used.length;
  const a = indices.reduce((sum, i) => sum + i, 0);
  const b = indices.reduce((sum, i) => sum + i * i, 0);
  // Responses happen above the median where they rise with the level, and so do failures where they fall.
  const offset = usedResponse === risesWithLevel ? -0.5 : 0.5;
  const ratio = (n * b - a * a) / (n * n);
  return {
    mean: lowestLevel + step * (a / n + offset),
    sd: 1.62 * step * (ratio + 0.029),
    sdFormulaHolds: ratio > 0.3,
    ratio,
    usedResponse,
    sums: [n, a, b],
    lowestLevel,
    offset,
  };
};
