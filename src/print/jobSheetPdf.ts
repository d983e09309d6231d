import type { JobSheet } from '../core/card/jobSheet.ts';
import type { UnitPreference } from '../core/units/unitPreference.ts';
import { inUnitsShown, jobSheetText } from '../words/texts.ts';
import { problemInWords } from '../words/words.ts';
import { drawCardPicture } from './cardPicture.ts';
import { drawCautionFrame } from './cautionFrame.ts';
import { newPdf } from './newPdf.ts';
import {
  faint,
  heading,
  heightOf,
  innerWidth,
  page,
  pt,
  roomFor,
  rule,
  write,
} from './sheetOfPaper.ts';
import { drawFurther, drawHead, drawTickBox } from './sheetParts.ts';
import { drawTypeInTable } from './typeInTable.ts';

interface JobSheetOptions {
  /** What is cut, as the user calls it: `3 mm birch plywood`. */
  readonly stock?: string;
  /** ISO 8601, UTC. Equal sheets of equal time are equal bytes. */
  readonly madeAt: string;
  readonly units?: UnitPreference;
}

/**
 * The page that lies beside the machine, as PDF (A4): cautions first, then the card as it will be cut, what to do, what
 * to type, and room for what is noted. The library is loaded on the first call (~200 ms).
 */
export const jobSheetPdf = (
  sheet: JobSheet,
  { stock, ...made }: JobSheetOptions,
): Promise<Uint8Array> =>
  newPdf({ title: jobSheetText.title(sheet.card.code), ...made }, (pdf) => {
    let y = drawTop(pdf, sheet, stock);
    y = drawCautionFrame(pdf, sheet.cautions, y, sheet.ofMaterial);
    y = drawPicture(pdf, sheet, y);
    y = drawTypeIn(pdf, sheet, y);
    y = drawSteps(pdf, sheet, y);
    y = drawNotes(pdf, sheet, y);
    drawFurther(pdf, sheet.cautions, y, remarksOf(sheet));
  });

const drawTop = (pdf: PDFKit.PDFDocument, sheet: JobSheet, stock: string | undefined): number => {
  const { card, time, usedMm } = sheet;
  const about = [
    stock,
    card.thicknessMm === undefined ? undefined : jobSheetText.thickness(card.thicknessMm),
    card.batch === undefined ? undefined : jobSheetText.batch(card.batch),
    card.sheet === undefined ? undefined : jobSheetText.sheet(card.sheet),
    jobSheetText.size(...usedMm),
  ].filter((part) => part !== undefined);
  return drawHead(pdf, jobSheetText.title(card.code), [
    { text: about.join(' · ') },
    { text: jobSheetText.time(time) },
  ]);
};

const drawPicture = (pdf: PDFKit.PDFDocument, sheet: JobSheet, top: number): number => {
  const below = drawCardPicture(pdf, sheet.drawing, {
    x: page.margin,
    y: top,
    width: innerWidth,
    height: Math.min(95 * pt, 0.34 * page.height),
  });
  return write(pdf, jobSheetText.pictureNote, page.margin, below, {
    size: 8,
    colour: faint,
  });
};

const drawTypeIn = (pdf: PDFKit.PDFDocument, sheet: JobSheet, top: number): number => {
  const y = heading(pdf, jobSheetText.typeInTitle, page.margin, roomFor(pdf, top + 8, 90));
  return drawTypeInTable(pdf, sheet.typeIn, y);
};

/** What to do, numbered, with a box to tick. */
const drawSteps = (pdf: PDFKit.PDFDocument, sheet: JobSheet, top: number): number => {
  const width = innerWidth - 40;
  const sentences = sheet.steps.map((step) => jobSheetText.step(step));
  const needed = sentences.reduce((sum, line) => sum + heightOf(pdf, line, { width }) + 3, 24);
  let y = heading(pdf, jobSheetText.stepsTitle, page.margin, roomFor(pdf, top + 10, needed));
  sentences.forEach((sentence, i) => {
    drawTickBox(pdf, y);
    write(pdf, String(i + 1), page.margin + 17, y, { font: 'strong', width: 20 });
    y = write(pdf, sentence, page.margin + 32, y, { width }) + 3;
  });
  return y;
};

const drawNotes = (pdf: PDFKit.PDFDocument, sheet: JobSheet, top: number): number => {
  const rows = Math.ceil(sheet.noteFields.length / 2);
  let y = heading(
    pdf,
    jobSheetText.notesTitle,
    page.margin,
    roomFor(pdf, top + 10, 30 + rows * 24),
  );
  const half = innerWidth / 2;
  sheet.noteFields.forEach((field, i) => {
    const x = page.margin + (i % 2) * half;
    const at = y + Math.floor(i / 2) * 24;
    write(pdf, jobSheetText.note(field), x, at + 4, { size: 9, colour: faint, width: 100 });
    pdf
      .moveTo(x + 95, at + 16)
      .lineTo(x + half - 14, at + 16)
      .lineWidth(0.6)
      .strokeColor(rule)
      .stroke();
  });
  y += rows * 24;
  return y;
};

const remarksOf = ({ hottest, remarks }: JobSheet): readonly string[] => [
  ...(hottest === undefined ? [] : [jobSheetText.hottest(hottest.rung)]),
  ...remarks.map((remark) => {
    const { message, remedy } = problemInWords(remark);
    return inUnitsShown(`${message} ${remedy}`);
  }),
];
