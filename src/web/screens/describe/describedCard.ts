import type { Card, Cell, Rung } from '../../../core/card/card.ts';
import { rungLetter } from '../../../core/card/rungLetter.ts';
import { shapeBoxMm, shapeLengthMm, type TestShape } from '../../../core/card/testShapes.ts';
import { settingKey, type Setting } from '../../../core/machine/setting.ts';
import { mostOnCard } from '../../../formats/saved/limits.ts';

/** A card cut elsewhere, as a person describes it: settings row by row, gaps where a cell is missing. */
export interface CardDescription {
  readonly code: string;
  /** Cells as they lie on the card, top row first; null where there is none. */
  readonly rows: readonly (readonly (Setting | null)[])[];
  readonly shape: TestShape;
  readonly sizeMm: number;
  /** Where the shape is another than those drawn: its length of cut. */
  readonly shapeLengthMm?: number;
  readonly batch?: string;
  readonly sheet?: string;
  readonly thicknessMm?: number;
}

/** Room for two lines of words below a shape, and between cells. */
const wordsMm = 7;
const gapMm = 4;
const marginMm = 6;
const leastPitchMm = 17;

/**
 * Lays a described card out as its owner sees it: in its rows, each cell with its own words. Cells with equal settings
 * share a rung. Undefined where there is no cell.
 */
export const describedCard = (description: CardDescription): Card | undefined => {
  const { rows, shape, sizeMm } = description;
  const spots = rows.flatMap((row, r) =>
    row.flatMap((setting, c) => (setting === null ? [] : [{ setting, r, c }])),
  );
  if (spots.length === 0) return undefined;
  const rungs = rungsOf(spots.map(({ setting }) => setting));
  const box = shapeBoxMm(shape, sizeMm);
  const pitchX = Math.max(box.widthMm + gapMm, leastPitchMm);
  const pitchY = box.heightMm + wordsMm + gapMm;
  const columns = Math.max(...rows.map((row) => row.length));
  const widthMm = Math.ceil(columns * pitchX + 2 * marginMm);
  const heightMm = Math.ceil(rows.length * pitchY + 2 * marginMm);
  const counts = new Map<string, number>();
  const cells = spots.map(({ setting, r, c }): Cell => {
    const rung = rungs.get(settingKey(setting))?.letter ?? 'A';
    const number = (counts.get(rung) ?? 0) + 1;
    counts.set(rung, number);
    return {
      id: `${rung}${String(number)}`,
      rung,
      xMm: marginMm + (c + 0.5) * pitchX,
      yMm: heightMm - marginMm - r * pitchY - box.heightMm / 2,
    };
  });
  return {
    version: 1,
    code: description.code,
    origin: 'described',
    rungs: [...rungs.values()],
    cells,
    shape,
    sizeMm,
    shapeLengthMm: description.shapeLengthMm ?? round(shapeLengthMm(shape, sizeMm)),
    widthMm,
    heightMm,
    outline: 'none',
    doubledNotch: 'lower-left',
    places: {},
    ...(description.batch === undefined ? {} : { batch: description.batch }),
    ...(description.sheet === undefined ? {} : { sheet: description.sheet }),
    ...(description.thicknessMm === undefined ? {} : { thicknessMm: description.thicknessMm }),
  };
};

/** Whether it can be kept as one card. */
export const fitsOneCard = ({ rungs, cells }: Card): boolean =>
  rungs.length <= mostOnCard.rungs && cells.length <= mostOnCard.cells;

const round = (mm: number): number => Number(mm.toFixed(3));

const rungsOf = (settings: readonly Setting[]): ReadonlyMap<string, Rung> => {
  const rungs = new Map<string, Rung>();
  for (const setting of settings) {
    const key = settingKey(setting);
    if (!rungs.has(key)) rungs.set(key, { letter: rungLetter(rungs.size), setting });
  }
  return rungs;
};

/** Every speed at every power, as many cells each as there are: a row for each power and repeat. */
export const crossed = (
  powersPct: readonly number[],
  speedsMmPerS: readonly number[],
  each: number,
): readonly (readonly Setting[])[] =>
  powersPct.flatMap((powerPct) =>
    Array.from({ length: each }, () =>
      speedsMmPerS.map((speedMmPerS) => ({ powerPct, speedMmPerS, passes: 1 })),
    ),
  );

/** Settings said one by one, in rows of at most six. */
export const oneByOne = (
  settings: readonly Setting[],
  each: number,
): readonly (readonly Setting[])[] => {
  const all = settings.flatMap((setting) => Array.from({ length: each }, () => setting));
  return Array.from({ length: Math.ceil(all.length / 6) }, (_, r) => all.slice(r * 6, r * 6 + 6));
};
