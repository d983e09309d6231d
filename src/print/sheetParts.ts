import { allCautions, jobSheetText } from '../words/texts.ts';
import type { CautionAct } from '../words/shape/caution.ts';
import {
  faint,
  heading,
  heightOf,
  innerWidth,
  page,
  roomFor,
  rule,
  write,
} from './sheetOfPaper.ts';

/** A line under the title; `strong` where it has to be minded. */
interface HeadLine {
  readonly text: string;
  readonly font?: 'plain' | 'strong';
}

/** The head of a page that lies beside the machine: its title, and what it is about; the y below. */
export const drawHead = (
  pdf: PDFKit.PDFDocument,
  title: string,
  lines: readonly HeadLine[],
): number => {
  let y = write(pdf, title, page.margin, page.margin - 6, { font: 'strong', size: 24 });
  for (const { text, font = 'plain' } of lines)
    y = write(pdf, text, page.margin, y, { size: 10.5, font });
  return y;
};

/** A box to tick, beside a line of text at `y`. */
export const drawTickBox = (pdf: PDFKit.PDFDocument, y: number): void => {
  pdf
    .rect(page.margin, y + 1, 9, 9)
    .lineWidth(0.8)
    .strokeColor(faint)
    .stroke();
};

/** Sentences under a heading, each with a box to tick; the y below. */
export const drawTickList = (
  pdf: PDFKit.PDFDocument,
  title: string,
  lines: readonly string[],
  top: number,
): number => {
  const width = innerWidth - 24;
  const needed = lines.reduce((sum, line) => sum + heightOf(pdf, line, { width }) + 3, 24);
  let y = heading(pdf, title, page.margin, roomFor(pdf, top + 6, needed));
  for (const line of lines) {
    drawTickBox(pdf, y);
    y = write(pdf, line, page.margin + 18, y, { width }) + 3;
  }
  return y;
};

/** Lines to write on, each with what belongs there; the y below. */
export const drawNoteFields = (
  pdf: PDFKit.PDFDocument,
  title: string,
  fields: readonly string[],
  top: number,
): number => {
  let y = heading(pdf, title, page.margin, roomFor(pdf, top + 6, 24 + fields.length * 20));
  for (const field of fields) {
    write(pdf, field, page.margin, y + 4, { size: 9, colour: faint, width: 170 });
    pdf
      .moveTo(page.margin + 175, y + 15)
      .lineTo(page.margin + innerWidth, y + 15)
      .lineWidth(0.6)
      .strokeColor(rule)
      .stroke();
    y += 20;
  }
  return y;
};

/** What else is to be minded, at the foot: remarks first, then the cautions that the frame above leaves out. */
export const drawFurther = (
  pdf: PDFKit.PDFDocument,
  acts: readonly CautionAct[],
  top: number,
  remarks: readonly string[] = [],
): void => {
  const cautions = acts
    .flatMap((act) => allCautions[act])
    .filter(({ essential }) => !essential)
    .map(({ sentence }) => sentence);
  const size = 8.6;
  let y = heading(pdf, jobSheetText.cautionsMore, page.margin, roomFor(pdf, top + 10, 60));
  for (const line of [...remarks, ...cautions]) {
    y = roomFor(pdf, y, heightOf(pdf, line, { size }) + 1, (above) =>
      heading(pdf, jobSheetText.cautionsMore, page.margin, above),
    );
    y = write(pdf, line, page.margin, y, { size }) + 1;
  }
};
