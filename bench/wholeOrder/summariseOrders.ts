import { quantile } from '../summary.ts';
import type { OrderResult } from './referee.ts';

export interface OrderSummary {
  readonly name: string;
  readonly excessPctMedian: number | null;
  readonly excessPctP90: number | null;
  readonly notOutPctMean: number;
  readonly minutesMedian: number | null;
  readonly cardsMedian: number | null;
  readonly typedMedian: number | null;
  readonly noPlanPct: number;
  readonly promiseBrokenPct: number;
}

/** Medians and shares, a line a method, in the order of first appearance. Costs are those of the orders that came to an end. */
export const summariseOrders = (results: readonly OrderResult[]): readonly OrderSummary[] =>
  [...new Set(results.map(({ method }) => method))].map((name) => {
    const own = results.filter(({ method }) => method === name);
    const ended = own.filter(({ noPlan }) => !noPlan);
    const sum = (of: (result: OrderResult) => number): number =>
      own.reduce((total, result) => total + of(result), 0);
    const over = (of: (result: OrderResult) => number, p: number): number | null =>
      quantile(ended.map(of), p);
    return {
      name,
      excessPctMedian: over(({ excessPct }) => excessPct, 0.5),
      excessPctP90: over(({ excessPct }) => excessPct, 0.9),
      notOutPctMean: (100 * sum(({ notOutShare }) => notOutShare)) / own.length,
      minutesMedian: over(({ seconds }) => seconds / 60, 0.5),
      cardsMedian: over(({ cards }) => cards, 0.5),
      typedMedian: over(({ typed }) => typed, 0.5),
      noPlanPct: (100 * (own.length - ended.length)) / own.length,
      promiseBrokenPct:
        (100 * sum(({ brokenSheets }) => brokenSheets)) /
        Math.max(
          1,
          sum(({ sheets }) => sheets),
        ),
    };
  });
