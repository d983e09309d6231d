import { lengthWords, pressureWords, speedWords, unitsShown } from './figures.ts';

const figure = String.raw`\d+(?:\.\d+)?`;

/** One figure, or several with one unit behind the last: `14 mm/s`, `10, 12 and 14 mm/s`, `600 × 400 mm`. */
const measured = new RegExp(
  String.raw`(?<![\w.])(${figure}(?:(?:, | and | to | by | or | × |–)${figure})*)[ \u202f](mm/s|mm|kPa)(?![/²\w])`,
  'g',
);

const kinds = {
  'mm/s': ['speed', speedWords],
  mm: ['length', lengthWords],
  kPa: ['pressure', pressureWords],
} as const;

const isKind = (unit: string): unit is keyof typeof kinds => Object.hasOwn(kinds, unit);

/**
 * A sentence with its figures in the units that the page shows. Sentences come with figures in mm, mm/s and kPa, from the
 * core and from the server alike: here they are put into the reader's own, once for all.
 */
export const inUnitsShown = (text: string): string =>
  text.replace(measured, (found: string, figures: string, unit: string) => {
    if (!isKind(unit)) return found;
    const [kind, words] = kinds[unit];
    const wanted = unitsShown()[kind];
    if (wanted === unit) return found;
    const converted = figures.replace(new RegExp(figure, 'g'), (one) =>
      words(Number(one)).replace(/\u202f.*$/, ''),
    );
    return `${converted}\u202f${wanted}`;
  });
