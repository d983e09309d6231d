/** Millimetres in each absolute unit that SVG knows (CSS Values 3, 5.2: 96 px are an inch). */
const unitsMm: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  q: 0.25,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  px: 25.4 / 96,
  '': 25.4 / 96,
};

/** Millimetres in a px, and so in a figure without a unit where no viewBox says otherwise. */
export const pxMm = 25.4 / 96;

/** What a browser takes for the size of letters where nothing is said, px; `ex` is half of it. */
export const emPx = 16;

/** Of a page nobody says the letters of: those of a browser. */
const emUnitsMm: Readonly<Record<string, number>> = {
  em: (emPx * 25.4) / 96,
  rem: (emPx * 25.4) / 96,
  ex: (emPx * 25.4) / 192,
};

interface Measured {
  readonly value: number;
  readonly unit: string;
}

/** No length is longer. */
const mostSigns = 64;

const measured = (text: string | undefined): Measured | undefined => {
  if (text === undefined || text.length > mostSigns) return undefined;
  const [, number, unit = ''] =
    /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*([a-z]*|%)\s*$/i.exec(text) ?? [];
  const value = Number(number);
  return number === undefined || !Number.isFinite(value)
    ? undefined
    : { value, unit: unit.toLowerCase() };
};

/** A length such as `120mm` or `4in`, in mm; undefined for a share of something (`100%`), for what is below 0 and for what is no length. */
export const svgLengthMm = (text: string | undefined): number | undefined => {
  const found = measured(text);
  const perUnit = unitsMm[found?.unit ?? 'none'] ?? emUnitsMm[found?.unit ?? 'none'];
  return found === undefined || perUnit === undefined || found.value < 0
    ? undefined
    : found.value * perUnit;
};

/**
 * A length within the drawing, in user units; `whole` is what a percentage is of, `em` the size of letters there. Undefined
 * for what is no length.
 */
export const svgLength = (
  text: string | undefined,
  whole: number,
  em: number = emPx,
): number | undefined => {
  const found = measured(text);
  if (found === undefined) return undefined;
  const { value, unit } = found;
  if (unit === '') return value;
  if (unit === '%') return (value / 100) * whole;
  if (unit === 'em') return value * em;
  if (unit === 'rem') return value * emPx;
  if (unit === 'ex') return (value * em) / 2;
  const perUnit = unitsMm[unit];
  return perUnit === undefined ? undefined : (value * perUnit) / pxMm;
};

/** Whether a length says by itself how long it is: px say it only by custom. */
export const isAbsolute = (text: string | undefined): boolean =>
  /(mm|cm|in|pt|pc|q)\s*$/i.test((text ?? '').slice(0, mostSigns));
