import type { Result } from './campaign.ts';

export interface MethodSummary {
  readonly name: string;
  readonly cellsMedian: number;
  readonly cardsMedian: number;
  readonly settingsTypedMedian: number;
  readonly speedRatioMedian: number | null;
  readonly speedRatioP10: number | null;
  readonly promiseKeptPct: number | null;
  readonly noAnswerPct: number;
  /** Share kept by thirds of the true scatter, smallest first, where the workshop tells it. */
  readonly promiseKeptByScatterPct?: readonly (number | null)[];
}

/** Medians and shares, a line a method, in the order of first appearance. */
export const summarise = (results: readonly Result[]): readonly MethodSummary[] =>
  [...new Set(results.map((result) => result.method))].map((name) => {
    const own = results.filter((result) => result.method === name);
    const ratios = own.flatMap(({ speedRatio }) => (speedRatio === null ? [] : [speedRatio]));
    const thirds = byThirds(own);
    return {
      name,
      cellsMedian:
        quantile(
          own.map((r) => r.cells),
          0.5,
        ) ?? 0,
      cardsMedian:
        quantile(
          own.map((r) => r.cards),
          0.5,
        ) ?? 0,
      settingsTypedMedian:
        quantile(
          own.map((r) => r.settingsTyped),
          0.5,
        ) ?? 0,
      speedRatioMedian: quantile(ratios, 0.5),
      speedRatioP10: quantile(ratios, 0.1),
      promiseKeptPct: keptPct(own),
      noAnswerPct: (100 * own.filter((r) => r.speedRatio === null).length) / own.length,
      ...(thirds ? { promiseKeptByScatterPct: thirds } : {}),
    };
  });

const keptPct = (results: readonly Result[]): number | null => {
  const answered = results.filter((result) => result.kept !== null);
  return answered.length === 0
    ? null
    : (100 * answered.filter((result) => result.kept === true).length) / answered.length;
};

const byThirds = (results: readonly Result[]): readonly (number | null)[] | null => {
  if (results.some((result) => result.sigma === undefined)) return null;
  const sorted = [...results].sort((a, b) => (a.sigma ?? 0) - (b.sigma ?? 0));
  const third = Math.ceil(sorted.length / 3);
  return [0, 1, 2].map((k) => keptPct(sorted.slice(k * third, (k + 1) * third)));
};

/** Linear between order statistics (R's type 7). */
export const quantile = (values: readonly number[], p: number): number | null => {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  const place = p * (sorted.length - 1);
  const low = sorted[Math.floor(place)] ?? 0;
  const high = sorted[Math.ceil(place)] ?? low;
  return low + (place - Math.floor(place)) * (high - low);
};
