import type { ProblemOf } from '../problem.ts';
import { tQuantile } from '../../num/distributions.ts';
import type { MeterCode } from '../problems/meter.ts';
import { meterNoise, sdAt, type MeterNoise } from './meterNoise.ts';
import { litSettings, type MeterSetting } from './meterSettings.ts';

/** Chance that good repeats are questioned. */
const falseAlarm = 0.005;
/** A drift smaller than this share of the current is left alone. */
const worthASharePct = 2;

/** What repeats say of themselves: that there are none, that two at one setting are far apart, that the second round differs. */
export const repeatRemarks = (
  settings: readonly MeterSetting[],
  noise: MeterNoise,
): readonly ProblemOf<MeterCode>[] => {
  const lit = litSettings(settings);
  if (lit.length > 0 && lit.every(({ readingsMa }) => readingsMa.length === 1))
    return [{ code: 'meter-no-repeats', params: {} }];
  const apart = farApart(settings, noise);
  // One wrong repeat looks like drift too: it is asked about first.
  return apart.length > 0 ? apart : drift(lit);
};

const farApart = (
  settings: readonly MeterSetting[],
  { readToMa }: MeterNoise,
): readonly ProblemOf<MeterCode>[] => {
  const lit = litSettings(settings);
  return lit.flatMap((setting): readonly ProblemOf<MeterCode>[] => {
    const others = meterNoise(lit.filter((other) => other !== setting));
    if (others.from !== 'repeats' || setting.readingsMa.length < 2) return [];
    const [low, high] = [Math.min(...setting.readingsMa), Math.max(...setting.readingsMa)];
    const sd = Math.max(sdAt(others, setting.meanMa), readToMa / Math.sqrt(12)) * Math.SQRT2;
    const limit = tQuantile(1 - falseAlarm / 2 / lit.length, others.degrees);
    // Figures that stand one step of the scale apart are as close as figures get.
    if (!(high - low > Math.max(limit * sd, 1.5 * readToMa))) return [];
    return [
      {
        code: 'meter-repeats-apart',
        params: { powerPct: setting.powerPct, lowMa: low, highMa: high },
      },
    ];
  });
};

/** The last reading at each setting against the first: a tube or a supply that warms up moves them all one way. */
const drift = (lit: readonly MeterSetting[]): readonly ProblemOf<MeterCode>[] => {
  const shares = lit.flatMap(({ readingsMa, meanMa }) => {
    const [first, last] = [readingsMa[0], readingsMa.at(-1)];
    return first === undefined || last === undefined || readingsMa.length < 2
      ? []
      : [(100 * (last - first)) / meanMa];
  });
  if (shares.length < 4) return [];
  const mean = shares.reduce((sum, share) => sum + share / shares.length, 0);
  const squares = shares.reduce((sum, share) => sum + (share - mean) ** 2, 0);
  const sdOfMean = Math.sqrt(squares / (shares.length - 1) / shares.length);
  const limit = tQuantile(1 - falseAlarm / 2, shares.length - 1);
  if (!(Math.abs(mean) > limit * sdOfMean && Math.abs(mean) > worthASharePct)) return [];
  return [
    {
      code: 'meter-drifts',
      params: { byPct: Number(Math.abs(mean).toFixed(1)), which: mean < 0 ? 'less' : 'more' },
    },
  ];
};
