import type { UnitPreference } from '../core/units/unitPreference.ts';
import type { PageBeside } from '../words/shape/pageBeside.ts';
import { jobSheetText } from '../words/texts.ts';
import { problemInWords } from '../words/words.ts';
import { drawCardPicture } from './cardPicture.ts';
import { drawCautionFrame } from './cautionFrame.ts';
import { newPdf } from './newPdf.ts';
import { innerWidth, page as paper, pt } from './sheetOfPaper.ts';
import { drawFurther, drawHead, drawNoteFields, drawTickList } from './sheetParts.ts';

/**
 * The page that lies beside the machine, as PDF (A4): cautions first, the picture, what to do, what to type, and room for what is
 * seen or measured. `madeAt`: ISO 8601, UTC.
 */
export const pageBesidePdf = (
  { title, about, minded, acts, ofMaterial, drawing, steps, entries, ...page }: PageBeside,
  made: { readonly madeAt: string; readonly units?: UnitPreference },
): Promise<Uint8Array> =>
  newPdf({ title, ...made }, (pdf) => {
    let y = drawHead(pdf, title, [{ text: about }, { text: minded, font: 'strong' }]);
    y = drawCautionFrame(pdf, acts, y, ofMaterial);
    y = drawCardPicture(pdf, drawing, {
      x: paper.margin,
      y,
      width: innerWidth,
      height: 62 * pt,
    });
    y = drawTickList(pdf, jobSheetText.stepsTitle, steps, y + 4);
    y = drawTickList(pdf, jobSheetText.typeInTitle, entries, y);
    y = drawNoteFields(pdf, jobSheetText.notesTitle, page.noteFields, y);
    const remarks = page.remarks ?? [];
    drawFurther(
      pdf,
      acts,
      y,
      remarks.map((remark) => problemInWords(remark).message),
    );
  });
