import type { Problem } from '../core/problem.ts';
import type { CautionAct } from '../words/shape/caution.ts';
import { cautionLines } from '../words/cautionLines.ts';
import { jobSheetText } from '../words/texts.ts';
import { heightOf, innerWidth, page, write } from './sheetOfPaper.ts';

/** The cautions that stand even where there is little room, in a frame above everything that is to be done; the y below. */
export const drawCautionFrame = (
  pdf: PDFKit.PDFDocument,
  acts: readonly CautionAct[],
  top: number,
  ofMaterial: readonly Problem[] = [],
): number => {
  const lines = cautionLines(acts, ofMaterial);
  const width = innerWidth - 24;
  const size = 8.6;
  const height = lines.reduce((sum, line) => sum + heightOf(pdf, line, { size, width }) + 1, 26);
  const y = top + 7;
  pdf
    .roundedRect(page.margin, y, innerWidth, height, 4)
    .lineWidth(1.4)
    .strokeColor('#b3261e')
    .stroke();
  let line = write(pdf, jobSheetText.cautions, page.margin + 12, y + 6, { font: 'strong' });
  for (const sentence of lines) {
    line = write(pdf, sentence, page.margin + 12, line + 1, { size, width });
  }
  return y + height + 12;
};
