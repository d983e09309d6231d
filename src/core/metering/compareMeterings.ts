import { valueAt, type MonotoneCubic } from '../../num/monotoneCubic.ts';
import { done, refused, type Outcome, type ProblemOf } from '../problem.ts';
import type { MeterCompareCode } from '../problems/meterings.ts';
import { band, meterCurve, type MeterCurve } from './meterCurve.ts';
import type { Metering } from './metering.ts';

/** How the later curve stands to the earlier. */
export interface CurveChange {
  /**
   * `lower`, `higher`: by one share all along. `bent`: in shape. `fires-later`, `fires-sooner`: the threshold, beyond the
   * brackets of both. `same`: not beyond noise, or by less than matters.
   */
  readonly how: 'lower' | 'higher' | 'bent' | 'fires-later' | 'fires-sooner' | 'same';
  /** The later current over the earlier, on average where both were read, per cent, and its band of 97.5 %. */
  readonly levelPct: number;
  readonly lowPct: number;
  readonly highPct: number;
  /** Chance of a change of level, or of shape, as great as this or greater if nothing had changed. */
  readonly chanceOfLevel: number;
  readonly chanceOfShape: number;
  /** Where the two differ most for their noise. */
  readonly most: { readonly powerPct: number; readonly beforeMa: number; readonly nowMa: number };
  /** What to mind before believing it. */
  readonly remarks: readonly ProblemOf<MeterCompareCode>[];
}

/** Two looks, one at the level and one at the shape: together they are wrong once in twenty where nothing has changed. */
const chanceEach = 0.025;
/** A smaller change of level is not worth looking for, per cent. Meters themselves agree no better; common practice, no source. */
const worthPct = 2;
/** A band wider than this to each side says too little to call the curve unchanged, per cent. */
const widestPct = 6;
/** How many places are looked at between the lowest and the highest setting that both were read at. */
const places = 9;
/** Water that differs by this much may by itself change what is drawn, °C. Common practice, no source. */
const waterApartC = 5;

/**
 * Holds a metering against an earlier one of the same machine, where both were read: has the curve moved by more than
 * the noise of the two? Level: the mean current over the settings. Shape: the place where the curves differ most once
 * the level is taken out, against how far the noise alone would take the farthest of all places. The two sets of drawn
 * curves are paired at a stride, so that their chances are not the same. Refuses what cannot be compared: readings that
 * make no curve, `meterings-of-other-machines`, `meterings-without-overlap`, `meterings-too-noisy`. ~20 ms.
 */
export const compareMeterings = (before: Metering, now: Metering): Outcome<CurveChange> => {
  if (before.machine !== now.machine)
    return refused('meterings-of-other-machines', {
      before: before.machine ?? '',
      now: now.machine ?? '',
    });
  const [earlier, later] = [meterCurve(before.readings), meterCurve(now.readings)];
  if (!earlier.ok) return earlier;
  if (!later.ok) return later;
  const settings = commonPlaces(earlier.value, later.value);
  if (settings === null) return refused('meterings-without-overlap');
  const { figures, bentPct } = measured(earlier.value, later.value, settings);
  const firing = firingMoved(earlier.value, later.value);
  const bent = figures.chanceOfShape < chanceEach && bentPct > worthPct ? 'bent' : null;
  const how = firing ?? bent ?? levelMoved(figures) ?? 'same';
  const half = (figures.highPct - figures.lowPct) / 2;
  if (how === 'same' && half > widestPct)
    return refused('meterings-too-noisy', { withinPct: Math.ceil(half) });
  return done({ how, ...figures, remarks: remarksOn(before, now) });
};

const commonPlaces = (a: MeterCurve, b: MeterCurve): readonly number[] | null => {
  const from = Math.max(a.firing.firesAtPct, b.firing.firesAtPct);
  const to = Math.min(a.between.x.at(-1) ?? NaN, b.between.x.at(-1) ?? NaN);
  if (!(to > from)) return null;
  // Rounded, the last may come to lie a hair beyond what was read.
  return Array.from({ length: places }, (_, i) =>
    Math.min(to, from + ((to - from) * i) / (places - 1)),
  );
};

type Figures = Omit<CurveChange, 'how' | 'remarks'>;

