import type { Air } from '../../../core/machine/air.ts';
import { showAcceleration } from '../../../core/units/acceleration.ts';
import { showWatts } from '../../../core/units/watts.ts';
import { showCurrent } from '../../../core/units/current.ts';
import { showLength } from '../../../core/units/length.ts';
import { showPower } from '../../../core/units/power.ts';
import { showPressure } from '../../../core/units/pressure.ts';
import { showSpeed } from '../../../core/units/speed.ts';
import { showTemperature } from '../../../core/units/temperature.ts';
import { metricUnits, type UnitPreference } from '../../../core/units/unitPreference.ts';

/**
 * Figures as they stand in sentences, each with its unit. A narrow no-break space keeps the two together at the end of a
 * line; the minus is the true one.
 */
const gap = '\u202f';
const trimmed = (value: number, decimals: number): string =>
  String(Number(value.toFixed(decimals))).replace('-', '\u2212');

/**
 * The units in which the page shows figures: a choice of the person at this screen, made once before anything is drawn.
 * What is cut into a card is always in mm and mm/s.
 */
let shown: UnitPreference = metricUnits;
export const unitsShown = (): UnitPreference => shown;
export const showUnits = (preference: UnitPreference): void => {
  shown = preference;
};

/** Makes something in other units: at once, since all that is made meanwhile would have them too. */
export const inUnits = <Made>(preference: UnitPreference, make: () => Made): Made => {
  const before = shown;
  shown = preference;
  try {
    return make();
  } finally {
    shown = before;
  }
};

export const speedWords = (speedMmPerS: number): string => showSpeed(speedMmPerS, shown.speed);

/** The same without its unit, for where that stands once for many. */
export const speedFigure = (speedMmPerS: number): string =>
  speedWords(speedMmPerS).replace(/\u202f.*$/, '');

export const powerWords = (powerPct: number): string => showPower(powerPct);

export const lengthWords = (lengthMm: number): string =>
  shown.length === 'mm' && lengthMm >= 2000
    ? showLength(lengthMm, 'm')
    : showLength(lengthMm, shown.length);

/** To a thousandth of a mm, where parts are to fit. */
export const fineLengthWords = (lengthMm: number): string =>
  shown.length === 'mm'
    ? `${lengthMm.toFixed(3)}${gap}mm`
    : `${(lengthMm / 25.4).toFixed(4)}${gap}in`;

export const wattsWords = (watts: number): string => showWatts(watts);

export const currentWords = (currentMa: number): string => showCurrent(currentMa);

export const accelerationWords = (mmPerS2: number): string =>
  showAcceleration(mmPerS2, shown.acceleration);

export const pressureWords = (kPa: number): string => showPressure(kPa, shown.pressure);

export const temperatureWords = (temperatureC: number): string =>
  showTemperature(temperatureC, shown.temperature);

/** `3.5 s`, `4 min 10 s`, `1 h 5 min`. */
export const durationWords = (exactSeconds: number): string => {
  if (exactSeconds < 9.95) return `${trimmed(exactSeconds, 1)}${gap}s`;
  // Rounded before it is parted, so that 119.7 s is not 1 min 60 s.
  const seconds = Math.round(exactSeconds);
  if (seconds < 60) return `${String(seconds)}${gap}s`;
  const minutes = Math.floor(seconds / 60);
  if (minutes < 60) {
    const rest = seconds % 60;
    return `${String(minutes)}${gap}min${rest === 0 ? '' : ` ${String(rest)}${gap}s`}`;
  }
  return `${String(Math.floor(minutes / 60))}${gap}h ${String(minutes % 60)}${gap}min`;
};

/**
 * How many in 100. Near the top one digit is kept for each nine, so that 99.65 is not shown as 100; and never 100 or 0,
 * which nobody can promise.
 */
export const inHundred = (outOf100: number): string => {
  if (outOf100 > 99.95) return 'more than 99.9';
  if (outOf100 >= 99) return trimmed(outOf100, outOf100 >= 99.5 ? 2 : 1);
  if (outOf100 < 1) return 'fewer than 1';
  return trimmed(outOf100, 0);
};

/** How many in 100 on average: a mean, not a promise, so a tenth at most. */
export const onAverageInHundred = (outOf100: number): string => {
  if (outOf100 >= 99.95) return 'more than 99.9';
  if (outOf100 < 1) return 'fewer than 1';
  return trimmed(outOf100, outOf100 >= 98 ? 1 : 0);
};

/** How sure, in per cent; never 100. */
export const sureWords = (surePct: number): string => {
  if (surePct > 99.5) return `more than 99${gap}%`;
  if (surePct < 1) return `less than 1${gap}%`;
  return `${trimmed(surePct, 0)}${gap}%`;
};

/** `1 cell`, `3 cells`. */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${String(count)} ${count === 1 ? one : many}`;

/** What stands behind a setting that is gone over several times: `, 2 passes`; nothing behind one of one pass. */
export const passesWords = (passes = 1): string =>
  passes === 1 ? '' : `, ${counted(passes, 'pass', 'passes')}`;

/** What air a setting is for, where somebody said: `, air at 100 kPa`. It belongs to the setting wherever that stands. */
export const airWords = (air: Air | undefined): string => {
  if (air === undefined) return '';
  if (air === 'off') return ', air off';
  return air === 'pump' ? ', air by pump' : `, air at ${pressureWords(air.kPa)}`;
};

/** A setting as far as it is said. */
export interface Spoken {
  readonly speedMmPerS: number;
  readonly powerPct: number;
  readonly minPowerPct?: number | undefined;
  readonly passes?: number | undefined;
  readonly air?: Air | undefined;
}

/** All of a setting in one phrase: `14 mm/s, 34 %, 2 passes, air off`. */
export const settingWords = ({
  speedMmPerS,
  powerPct,
  minPowerPct = powerPct,
  passes,
  air,
}: Spoken): string =>
  [
    `${speedWords(speedMmPerS)}, ${powerWords(powerPct)}`,
    minPowerPct === powerPct ? '' : `, corner power ${powerWords(minPowerPct)}`,
    passesWords(passes),
    airWords(air),
  ].join('');

/** `A, B and C`. */
export const listed = (items: readonly string[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`;
