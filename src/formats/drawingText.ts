import type { CardDrawing } from '../core/card/cardDrawing.ts';
import { writeDxf } from './dxf/writeDxf.ts';
import { writeSvg } from './svg/writeSvg.ts';

/** In what a person's own drawing is given back. */
export const drawingTextKinds = ['svg', 'dxf'] as const;
export type DrawingTextKind = (typeof drawingTextKinds)[number];

/** A person's own drawing, given back. */
export const drawingText = (drawing: CardDrawing, kind: DrawingTextKind, title: string): string =>
  kind === 'svg' ? writeSvg(drawing, title) : writeDxf(drawing);
