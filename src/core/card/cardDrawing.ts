import type { Setting } from '../machine/setting.ts';
import { oncePerObject } from '../oncePerObject.ts';
import type { Polyline } from '../path/polyline.ts';
import type { Card } from './card.ts';
import { cardParts, type DrawnAs, type DrawnPart } from './cardParts.ts';
import { marksColour, rungColours, trustedColour } from './rungColours.ts';
import { layerName } from './settingWords.ts';

/** All that is cut at one setting. */
export interface DrawnLayer {
  readonly kind: 'marks' | 'rung' | 'window' | 'outline';
  /** The rung's letter. */
  readonly rung?: string;
  /** What is to be typed; absent where nobody said. */
  readonly setting?: Setting;
  /** Legal in every drawing format; spells the setting. */
  readonly name: string;
  /** For the control program to tell layers apart: `#rrggbb`. Letters stand beside wherever a person sees it. */
  readonly colour: string;
  readonly parts: readonly DrawnPart[];
  /** The lines of all parts, in order. */
  readonly polylines: readonly Polyline[];
}

/** A card as lines in mm from its lower left corner, y upwards, in the order of cutting. */
export interface CardDrawing {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly layers: readonly DrawnLayer[];
}

const compile = (card: Card, drawnAs: DrawnAs): CardDrawing => {
  const colours = rungColours(card.rungs.length);
  const parts = cardParts(card, drawnAs);
  const layers = [
    layer('marks', parts.marks, marksColour, 'marks', card.scoring),
    ...card.rungs.map(({ letter, setting }, i) => ({
      ...layer('rung', parts.rungs[i] ?? [], colours[i] ?? marksColour, letter, setting),
      rung: letter,
    })),
    layer('window', parts.window, trustedColour, 'window', card.trusted),
    layer('outline', parts.outline, trustedColour, 'outline', card.trusted),
  ];
  return {
    widthMm: card.widthMm,
    heightMm: card.heightMm,
    layers: layers.filter((drawn) => drawn.polylines.length > 0),
  };
};

const asNow = oncePerObject((card: Card) => compile(card, 'now'));

/**
 * The one way from a card to lines: every picture, file and list is made of this. Words and marks first, outline last. Made
 * once a card, however many files are written of it.
 */
export const cardDrawing = (card: Card, drawnAs: DrawnAs = 'now'): CardDrawing =>
  drawnAs === 'now' ? asNow(card) : compile(card, drawnAs);

const layer = (
  kind: DrawnLayer['kind'],
  parts: readonly DrawnPart[],
  colour: string,
  label: string,
  setting: Setting | undefined,
): DrawnLayer => ({
  kind,
  name: setting === undefined ? label : layerName(label, setting),
  colour,
  ...(setting === undefined ? {} : { setting }),
  parts,
  polylines: parts.flatMap((part) => part.polylines),
});
