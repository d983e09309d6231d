import { rampDrawing, type RampCard } from '../core/card/rampCard.ts';
import type { UnitPreference } from '../core/units/unitPreference.ts';
import type { CautionAct } from '../words/shape/caution.ts';
import { jobSheetText, rampSheetText as words } from '../words/texts.ts';
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

/** Which cautions go with a focus ramp; shown wherever one is. */
export const rampActs: readonly CautionAct[] = [
  'focus',
  'unattended',
  'fire',
  'beforeCut',
  'always',
];

/**
 * The page that lies beside the machine when a focus ramp is drawn, as PDF (A4): cautions first, then how strip and block
 * lie, what to do, what to type, and room for what is read. `madeAt`: ISO 8601, UTC.
 */
export const rampSheetPdf = (
  card: RampCard,
  made: { readonly madeAt: string; readonly units?: UnitPreference },
): Promise<Uint8Array> =>
  newPdf({ title: words.title, ...made }, (pdf) => {
    let y = drawHead(pdf, words.title, [
      { text: words.about(card.ramp) },
      { text: words.clearance(card.ramp), font: 'strong' },
    ]);
    y = drawCautionFrame(pdf, rampActs, y, card.ofMaterial);
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
    drawFurther(pdf, rampActs, y);
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
    drawTickBox(pdf, y);
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
