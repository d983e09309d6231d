import { refused, type Outcome } from '../../../core/problem.ts';
import { parseAcceleration } from '../../../core/units/acceleration.ts';
import { parseCurrent } from '../../../core/units/current.ts';
import { parseDuration } from '../../../core/units/duration.ts';
import { parseLength } from '../../../core/units/length.ts';
import { parsePower } from '../../../core/units/power.ts';
import { parsePressure } from '../../../core/units/pressure.ts';
import { parseSpeed } from '../../../core/units/speed.ts';
import { parseTemperature } from '../../../core/units/temperature.ts';
import { unitsShown } from '../../../words/en/figures.ts';

/** Readers of what a person types. A bare figure is taken in the unit that the page shows. */
export const readSpeed = (text: string) => parseSpeed(text, unitsShown().speed);
export const readLength = (text: string) => parseLength(text, unitsShown().length);
export const readPressure = (text: string) => parsePressure(text, unitsShown().pressure);
export const readPower = (text: string) => parsePower(text);
export const readCurrent = (text: string) => parseCurrent(text);
export const readTemperature = (text: string) => parseTemperature(text, unitsShown().temperature);
export const readAcceleration = (text: string) => parseAcceleration(text);
export const readDuration = (text: string) => parseDuration(text);

/** The same where nothing is no answer: a size, or what a cut is run at. */
const aboveNothing =
  (kind: string, read: (text: string) => Outcome<number>) =>
  (text: string): Outcome<number> => {
    const outcome = read(text);
    return outcome.ok && outcome.value <= 0 ? refused('quantity-zero', { text, kind }) : outcome;
  };
export const readSize = aboveNothing('length', readLength);
export const readCutSpeed = aboveNothing('speed', readSpeed);
export const readCutPower = aboveNothing('power', readPower);
