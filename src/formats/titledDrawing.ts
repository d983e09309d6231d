import { cardDrawing, type CardDrawing } from '../core/card/cardDrawing.ts';
import type { FileToMake } from './fileToMake.ts';

/** What a drawing is called, and its lines. */
export const titledDrawing = ({
  of,
}: FileToMake): { readonly title: string; readonly drawing: CardDrawing } =>
  'drawing' in of ? of : { title: `Card ${of.code}`, drawing: cardDrawing(of) };
