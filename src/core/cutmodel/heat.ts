import { normalQuantile } from '../../num/normal.ts';

/** A setting of one pass, as far as it heats the edge. */
export interface HeatSpot {
  readonly powerPct: number;
  readonly speedMmPerS: number;
}

/** Where a change comes as heat rises, over how much heat it is spread, and how power counts in it. */
export interface HeatChange {
  readonly at: number;
  readonly spread: number;
  readonly exponent: number;
  readonly prior: number;
}

// Priors, by judgement: no source. In ln of heat, so 0.1 is a tenth more heat.
/** How far above and below the middle of what was seen a change may lie. */
const furthest = 1.2;
const places = Array.from({ length: 49 }, (_, i) => furthest * (i / 24 - 1));
/** As many values as asked, of one weight each. */
export const lognormal = (n: number, median: number, sd: number): readonly number[] =>
  Array.from({ length: n }, (_, i) => median * Math.exp(sd * normalQuantile((i + 0.5) / n)));
/** Power's share in heat, N(1, 0.3²), as Gauss and Hermite have it in three points; where it never varied it says nothing. */
const exponents = [
  { value: 1 - 0.3 * Math.sqrt(3), weight: 1 / 6 },
  { value: 1, weight: 2 / 3 },
  { value: 1 + 0.3 * Math.sqrt(3), weight: 1 / 6 },
];

/** What a change may be, before anything was seen: a fixed grid, no chance in it. `spreads`: over how much heat, in ln. */
export const heatChanges = (
  isOnePower: boolean,
  spreads: readonly number[],
): readonly HeatChange[] =>
  (isOnePower ? [{ value: 1, weight: 1 }] : exponents).flatMap(
    ({ value: exponent, weight: prior }) =>
      spreads.flatMap((spread) => places.map((at) => ({ at, spread, exponent, prior }))),
  );

/** The heat that a cut leaves in the edge, ln: c·ln power − ln speed, 0 in the middle of the settings that were seen. */
export const heatFrom = (
  seen: readonly HeatSpot[],
): ((spot: HeatSpot, exponent: number) => number) => {
  const lnPowerFrom = meanOf(seen, ({ powerPct }) => Math.log(powerPct));
  const lnSpeedFrom = meanOf(seen, ({ speedMmPerS }) => Math.log(speedMmPerS));
  return ({ powerPct, speedMmPerS }, exponent) =>
    exponent * (Math.log(powerPct) - lnPowerFrom) - (Math.log(speedMmPerS) - lnSpeedFrom);
};

export const isOnePower = (seen: readonly HeatSpot[]): boolean =>
  seen.every(({ powerPct }) => powerPct === seen[0]?.powerPct);

/** From logarithms to weights that sum to 1. */
export const weightsOf = (logs: Float64Array): Float64Array => {
  const most = logs.reduce((a, b) => Math.max(a, b), -Infinity);
  const likely = logs.map((log) => Math.exp(log - most));
  const total = likely.reduce((a, b) => a + b, 0);
  return likely.map((w) => w / total);
};

/** How many ended in each of some ways, by setting, in the order in which the settings were cut. */
export const countedBySetting = (
  cuts: readonly (HeatSpot & { readonly way: number; readonly count: number })[],
  ways: number,
): readonly (HeatSpot & { readonly counts: readonly number[] })[] => {
  const settings = new Map<string, HeatSpot & { readonly counts: number[] }>();
  for (const { powerPct, speedMmPerS, way, count } of cuts) {
    const key = `${String(powerPct)}/${String(speedMmPerS)}`;
    const none = Array.from({ length: ways }, () => 0);
    const setting = settings.get(key) ?? { powerPct, speedMmPerS, counts: none };
    setting.counts[way] = (setting.counts[way] ?? NaN) + count;
    settings.set(key, setting);
  }
  return [...settings.values()];
};

export const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

const meanOf = <T>(items: readonly T[], of: (item: T) => number): number =>
  items.reduce((sum, item) => sum + of(item), 0) / items.length;
