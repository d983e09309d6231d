import type { Card } from '../../core/card/card.ts';
import type { Quad } from '../../core/photo/quads.ts';
import type { PhotoRead, PhotoStep } from '../../core/photo/readPhoto.ts';

/** What the page asks of the thread that reads photographs: one card in the thread's life. */
export interface PhotoQuestion {
  readonly card: Card;
  readonly front: File;
  readonly back?: File;
  /** Of the card on the front, pointed at by a person: shares of width and height. */
  readonly corners?: Quad;
}

/** A strip of shades, photographed beside paper: see `tonesOnPhoto`. */
export interface TonesQuestion {
  readonly steps: number;
  readonly photo: File;
  readonly corners: Quad;
}

/** How far the reading is. */
export type PhotoStage = PhotoStep | 'opening';

/** What was read, and the card in its own frame, from each side that could be laid out. */
export interface PhotoAnswer {
  readonly read: PhotoRead;
  readonly flat: FlatSides;
}

export interface FlatSides {
  readonly front?: ImageData;
  readonly back?: ImageData;
}
