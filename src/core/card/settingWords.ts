import type { Air } from '../machine/air.ts';
import { cornerPowerPct, type Setting } from '../machine/setting.ts';

/** A figure as it is typed: no more digits than it has, `14`, `14.5`, `4.25`. */
export const typed = (value: number): string => String(Number(value.toFixed(3)));

/** How corner power is said where it is not the power itself. */
const cornerWords = {
  /** Beside a cell, where a word of more letters would not fit; the card says once what it is short for. */
  drawn: (figure: string) => `c${figure}%`,
  said: (figure: string) => `corner ${figure}%`,
  /** As cards and files said it that were made before. */
  before: (figure: string) => `min ${figure}%`,
};

/**
 * What stands beside a cell, line by line: the speed, then the power with whatever else is not usual. Made from the
 * setting and from nothing else, so that words and setting cannot differ.
 */
export const cellWordLines = (
  setting: Setting,
  corner: keyof typeof cornerWords = 'drawn',
): readonly [speed: string, power: string] => [
  `${typed(setting.speedMmPerS)} mm/s`,
  [
    `${typed(setting.powerPct)}%`,
    ...(hasCornerPower(setting) ? [cornerWords[corner](typed(cornerPowerPct(setting)))] : []),
    ...(setting.passes === 1 ? [] : [`x${typed(setting.passes)}`]),
    ...(setting.air === 'off' ? ['no air'] : []),
  ].join(' '),
];

/** Whether a setting has a corner power of its own. */
export const hasCornerPower = (setting: Setting): boolean =>
  cornerPowerPct(setting) !== setting.powerPct;

/** The same in one line, corner power in full: `14 mm/s 30% corner 20%`. */
export const cellWords = (setting: Setting): string => cellWordLines(setting, 'said').join(' ');

/** Whether these are the words of a setting, as they are written now or were before. */
export const areWordsOf = (words: string, setting: Setting): boolean =>
  words === cellWords(setting) || words === cellWordLines(setting, 'before').join(' ');

/**
 * The name of a layer in a drawing, with its whole setting in signs that every drawing format allows:
 * `A 14.0mmps 30pct corner30 air-on`. `parseLayerName` reads it back, and the older `min30` as well.
 */
export const layerName = (label: string, setting: Setting): string =>
  [
    label,
    `${withDecimal(setting.speedMmPerS)}mmps`,
    `${typed(setting.powerPct)}pct`,
    `corner${typed(cornerPowerPct(setting))}`,
    ...(setting.passes === 1 ? [] : [`x${typed(setting.passes)}`]),
    ...airWord(setting.air),
  ].join(' ');

const withDecimal = (value: number): string =>
  Number.isInteger(value) ? value.toFixed(1) : typed(value);

const airWord = (air: Air | undefined): readonly string[] => {
  if (air === undefined) return [];
  if (air === 'off') return ['air-off'];
  return air === 'pump' ? ['air-on'] : [`air-${typed(air.kPa)}kPa`];
};

const figurePattern = String.raw`\d+(?:[. ]\d+)?`;
const layerPattern = new RegExp(
  `^(?<label>\\S+) (?<speed>${figurePattern})mmps (?<power>${figurePattern})pct (?:corner|min)(?<min>${figurePattern})(?: x(?<passes>\\d+))?(?: air-(?<air>off|on|${figurePattern}kPa))?$`,
  'i',
);

/**
 * The label and setting that a layer's name spells; undefined where it spells none. Underscores stand for spaces and for
 * points, and capitals count as small letters: old drawing formats know no others.
 */
export const parseLayerName = (
  name: string,
): { readonly label: string; readonly setting: Setting } | undefined => {
  const found = layerPattern.exec(name.trim().replaceAll('_', ' '))?.groups;
  if (found === undefined) return undefined;
  const powerPct = figure(found['power']);
  const minPowerPct = figure(found['min']);
  const air = airOf(found['air']?.toLowerCase());
  const label = found['label'] ?? '';
  return {
    label: label.length > 2 ? label.toLowerCase() : label.toUpperCase(),
    setting: {
      powerPct,
      ...(minPowerPct === powerPct ? {} : { minPowerPct }),
      speedMmPerS: figure(found['speed']),
      passes: Number(found['passes'] ?? '1'),
      ...(air === undefined ? {} : { air }),
    },
  };
};

const figure = (said = ''): number => Number(said.replace(' ', '.'));

const airOf = (word: string | undefined): Air | undefined => {
  if (word === undefined) return undefined;
  if (word === 'off') return 'off';
  return word === 'on' ? 'pump' : { kPa: figure(word.replace('kpa', '')) };
};
