import type { Card } from '../../src/core/card/card.ts';
import { cardDrawing } from '../../src/core/card/cardDrawing.ts';
import type { PartOf } from '../../src/core/card/cardParts.ts';
import type { Setting } from '../../src/core/machine/setting.ts';
import type { Polyline } from '../../src/core/path/polyline.ts';

/** One line of a card as another program would hold it: what it is called, its colour, and what it belongs to. */
export interface DrawnLine {
  readonly points: Polyline;
  readonly layer: string;
  readonly colour: string;
  readonly setting: Setting;
  readonly kind: 'marks' | 'rung' | 'window' | 'outline';
  readonly of: PartOf;
  /** How a program lights the beam; M3 where nothing is said. */
  readonly beam?: 'M03' | 'M04';
}

/** A card as a flat list of lines in the order of cutting. Cards without a setting for a layer have none of its lines. */
export const drawnLines = (card: Card): readonly DrawnLine[] =>
  cardDrawing(card).layers.flatMap(({ name, colour, setting, kind, parts }) =>
    setting === undefined
      ? []
      : parts.flatMap(({ of, polylines }) =>
          polylines.map((points): DrawnLine => ({
            points,
            layer: name,
            colour,
            setting,
            kind,
            of,
          })),
        ),
  );

export const isCell = ({ of }: DrawnLine): boolean => of.what === 'cell';

/** Runs of lines that share a layer, in order: a layer that is left and come back to is written twice. */
export const runs = (lines: readonly DrawnLine[]): readonly (readonly DrawnLine[])[] => {
  const found: DrawnLine[][] = [];
  for (const line of lines) {
    const last = found.at(-1);
    if (last?.[0]?.layer === line.layer && last[0].colour === line.colour) last.push(line);
    else found.push([line]);
  }
  return found;
};
