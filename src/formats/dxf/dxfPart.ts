import type { EllipseArc } from '../../core/path/ellipseArc.ts';
import type { Matrix } from '../../core/path/matrix.ts';
import type { SplinePiece } from '../../core/path/nurbs.ts';
import type { Point } from '../../core/path/point.ts';

/** One step of a stroke, from where the one before ended. */
export type Step =
  | { readonly to: Point; readonly arc?: EllipseArc }
  | { readonly controls: readonly Point[] }
  | { readonly piece: SplinePiece };

/** A line that is drawn in one go, in drawing units. */
export interface Stroke {
  readonly from: Point;
  readonly steps: readonly Step[];
}

/** What every entity says of itself. */
export interface DxfCommon {
  readonly layer: string;
  /** Of the index of colours; 0 is that of the copy, undefined that of the layer. */
  readonly colour: number | undefined;
  readonly invisible: boolean;
  /** On the sheet that is printed, not in the model that is cut. */
  readonly paper: boolean;
}

/** A part of a drawing or of a block. */
export type DxfPart = DxfCommon &
  (
    | {
        readonly kind: 'stroke';
        readonly stroke: Stroke;
        /** From the entity's own plane to the drawing's. */
        readonly matrix: Matrix;
        /** A curve through points, of which only these are known. */
        readonly guessed: boolean;
      }
    | {
        readonly kind: 'insert';
        readonly block: string;
        /** From the block's plane to the drawing's, of the first of the copies. */
        readonly matrix: Matrix;
        readonly columns: number;
        readonly rows: number;
        /** From one copy to the next in its row, and from row to row. */
        readonly across: Point;
        readonly up: Point;
      }
    | { readonly kind: 'text'; readonly words: string; readonly at: Point }
    | { readonly kind: 'unread'; readonly what: string }
  );

export interface DxfLayer {
  readonly name: string;
  readonly colour: number;
  readonly frozen: boolean;
  readonly off: boolean;
}

export interface DxfBlock {
  readonly name: string;
  readonly base: Point;
  /** Names another file. */
  readonly elsewhere: boolean;
  readonly parts: DxfPart[];
}

/** Names mean the same in capitals and small letters. */
export const dxfKey = (name: string): string => name.toUpperCase();
