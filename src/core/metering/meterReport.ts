import { done, type Outcome, type ProblemOf } from '../problem.ts';
import { currentAt, meterCurve, settingAt, type Banded, type MeterCurve } from './meterCurve.ts';
import type { MeterCode } from '../problems/meter.ts';
import type { UnkeptMetering } from './metering.ts';
import { meterRemarks } from './meterRemarks.ts';

/** One line of the table: a setting, and what it draws. */
export interface MeterLine {
  readonly powerPct: number;
  readonly currentMa: number;
  readonly lowMa: number;
  readonly highMa: number;
  /** Per cent of rated current; absent without a rating. */
  readonly ratedPct?: number;
}

/** Where rated current is reached, and the setting to stay at or below. */
export type RatedSetting =
  | {
      readonly reached: true;
      readonly at: Banded;
      /** Below the whole band, on a whole per cent: there the tube is within its rating, with a margin for what is not known. */
      readonly keepToPct: number;
    }
  | {
      readonly reached: false;
      /** The highest setting read, and what it drew. */
      readonly mostPct: number;
      readonly mostMa: number;
      readonly keepToPct: number;
    };

/** All that one metering says. */
export interface MeterReport {
  readonly curve: MeterCurve;
  /** At every setting read, and at every fifth per cent between. */
  readonly lines: readonly MeterLine[];
  /** Absent without a rated current. */
  readonly rated?: RatedSetting;
  readonly remarks: readonly ProblemOf<MeterCode>[];
}

/** What a metering says, or why its readings make no curve (the refusals of {@link meterCurve}). ~10 ms. */
export const meterReport = (metering: UnkeptMetering): Outcome<MeterReport> => {
  const made = meterCurve(metering.readings);
  if (!made.ok) return made;
  const curve = made.value;
  const { ratedCurrentMa } = metering;
  return done({
    curve,
    lines: linesOf(curve, ratedCurrentMa),
    ...(ratedCurrentMa === undefined ? {} : { rated: ratedSetting(curve, ratedCurrentMa) }),
    remarks: meterRemarks(metering),
  });
};

const linesOf = (curve: MeterCurve, ratedCurrentMa: number | undefined): readonly MeterLine[] => {
  const settings = new Set([...curve.between.x, ...Array.from({ length: 21 }, (_, i) => 5 * i)]);
  return [...settings]
    .filter((powerPct) => powerPct >= curve.firing.firesAtPct)
    .sort((a, b) => a - b)
    .flatMap((powerPct): readonly MeterLine[] => {
      const drawn = currentAt(curve, powerPct);
      if (!drawn.ok) return [];
      const { value, low, high } = drawn.value;
      return [
        {
          powerPct,
          currentMa: value,
          lowMa: low,
          highMa: high ?? value,
          ...(ratedCurrentMa === undefined ? {} : { ratedPct: (100 * value) / ratedCurrentMa }),
        },
      ];
    });
};

const ratedSetting = (curve: MeterCurve, ratedMa: number): RatedSetting => {
  const at = settingAt(curve, ratedMa);
  if (at.ok) return { reached: true, at: at.value, keepToPct: Math.floor(at.value.low + 1e-9) };
  const [mostPct = NaN, mostMa = NaN] = [curve.between.x.at(-1), curve.between.y.at(-1)];
  if (mostMa > ratedMa) return { reached: false, mostPct, mostMa, keepToPct: 0 };
  // Not reached, but the last reading may have come so close that noise decides: keep below where it might have been.
  const nearly = settingAt(curve, mostMa);
  const sure = currentAt(curve, mostPct);
  const mayReach = sure.ok && (sure.value.high ?? Infinity) >= ratedMa;
  const keepToPct =
    mayReach && nearly.ok ? Math.floor(nearly.value.low + 1e-9) : Math.floor(mostPct);
  return { reached: false, mostPct, mostMa, keepToPct };
};
