import type { WhyMark, WhyPicture } from '../core/explain/whyPicture.ts';
import { powerWords } from '../words/texts.ts';
import { faint, ink, rule, write } from './sheetOfPaper.ts';

interface Frame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

const accent = '#2f45b5';
const wood = '#d9b98a';
/** Height of one cell's step, in points, at most. */
const mostStep = 15;
const mostHeight = 100;

/** The cells by speed with the answer's line and the rings of those that carry it; gives the y below. */
export const drawWhyPicture = (
  pdf: PDFKit.PDFDocument,
  picture: WhyPicture,
  { x, y, width }: Frame,
): number => {
  const step = Math.min(mostStep, mostHeight / picture.steps);
  const left = x + 44;
  const across = width - 50;
  const height = picture.steps * step;
  const top = y + 6;
  for (const band of picture.bands) {
    const middle = top + (band.y + band.steps / 2) * step;
    write(pdf, powerWords(band.powerPct), x, middle - 5, { size: 8, colour: faint, width: 40 });
  }
  for (const tick of picture.ticks) {
    const at = left + tick.x * across;
    pdf
      .lineWidth(0.4)
      .strokeColor(rule)
      .moveTo(at, top)
      .lineTo(at, top + height + 3)
      .stroke();
    write(pdf, String(tick.speedMmPerS), at - 20, top + height + 4, {
      size: 8,
      colour: faint,
      width: 40,
      align: 'center',
    });
  }
  const answer = left + picture.answerX * across;
  pdf
    .lineWidth(1.6)
    .strokeColor(accent)
    .moveTo(answer, top - 4)
    .lineTo(answer, top + height + 3)
    .stroke();
  for (const mark of picture.marks)
    drawMark(pdf, mark, left + mark.x * across, top + mark.y * step, step);
  write(pdf, 'mm/s', x, top + height + 4, { size: 8, colour: faint, width: 40 });
  return top + height + 18;
};

const drawMark = (
  pdf: PDFKit.PDFDocument,
  { grade, size, without }: WhyMark,
  x: number,
  y: number,
  step: number,
): void => {
  const r = 0.2 * step;
  pdf.lineWidth(0.9).strokeColor(ink);
  if (grade === 'out') pdf.circle(x, y, r).fillColor(ink).fill();
  else if (grade === 'hangs') {
    pdf
      .moveTo(x, y - 1.2 * r)
      .lineTo(x + 1.1 * r, y + 0.8 * r)
      .lineTo(x - 1.1 * r, y + 0.8 * r);
    pdf.closePath().fillColor(wood).fillAndStroke(wood, ink);
  } else {
    pdf
      .moveTo(x - r, y - r)
      .lineTo(x + r, y + r)
      .stroke();
    pdf
      .moveTo(x + r, y - r)
      .lineTo(x - r, y + r)
      .stroke();
  }
  if (size < leastRing) return;
  pdf.lineWidth(0.5 + 1.3 * size).strokeColor(accent);
  if (without === 'higher') pdf.dash(2.2, { space: 1.4 });
  pdf
    .circle(x, y, (0.26 + 0.24 * size) * step)
    .stroke()
    .undash();
};

/** Cells that carry next to nothing have no ring. */
const leastRing = 0.25;
