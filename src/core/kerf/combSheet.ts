import type { Place } from '../card/card.ts';
import { done, refused, type Outcome } from '../problem.ts';
import type { CombDirection } from './kerfComb.ts';

/** In how many places of the piece combs are cut: one, two corners across from one another, all four. */
export const combPlaceCounts = [1, 2, 4] as const;
export type CombPlaceCount = (typeof combPlaceCounts)[number];

export interface CombWish {
  /** The piece that it is cut from, mm. */
  readonly pieceMm: readonly [widthMm: number, heightMm: number];
  readonly places: CombPlaceCount;
  readonly directions: readonly CombDirection[];
  /** Strips of a comb; absent: {@link usualStrips}. */
  readonly strips?: number;
}

/** One comb with its bar, where they lie on the piece. */
export interface PlacedComb {
  /** Scored into every strip and the bar: `1X`, its place and the axis along which its strips are narrow. */
  readonly label: string;
  readonly direction: CombDirection;
  readonly strips: number;
  /** Width of comb and of bar, as drawn, mm. */
  readonly nominalMm: number;
  readonly block: Place;
  readonly bar: Place;
}

export interface CombSheet {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly combs: readonly PlacedComb[];
}

/** So many that the caliper's error in one kerf is a tenth of its own. */
export const usualStrips = 10;

/** Narrower strips bend and turn, mm. Common practice, no source. */
const leastStripMm = 6;
/** Strips wider than thick do not roll. */
const stripPerThickness = 1.2;
/** A usual caliper opens to 150 mm. */
const widestMm = 140;
const stripLengthMm = 25;
const barMm = 10;
const leastSpacingMm = 4;
const directionSigns: Readonly<Record<CombDirection, string>> = { across: 'X', up: 'Y' };

/**
 * Combs with their bars in corners of a piece. Strips are longer than the gaps of the bed and wider than the sheet is thick;
 * between parts lies a sheet's thickness at least. Refuses: `comb-piece-too-small`, `comb-too-wide`.
 */
export const combSheet = (
  { pieceMm: [widthMm, heightMm], places, directions, strips = usualStrips }: CombWish,
  { thicknessMm, gapMm }: { readonly thicknessMm: number; readonly gapMm: number },
): Outcome<CombSheet> => {
  const stripMm = Math.ceil(Math.max(leastStripMm, stripPerThickness * thicknessMm));
  const nominalMm = strips * stripMm;
  if (nominalMm > widestMm)
    return refused('comb-too-wide', { nominalMm, mostMm: widestMm, strips, stripMm });
  const lengthMm = Math.ceil(Math.max(stripLengthMm, 1.25 * gapMm));
  const spacingMm = Math.ceil(Math.max(leastSpacingMm, thicknessMm));
  const deepMm = lengthMm + spacingMm + barMm;
  const isBoth = directions.length > 1;
  const footprint = {
    widthMm: isBoth ? nominalMm + spacingMm + deepMm : widthOf(directions[0], nominalMm, deepMm),
    heightMm: isBoth
      ? Math.max(nominalMm, deepMm)
      : widthOf(directions[0] === 'up' ? 'across' : 'up', nominalMm, deepMm),
  };
  const [columns, rows] = places === 1 ? [1, 1] : [2, 2];
  const neededWidthMm = columns * footprint.widthMm + (columns + 1) * spacingMm;
  const neededHeightMm = rows * footprint.heightMm + (rows + 1) * spacingMm;
  if (widthMm < neededWidthMm || heightMm < neededHeightMm)
    return refused('comb-piece-too-small', { widthMm, heightMm, neededWidthMm, neededHeightMm });
  const right = widthMm - spacingMm - footprint.widthMm;
  const top = heightMm - spacingMm - footprint.heightMm;
  const corners = [
    [spacingMm, spacingMm],
    [right, top],
    [right, spacingMm],
    [spacingMm, top],
  ] as const;
  const combs = corners.slice(0, places).flatMap(([left, bottom], i) =>
    directions.map((direction): PlacedComb => {
      const xMm = left + (isBoth && direction === 'up' ? nominalMm + spacingMm : 0);
      const wide = { widthMm: nominalMm, heightMm: lengthMm };
      const high = { widthMm: lengthMm, heightMm: nominalMm };
      return {
        label: `${String(i + 1)}${directionSigns[direction]}`,
        direction,
        strips,
        nominalMm,
        block: { xMm, yMm: bottom, ...(direction === 'across' ? wide : high) },
        bar:
          direction === 'across'
            ? { xMm, yMm: bottom + lengthMm + spacingMm, widthMm: nominalMm, heightMm: barMm }
            : { xMm: xMm + lengthMm + spacingMm, yMm: bottom, widthMm: barMm, heightMm: nominalMm },
      };
    }),
  );
  return done({ widthMm, heightMm, combs });
};

/** How far a comb of one direction reaches along X. */
const widthOf = (
  direction: CombDirection | undefined,
  nominalMm: number,
  deepMm: number,
): number => (direction === 'up' ? deepMm : nominalMm);
