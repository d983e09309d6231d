import type { Card } from '../../core/card/card.ts';
import type { PhotoRead, PhotoStep } from '../../core/photo/readPhoto.ts';
import type { Problem } from '../../core/problem.ts';

/** What the page asks of the thread that reads photographs: one card in the thread's life. */
export interface PhotoQuestion {
  readonly card: Card;
  readonly front: File;
  readonly back?: File;
}

/** What comes back: how far it is, as often as that changes, and then one of the others. `broke`: a bug, told so that the page can say it. */
export type PhotoReply =
  | { readonly kind: 'at'; readonly step: PhotoStep | 'opening' }
  | { readonly kind: 'refused'; readonly problem: Problem }
  | { readonly kind: 'read'; readonly read: PhotoRead; readonly flat: FlatSides }
  | { readonly kind: 'broke'; readonly message: string };

/** The card in its own frame, from each side that could be laid out. */
export interface FlatSides {
  readonly front?: ImageData;
  readonly back?: ImageData;
}
