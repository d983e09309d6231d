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
import { bounds } from '../../../formats/saved/bounds.ts';
import {
  lengthWords,
  powerWords,
  speedWords,
  unitsShown,
  wattsWords,
} from '../../../words/en/figures.ts';

/** Readers of what a person types. A bare figure is taken in the unit that the page shows. */
export const readSpeed = (text: string) => parseSpeed(text, unitsShown().speed);
export const readLength = (text: string) => parseLength(text, unitsShown().length);
export const readPressure = (text: string) => parsePressure(text, unitsShown().pressure);
export const readPower = (text: string) => parsePower(text);
export const readCurrent = (text: string) => parseCurrent(text);
export const readTemperature = (text: string) => parseTemperature(text, unitsShown().temperature);
export const readAcceleration = (text: string) => parseAcceleration(text);
export const readDuration = (text: string) => parseDuration(text);

type Read = (text: string) => Outcome<number>;

/** The same within what is worth storing: what lies beyond would be turned away later, far from where it was typed. */
const within =
  (
    kind: string,
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
export const readWatts = within('power', parseWatts, bounds.nominalW, wattsWords);
export const readSize = within('length', readLength, bounds.lengthMm, lengthWords);
export const readThickness = within('length', readLength, bounds.thicknessMm, lengthWords);
export const readCutSpeed = within('speed', readSpeed, bounds.speedMmPerS, speedWords);
/** Nothing is cut at 0 %. */
export const readCutPower = within('power', readPower, [0.1, 100], powerWords);
