import type { Card } from '../../src/core/card/card.ts';
import { cardDrawing } from '../../src/core/card/cardDrawing.ts';
import { plainDialect } from '../../src/core/dialect/gcodeDialect.ts';
import { writeDxf } from '../../src/formats/dxf/writeDxf.ts';
import { writeGcode } from '../../src/formats/gcode/writeGcode.ts';
import { writeSvg } from '../../src/formats/svg/writeSvg.ts';

export const drawingKinds = ['svg', 'dxf', 'gcode'] as const;
export type DrawingKind = (typeof drawingKinds)[number];

/** The files that a card has for the machine; one is missing where the card cannot be said in it. */
export const writeAll = (card: Card): Readonly<Partial<Record<DrawingKind, string>>> => {
  const drawing = cardDrawing(card);
  const gcode = writeGcode(card, plainDialect);
  return {
    svg: writeSvg(drawing, `Card ${card.code}`),
    dxf: writeDxf(drawing),
    ...(gcode.ok ? { gcode: gcode.value } : {}),
  };
};
