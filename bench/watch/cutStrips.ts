import type { StudyCell } from '../../src/core/cutmodel/cutStudy.ts';
import type { VirtualWorkshop } from '../../src/core/virtual/virtualWorkshop.ts';
import type { SeededRandom } from '../../src/num/seededRandom.ts';

/** Twelve cells on a board of their own, six speeds about a changeover that is known to a tenth. */
export const cutBoard = (
  shop: VirtualWorkshop,
  name: Pick<StudyCell, 'batch' | 'sheet'>,
  random: SeededRandom,
): readonly StudyCell[] => {
  const { typicalPowerPct: powerPct, v50MmPerS } = shop.traits;
  const centre = v50MmPerS * Math.exp(0.05 * random.normal());
  const settings = Array.from({ length: 12 }, (_, i) => ({
    powerPct,
    speedMmPerS: Math.max(0.5, Math.round(2 * centre * Math.exp(-0.22 + 0.08 * (i % 6))) / 2),
    passes: 1,
  }));
  return cutCells(shop, settings, name);
};

export const cutCells = (
  shop: VirtualWorkshop,
  settings: readonly Pick<StudyCell, 'powerPct' | 'speedMmPerS' | 'passes'>[],
  name: Pick<StudyCell, 'batch' | 'sheet'>,
): readonly StudyCell[] => {
  const grades = shop.cutCard(
    settings.map((setting, i) => ({ ...setting, xMm: 430 + 20 * (i % 6), yMm: 300 })),
  );
  return settings.map((setting, i) => ({ ...setting, ...name, grade: grades[i] ?? 'stays' }));
};

export const pct = (part: number, all: number): string =>
  all === 0 ? '–' : `${((100 * part) / all).toFixed(1)} %`;

export const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;
