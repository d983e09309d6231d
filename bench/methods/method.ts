import type { SeededRandom } from '../../src/num/seededRandom.ts';
import type { BenchCell, VisibleWorkshop } from '../workshop.ts';

export interface Limits {
  readonly cellsAtMost: number;
  readonly settingsAtMost: number;
  /** Length of the part that the promise is for; absent: the card's shape. */
  readonly partLengthMm?: number;
}

/** What a method ends with: a speed at the workshop's typical power, or nothing. */
export interface Verdict {
  readonly speedMmPerS: number | null;
}

/** A way of finding a setting: it may cut cards, and then says a speed. */
export interface Method {
  readonly name: string;
  /** Told the truth about the scatter: a bound, which no real method can be. */
  readonly isTold?: true;
  readonly play: (shop: VisibleWorkshop, random: SeededRandom, limits: Limits) => Verdict;
}

/** The share and the certainty that every method is asked for. */
export const wantedShare = 0.97;
export const wantedSurePct = 95;

const pitchMm = 22;

/**
 * Lays the settings, in the order of cutting, on places about the middle of the bed; `places` says which place each
 * takes (a permutation), so that a method decides what goes where.
 */
export const layoutOf = (
  shop: VisibleWorkshop,
  settings: readonly { readonly powerPct: number; readonly speedMmPerS: number }[],
  places: readonly number[],
): readonly BenchCell[] => {
  const columns = Math.ceil(Math.sqrt(settings.length * 1.6));
  const rows = Math.ceil(settings.length / columns);
  return settings.map((setting, i) => {
    const place = places[i] ?? i;
    return {
      ...setting,
      passes: 1,
      air: true,
      xMm: shop.bed.widthMm / 2 + ((place % columns) - (columns - 1) / 2) * pitchMm,
      yMm: shop.bed.heightMm / 2 + (Math.floor(place / columns) - (rows - 1) / 2) * pitchMm,
    };
  });
};
