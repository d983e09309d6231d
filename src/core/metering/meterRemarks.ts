import type { ProblemOf } from '../problem.ts';
import { tQuantile } from '../../num/distributions.ts';
import type { UnkeptMetering } from './metering.ts';
import type { MeterCode } from '../problems/meter.ts';
import {
  assumedNoise,
  meterNoise,
  pseudoResiduals,
  sdOfMean,
  type MeterNoise,
} from './meterNoise.ts';
import { widestGapPct } from './meterPlan.ts';
import { repeatRemarks } from './meterRepeats.ts';
import { litSettings, meterSettings, type MeterSetting } from './meterSettings.ts';

/** Chance that a set of good readings is questioned for one of these reasons. */
const falseAlarm = 0.005;
/** Cooling water outside of this is worth a word, °C. Common practice, no source. */
const waterC = { coldBelow: 12, warmFrom: 28 } as const;

/**
 * What is to be asked of readings before they are believed. Nothing here refuses them: a person may know better. The
 * first in the list is the one best looked at first.
 */
export const meterRemarks = (metering: UnkeptMetering): readonly ProblemOf<MeterCode>[] => {
  const settings = meterSettings(metering.readings);
  const lit = litSettings(settings);
  const noise = meterNoise(settings);
  // Without repeats a wrong reading would pass for noise: then what is usual is held against it.
  const judge = noise.from === 'repeats' ? noise : { ...noise, ...assumedNoise };
  return [
    ...doubtful(lit, judge),
    ...reversed(lit, judge),
    ...repeatRemarks(settings, noise),
    ...aboutFiring(settings, lit),
    ...aboutReach(metering, lit),
    ...aboutWater(metering),
  ];
};

/** More setting drew less, by more than noise. */
const reversed = (
  lit: readonly MeterSetting[],
  noise: MeterNoise,
): readonly ProblemOf<MeterCode>[] => {
  const limit = tQuantile(1 - falseAlarm / Math.max(1, lit.length - 1), noise.degrees);
  return lit.slice(1).flatMap((high, i): readonly ProblemOf<MeterCode>[] => {
    const low = lit[i];
    if (low === undefined) return [];
    const sd = Math.hypot(sdOfMean(noise, low), sdOfMean(noise, high));
    if (!(low.meanMa - high.meanMa > limit * sd)) return [];
    return [
      {
        code: 'meter-reading-reversed',
        params: {
          lowPct: low.powerPct,
          lowMa: tenth(low.meanMa),
          highPct: high.powerPct,
          highMa: tenth(high.meanMa),
        },
      },
    ];
  });
};

/**
 * The setting that lies farthest off the line through its neighbours: by more than noise, and by more than a bend does
 * at which the curve becomes twice or half as steep (a sixth of the neighbours' difference, for even steps).
 */
const doubtful = (
  lit: readonly MeterSetting[],
  noise: MeterNoise,
): readonly ProblemOf<MeterCode>[] => {
  const off = pseudoResiduals(lit);
  const limit = tQuantile(1 - falseAlarm / 2 / Math.max(1, off.length), noise.degrees);
  const beyond = off.map((here) => {
    const setting = lit.find(({ powerPct }) => powerPct === here.powerPct);
    const sdHere = setting === undefined ? NaN : sdOfMean(noise, setting);
    const sd = (sdHere * here.perReading) / Math.sqrt(1 / (setting?.readingsMa.length ?? 1));
    return { ...here, excess: Math.abs(here.ma) - here.riseMa / 6 - limit * sd };
  });
  const worst = beyond.reduce<(typeof beyond)[number] | undefined>(
    (most, here) => (here.excess > (most?.excess ?? 0) ? here : most),
    undefined,
  );
  if (worst === undefined) return [];
  const { powerPct, meanMa, expectedMa } = worst;
  return [
    {
      code: 'meter-reading-doubtful',
      params: { powerPct, currentMa: tenth(meanMa), expectedMa: tenth(expectedMa) },
    },
  ];
};

const aboutFiring = (
  settings: readonly MeterSetting[],
  lit: readonly MeterSetting[],
): readonly ProblemOf<MeterCode>[] => {
  const first = lit[0];
  if (first === undefined) return [];
  const below = settings.filter(({ powerPct }) => powerPct < first.powerPct);
  const highest = below.at(-1);
  const early = below.find(({ state }) => state === 'lit');
  const flickers = below.filter(({ state }) => state === 'flickers');
  return [
    ...(early === undefined || highest === undefined
      ? []
      : [
          {
            code: 'meter-fired-below-dark' as const,
            params: { litPct: early.powerPct, darkPct: highest.powerPct },
          },
        ]),
    ...flickers.map(({ powerPct }) => ({ code: 'meter-flickers' as const, params: { powerPct } })),
    ...(below.length === 0
      ? [{ code: 'meter-never-dark' as const, params: { firesAtPct: first.powerPct } }]
      : []),
  ];
};

const aboutReach = (
  { ratedCurrentMa }: UnkeptMetering,
  lit: readonly MeterSetting[],
): readonly ProblemOf<MeterCode>[] => {
  const ratedMa = ratedCurrentMa ?? Infinity;
  const over = lit.find(({ meanMa }) => meanMa > 1.03 * ratedMa);
  const high = lit.find(
    ({ powerPct }, i) => powerPct - (lit[i - 1]?.powerPct ?? powerPct) > 1.5 * widestGapPct,
  );
  const low = high === undefined ? undefined : lit[lit.indexOf(high) - 1];
  return [
    ...(over === undefined
      ? []
      : [
          {
            code: 'meter-above-rated' as const,
            params: {
              powerPct: over.powerPct,
              currentMa: tenth(over.meanMa),
              ratedMa,
            },
          },
        ]),
    ...(high === undefined || low === undefined
      ? []
      : [
          {
            code: 'meter-wide-gap' as const,
            params: { lowPct: low.powerPct, highPct: high.powerPct },
          },
        ]),
  ];
};

const aboutWater = ({ waterC: temperatureC }: UnkeptMetering): readonly ProblemOf<MeterCode>[] => {
  if (temperatureC === undefined) return [];
  if (temperatureC >= waterC.warmFrom)
    return [{ code: 'meter-water-warm', params: { waterC: temperatureC } }];
  return temperatureC < waterC.coldBelow
    ? [{ code: 'meter-water-cold', params: { waterC: temperatureC } }]
    : [];
};

const tenth = (ma: number): number => Number(ma.toFixed(1));
