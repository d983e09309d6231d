import { actsOfKerfCard } from '../core/kerf/actsOfKerfCard.ts';
import { kerfCardDrawing, type KerfCard } from '../core/kerf/kerfCard.ts';
import type { UnitPreference } from '../core/units/unitPreference.ts';
import { jobSheetText, kerfSheetText as words } from '../words/texts.ts';
import { problemInWords } from '../words/words.ts';
import { drawCardPicture } from './cardPicture.ts';
import { drawCautionFrame } from './cautionFrame.ts';
import { newPdf } from './newPdf.ts';
import { innerWidth, page, pt } from './sheetOfPaper.ts';
import { drawFurther, drawHead, drawNoteFields, drawTickList } from './sheetParts.ts';

/**
 * The page that lies beside the machine when a comb or slot card is cut, as PDF (A4): cautions first, the picture, what to do, what
 * to type, and room for what is measured. `glows`: whether the material may glow on. `madeAt`: ISO 8601, UTC.
 */
export const kerfSheetPdf = (
  card: KerfCard,
  {
    glows,
    ...made
  }: { readonly glows: boolean; readonly madeAt: string; readonly units?: UnitPreference },
): Promise<Uint8Array> =>
  newPdf({ title: words.title(card), ...made }, (pdf) => {
    const acts = actsOfKerfCard(card, glows);
    let y = drawHead(pdf, words.title(card), [
      { text: words.about(card) },
      { text: words.piece(card), font: 'strong' },
    ]);
    y = drawCautionFrame(pdf, acts, y, card.ofMaterial);
    y = drawCardPicture(pdf, kerfCardDrawing(card), {
      x: page.margin,
      y,
      width: innerWidth,
      height: 62 * pt,
    });
    y = drawTickList(pdf, jobSheetText.stepsTitle, words.steps(card), y + 4);
    y = drawTickList(pdf, words.order, [...words.entries(card), words.tryFirst], y);
    y = drawNoteFields(pdf, words.notes, words.noteFields(card), y);
    drawFurther(
      pdf,
      acts,
      y,
      card.remarks.map((remark) => problemInWords(remark).message),
    );
  });
