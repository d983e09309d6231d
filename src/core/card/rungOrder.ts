import type { SeededRandom } from '../../num/seededRandom.ts';
import { cornerPowerPct, type Setting } from '../machine/setting.ts';
import { correlation } from './correlation.ts';

/** What a setting varies in, each on its natural scale. */
export const factorsOf = (settings: readonly Setting[]): readonly (readonly number[])[] => [
  settings.map((setting) => Math.log(setting.speedMmPerS)),
  settings.map((setting) => Math.log(setting.powerPct)),
  settings.map((setting) => Math.log(Math.max(1, cornerPowerPct(setting)))),
  settings.map((setting) => Math.log(setting.passes)),
];

/** The greatest correlation of any factor with the order of cutting, in size. */
const trend = (settings: readonly Setting[]): number => {
  const order = settings.map((_, i) => i);
  return Math.max(...factorsOf(settings).map((factor) => Math.abs(correlation(factor, order))));
};

/** Slow to fast all the way: what a laser that warms up would be taken for. */
export const risesSteadily = (settings: readonly Setting[]): boolean =>
  settings.every((setting, i) => setting.speedMmPerS >= (settings[i - 1]?.speedMmPerS ?? 0)) &&
  settings.some((setting) => setting.speedMmPerS !== settings[0]?.speedMmPerS);

/** Drawings keep a rung together, so the order of rungs must itself bear no trend. */
const acceptedTrend = 0.3;

/**
 * Settings in an order drawn at random, such that neither speed nor either power nor passes goes with the order: a warm-up or a
 * drift then does not pose as a setting. Where chance gives no such order in 200 draws (two or three rungs never do), the
 * least trended that does not rise steadily in speed.
 */
export const drawOrder = (
  settings: readonly Setting[],
  random: Pick<SeededRandom, 'shuffle'>,
): readonly Setting[] => {
  let best: readonly Setting[] | undefined;
  for (let draw = 0; draw < 200; draw += 1) {
    const drawn = random.shuffle(settings);
    if (risesSteadily(drawn)) continue;
    if (trend(drawn) <= acceptedTrend) return drawn;
    if (best === undefined || trend(drawn) < trend(best)) best = drawn;
  }
  return best ?? settings;
};