const measured = (
  earlier: MeterCurve,
  later: MeterCurve,
  settings: readonly number[],
): { readonly figures: Figures; readonly bentPct: number } => {
  const here = difference(earlier.between, later.between, settings);
  const drawn = earlier.draws.map((before, i) =>
    difference(before, later.draws[(i * stride) % later.draws.length] ?? later.between, settings),
  );
  const levels = drawn.map(({ level }) => level);
  const [lowPct, highPct] = band(levels, chanceEach);
  const sds = settings.map((_, k) => spread(drawn.map(({ off }) => off[k] ?? NaN)));
  const farthest = (off: readonly number[]): number =>
    Math.max(...off.map((value, k) => Math.abs(value) / Math.max(sds[k] ?? NaN, 1e-9)));
  const seen = farthest(here.off);
  const byNoise = drawn.map(({ off }) =>
    farthest(off.map((value, k) => value - (here.off[k] ?? NaN))),
  );
  const worst = here.apart.reduce(
    (most, value, k) => (Math.abs(value) > Math.abs(here.apart[most] ?? NaN) ? k : most),
    0,
  );
  const powerPct = settings[worst] ?? NaN;
  return {
    figures: {
      levelPct: 100 + here.level,
      lowPct: 100 + lowPct,
      highPct: 100 + highPct,
      chanceOfLevel: twoSided(levels),
      chanceOfShape: byNoise.filter((value) => value >= seen).length / byNoise.length,
      most: {
        powerPct,
        beforeMa: valueAt(earlier.between, powerPct),
        nowMa: valueAt(later.between, powerPct),
      },
    },
    bentPct: Math.max(...here.off.map((value, k) => 100 * Math.abs(value / (here.base[k] ?? NaN)))),
  };
};

/** Shares no factor with the number of draws. */
const stride = 167;

/** The change of level in per cent, what is left at each place once that is taken out (mA), and all of it as a share. */
const difference = (before: MonotoneCubic, now: MonotoneCubic, settings: readonly number[]) => {
  const base = settings.map((powerPct) => valueAt(before, powerPct));
  const there = settings.map((powerPct) => valueAt(now, powerPct));
  const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
  const ratio = sum(there) / sum(base);
  return {
    base,
    level: 100 * (ratio - 1),
    off: there.map((value, k) => value - ratio * (base[k] ?? NaN)),
    apart: there.map((value, k) => value - (base[k] ?? NaN)),
  };
};

const spread = (values: readonly number[]): number => {
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  return Math.sqrt(values.reduce((a, b) => a + (b - mean) ** 2, 0) / (values.length - 1));
};

/** Twice the smaller share of draws on either side of no change; never less than one draw tells. */
const twoSided = (levels: readonly number[]): number => {
  const above = levels.filter((level) => level > 0).length / levels.length;
  return Math.min(1, 2 * Math.max(Math.min(above, 1 - above), 0.5 / levels.length));
};

const levelMoved = ({ levelPct, lowPct, highPct }: Figures): 'lower' | 'higher' | null => {
  if (!(Math.abs(levelPct - 100) > worthPct)) return null;
  if (highPct < 100) return 'lower';
  return lowPct > 100 ? 'higher' : null;
};

/** The one bracket lies wholly beyond the other, by a point at least: a threshold flickers by less. */
const firingMoved = (
  { firing: before }: MeterCurve,
  { firing: now }: MeterCurve,
): 'fires-later' | 'fires-sooner' | null => {
  if (now.darkAtPct !== null && now.darkAtPct >= before.firesAtPct + 1) return 'fires-later';
  return before.darkAtPct !== null && now.firesAtPct <= before.darkAtPct - 1
    ? 'fires-sooner'
    : null;
};

const remarksOn = (before: Metering, now: Metering): CurveChange['remarks'] => {
  const [then, today] = [before.waterC, now.waterC];
  const [ratedThen, rated] = [before.ratedCurrentMa, now.ratedCurrentMa];
  return [
    ...(then !== undefined && today !== undefined && Math.abs(today - then) >= waterApartC
      ? [{ code: 'meterings-water-differs' as const, params: { beforeC: then, nowC: today } }]
      : []),
    ...(ratedThen !== undefined && rated !== undefined && ratedThen !== rated
      ? [
          {
            code: 'meterings-rated-otherwise' as const,
            params: { beforeMa: ratedThen, nowMa: rated },
          },
        ]
      : []),
  ];
};
