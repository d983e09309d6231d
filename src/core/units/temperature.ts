import { done, refused, type Outcome } from '../problem.ts';
import { parseNumber } from './parseNumber.ts';

export type TemperatureUnit = '°C' | '°F';

const spellings: Readonly<Record<string, TemperatureUnit>> = {
  c: '°C',
  '°c': '°C',
  celsius: '°C',
  f: '°F',
  '°f': '°F',
  fahrenheit: '°F',
};

/** A temperature above freezing as people write it ("19 °C", "66 F", "19,5"), in °C. */
export const parseTemperature = (
  text: string,
  defaultUnit: TemperatureUnit = '°C',
): Outcome<number> => {
  const figure = parseNumber(text, 'temperature');
  if (!figure.ok) return figure;
  const { value, rest } = figure.value;
  const written = rest.toLowerCase().replace(/[\s.]|degrees?|deg/g, '');
  const unit =
    written === ''
      ? defaultUnit
      : Object.hasOwn(spellings, written)
        ? spellings[written]
        : undefined;
  if (unit === undefined)
    return refused('quantity-unit-unknown', {
      text,
      kind: 'temperature',
      unit: rest.trim(),
      known: '°C, °F',
    });
  return done(Number((unit === '°C' ? value : ((value - 32) * 5) / 9).toFixed(6)));
};

/** A temperature in °C, in the unit preferred, to a tenth of a degree. */
export const showTemperature = (temperatureC: number, unit: TemperatureUnit = '°C'): string => {
  const shown = unit === '°C' ? temperatureC : (temperatureC * 9) / 5 + 32;
  return `${String(Number(shown.toFixed(1)))}\u202f${unit}`;
};
