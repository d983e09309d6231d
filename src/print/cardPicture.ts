import type { CardDrawing } from '../core/card/cardDrawing.ts';
import type { Polyline } from '../core/path/polyline.ts';
import { jobSheetText } from '../words/texts.ts';
import { faint, ink, pt, rule, write } from './sheetOfPaper.ts';

interface Frame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * The card as it will be cut, at its true size or smaller where the frame is: its edge dashed where no outline is cut,
 * the corner of zero marked. Gives the y below it.
 */
export const drawCardPicture = (
  pdf: PDFKit.PDFDocument,
  drawing: CardDrawing,
  frame: Frame,
): number => {
  const scale = Math.min(pt, frame.width / drawing.widthMm, frame.height / drawing.heightMm);
  const width = drawing.widthMm * scale;
  const height = drawing.heightMm * scale;
  const left = frame.x + (frame.width - width) / 2;
  pdf.lineWidth(0.5).strokeColor(rule).dash(3, { space: 2 });
  pdf.rect(left, frame.y, width, height).stroke().undash();
  for (const layer of drawing.layers) {
    pdf.lineWidth(layer.kind === 'marks' ? 0.45 : 0.8).strokeColor(layer.colour);
    for (const line of layer.polylines) trace(pdf, line, left, frame.y + height, scale);
  }
  drawZero(pdf, left, frame.y + height);
  return frame.y + height + 16;
};

const trace = (
  pdf: PDFKit.PDFDocument,
  line: Polyline,
  left: number,
  bottom: number,
  scale: number,
): void => {
  for (const [i, [x, y]] of line.entries()) {
    if (i === 0) pdf.moveTo(left + x * scale, bottom - y * scale);
    else pdf.lineTo(left + x * scale, bottom - y * scale);
  }
  pdf.stroke();
};

/** A dot at the corner, with the two directions in which the figures grow. */
const drawZero = (pdf: PDFKit.PDFDocument, x: number, y: number): void => {
  pdf.circle(x, y, 2.6).fillColor(ink).fill();
  pdf.lineWidth(1).strokeColor(ink);
  pdf
    .moveTo(x, y)
    .lineTo(x + 22, y)
    .stroke();
  pdf
    .moveTo(x, y)
    .lineTo(x, y - 22)
    .stroke();
  pdf
    .moveTo(x + 22, y - 2.4)
    .lineTo(x + 27, y)
    .lineTo(x + 22, y + 2.4)
    .fillColor(ink)
    .fill();
  pdf
    .moveTo(x - 2.4, y - 22)
    .lineTo(x, y - 27)
    .lineTo(x + 2.4, y - 22)
    .fill();
  write(pdf, jobSheetText.zeroHere, x, y + 4, { size: 8, colour: faint, width: 80 });
};
