import type { TubePoint } from '../machine/machine.ts';

/** All readings at one power setting. */
export interface MeterSetting {
  readonly powerPct: number;
  /** In the order in which they were read, mA. */
  readonly readingsMa: readonly number[];
  readonly meanMa: number;
  /** `dark`: it drew nothing each time. `flickers`: it fired one time and not another. `lit`: it fired each time. */
  readonly state: 'dark' | 'flickers' | 'lit';
}

/** Readings by their setting, ascending. */
export const meterSettings = (readings: readonly TubePoint[]): readonly MeterSetting[] => {
  const bySetting = new Map<number, number[]>();
  for (const { powerPct, currentMa } of readings) {
    const here = bySetting.get(powerPct);
    if (here === undefined) bySetting.set(powerPct, [currentMa]);
    else here.push(currentMa);
  }
  return [...bySetting]
    .sort(([a], [b]) => a - b)
    .map(([powerPct, readingsMa]) => ({
      powerPct,
      readingsMa,
      meanMa: readingsMa.reduce((sum, reading) => sum + reading, 0) / readingsMa.length,
      state: stateOf(readingsMa),
    }));
};

const stateOf = (readingsMa: readonly number[]): MeterSetting['state'] => {
  const dark = readingsMa.filter((reading) => reading === 0).length;
  if (dark === 0) return 'lit';
  return dark === readingsMa.length ? 'dark' : 'flickers';
};

/** The settings above the last at which it stayed dark: it fired each time, and a curve goes through them. */
export const litSettings = (settings: readonly MeterSetting[]): readonly MeterSetting[] =>
  settings.slice(lastNotLit(settings) + 1);

const lastNotLit = (settings: readonly MeterSetting[]): number =>
  settings.findLastIndex(({ state }) => state !== 'lit');

/** Where the tube begins to fire: dark, at least once, at the one; lit each time from the other on. */
export interface FiringBracket {
  /** Null: no reading found it dark. */
  readonly darkAtPct: number | null;
  readonly firesAtPct: number;
}

/** Null: it never fired each time at any setting. */
export const firingBracket = (settings: readonly MeterSetting[]): FiringBracket | null => {
  const last = lastNotLit(settings);
  const first = settings[last + 1];
  if (first === undefined) return null;
  return { darkAtPct: settings[last]?.powerPct ?? null, firesAtPct: first.powerPct };
};
