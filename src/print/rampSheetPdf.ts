import { rampDrawing, type RampCard } from '../core/card/rampCard.ts';
import { cautionsInEnglish } from '../words/en/cautions.ts';
import type { CautionAct } from '../words/caution.ts';
import { jobSheetText } from '../words/en/jobSheet.ts';
import { rampSheetText as words } from '../words/en/rampSheet.ts';
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

/** Which cautions go with a focus ramp; shown wherever one is. */
export const rampActs: readonly CautionAct[] = ['focus', 'unattended', 'always'];

/**
 * The page that lies beside the machine when a focus ramp is drawn, as PDF (A4): cautions first, then how strip and block
 * lie, what to do, what to type, and room for what is read. `madeAt`: ISO 8601, UTC.
 */
export const rampSheetPdf = (
  card: RampCard,
  { madeAt }: { readonly madeAt: string },
): Promise<Uint8Array> =>
  newPdf({ title: words.title, madeAt }, (pdf) => {
    let y = write(pdf, words.title, page.margin, page.margin - 6, { font: 'strong', size: 24 });
    y = write(pdf, words.about(card.ramp), page.margin, y, { size: 10.5 });
    y = write(pdf, words.clearance(card.ramp), page.margin, y, { size: 10.5, font: 'strong' });
    y = drawCautionFrame(pdf, rampActs, y);
    y = drawCardPicture(pdf, rampDrawing(card), {
      x: page.margin,
      y,
      width: innerWidth,
      height: 60 * pt,
    });
    y = drawList(pdf, jobSheetText.stepsTitle, words.steps(card.ramp), y + 4);
    const [first] = card.lines;
    y = drawList(
      pdf,
      words.order,
      [
        ...(first === undefined ? [] : [words.marks(first)]),
        ...card.lines.map(words.line),
        words.tryFirst,
      ],
      y,
    );
    y = drawNotes(pdf, words.noteFields(card.lines.map(({ letter }) => letter)), y);
    drawFurther(pdf, y);
  });

/** Sentences under a heading, each with a box to tick; the y below. */
const drawList = (
  pdf: PDFKit.PDFDocument,
  title: string,
  lines: readonly string[],
  top: number,
): number => {
  const width = innerWidth - 24;
  const needed = lines.reduce((sum, line) => sum + heightOf(pdf, line, { width }) + 3, 24);
  let y = heading(pdf, title, page.margin, roomFor(pdf, top + 6, needed));
  for (const line of lines) {
    pdf
      .rect(page.margin, y + 1, 9, 9)
      .lineWidth(0.8)
      .strokeColor(faint)
      .stroke();
    y = write(pdf, line, page.margin + 18, y, { width }) + 3;
  }
  return y;
};

const drawNotes = (pdf: PDFKit.PDFDocument, fields: readonly string[], top: number): number => {
  let y = heading(pdf, words.notes, page.margin, roomFor(pdf, top + 6, 24 + fields.length * 20));
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

const drawFurther = (pdf: PDFKit.PDFDocument, top: number): void => {
  const lines = rampActs
    .flatMap((act) => cautionsInEnglish[act])
    .filter(({ essential }) => !essential)
    .map(({ sentence }) => sentence);
  const size = 8.6;
  let y = heading(pdf, jobSheetText.cautionsMore, page.margin, roomFor(pdf, top + 8, 60));
  for (const line of lines) {
    y = roomFor(pdf, y, heightOf(pdf, line, { size }) + 1);
    y = write(pdf, line, page.margin, y, { size }) + 1;
  }
};
