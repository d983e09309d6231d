import type { QuantityKind } from '../../../core/problems/units.ts';
import { refused, type Outcome } from '../../../core/problem.ts';
import { parseAcceleration } from '../../../core/units/acceleration.ts';
import { parseCurrent } from '../../../core/units/current.ts';
import { parseDuration } from '../../../core/units/duration.ts';
import { parseLength } from '../../../core/units/length.ts';
import { parsePower } from '../../../core/units/power.ts';
import { parsePressure } from '../../../core/units/pressure.ts';
import { parseSpeed } from '../../../core/units/speed.ts';
import { parseTemperature } from '../../../core/units/temperature.ts';
import { parseWatts } from '../../../core/units/watts.ts';
import { parseFigure, parseWhole } from '../../../core/units/parseWhole.ts';
import { mostOrderParts } from '../../../core/order/order.ts';
import { bounds } from '../../../formats/saved/limits.ts';
import {
  accelerationWords,
  currentWords,
  durationWords,
  lengthWords,
  powerWords,
  pressureWords,
  speedWords,
  temperatureWords,
  unitsShown,
  wattsWords,
} from '../../../words/texts.ts';

type Read = (text: string) => Outcome<number>;

/**
 * A reader within what is stored: what lies beyond would be turned away later, far from where it was typed. A bare figure
 * is taken in the unit that the page shows.
 */
const within =
  (
    kind: QuantityKind,
    read: Read,
    [least, most]: readonly [number, number],
    show: (value: number) => string,
  ): Read =>
  (text) => {
    const outcome = read(text);
    return outcome.ok && (outcome.value < least || outcome.value > most)
      ? refused('quantity-out-of-range', { kind, least: show(least), most: show(most) })
      : outcome;
  };

const countWords = (value: number): string => value.toLocaleString('en');

const speed: Read = (text) => parseSpeed(text, unitsShown().speed);
const length: Read = (text) => parseLength(text, unitsShown().length);
const pressure: Read = (text) => parsePressure(text, unitsShown().pressure);
const temperature: Read = (text) => parseTemperature(text, unitsShown().temperature);

export const readPower: Read = (text) => parsePower(text);
/** How long something took: not nothing. */
export const readDuration = within('duration', parseDuration, [0.1, 1e6], durationWords);
/** What a hold-up costs, which may be nothing. */
export const readHoldUp = within('duration', parseDuration, bounds.holdUpS, durationWords);
/** A power that the machine is allowed. */
export const readPowerUpTo = (most: number): Read =>
  within('power', parsePower, [0, most], powerWords);
/** A number of things. */
export const readCount = (least: number, most: number): Read =>
  within('number', parseWhole, [least, most], countWords);
export const readOrderParts = readCount(1, mostOrderParts);
export const readNotOut = within('number', parseFigure, bounds.notOutOf100, String);
/** Money, or whatever else costs are worked out from. */
export const readFigure = within('number', parseFigure, bounds.figure, countWords);
/** CIE L*. */
export const readLightness = within('number', parseFigure, bounds.lightness, countWords);
export const readTubeHours = within('number', parseFigure, [1, bounds.figure[1]], countWords);
export const readExponent = within('number', parseFigure, bounds.lifeExponent, String);
/** In per cent of something that more may be asked of than there is. */
export const readShare = within(
  'number',
  (text) => parseFigure(text.replace(/\s*(?:%|pct|percent)\s*$/i, '')),
  [0, 1000],
  (share) => `${String(share)} %`,
);
/** A length along a part or a file, or between two of them, which may be nothing. */
export const readLength = within('length', length, bounds.rampMm, lengthWords);
export const readGap = within('length', length, bounds.bedGapMm, lengthWords);
export const readDeviation = within('length', length, bounds.deviationMm, lengthWords);
/** The width of a line. */
export const readLineWidth = within('length', length, bounds.lineWidthMm, lengthWords);
/** From one line of a filling to the next. */
export const readLineSpacing = within('length', length, bounds.lineSpacingMm, lengthWords);
export const readSize = within('length', length, bounds.lengthMm, lengthWords);
export const readThickness = within('length', length, bounds.thicknessMm, lengthWords);
export const readCutSpeed = within('speed', speed, bounds.speedMmPerS, speedWords);
/** A jump at a corner, or where a power ramp starts: it may be nothing. */
export const readJump = within('speed', speed, bounds.jumpMmPerS, speedWords);
/** Nothing is cut at 0 %. */
export const readCutPower = within('power', readPower, [0.1, 100], powerWords);
export const readPressure = within('pressure', pressure, bounds.airKPa, pressureWords);
export const readTemperature = within('temperature', temperature, bounds.waterC, temperatureWords);
export const readWatts = within('strength', parseWatts, bounds.nominalW, wattsWords);
export const readCurrent = within('current', parseCurrent, bounds.currentMa, currentWords);
export const readRated = within('current', parseCurrent, bounds.ratedCurrentMa, currentWords);
export const readAcceleration = within(
  'acceleration',
  (text) => parseAcceleration(text, unitsShown().acceleration),
  bounds.accelerationMmPerS2,
  accelerationWords,
);
