import { actsOfMarks } from '../core/marking/actsOfMarks.ts';
import { markStripDrawing, type MarkStrip } from '../core/marking/markStrip.ts';
import type { UnitPreference } from '../core/units/unitPreference.ts';
import { jobSheetText, markStripText as words } from '../words/texts.ts';
import { drawCardPicture } from './cardPicture.ts';
import { drawCautionFrame } from './cautionFrame.ts';
import { newPdf } from './newPdf.ts';
import { innerWidth, page, pt } from './sheetOfPaper.ts';
import { drawFurther, drawHead, drawNoteFields, drawTickList } from './sheetParts.ts';

/**
 * The page that lies beside the machine when a strip is marked, as PDF (A4): cautions first, the picture, what to do, what to
 * type, and room for what was seen. `madeAt`: ISO 8601, UTC.
 */
export const markStripPdf = (
  strip: MarkStrip,
  made: { readonly madeAt: string; readonly units?: UnitPreference },
): Promise<Uint8Array> =>
  newPdf({ title: words.title, ...made }, (pdf) => {
    const acts = actsOfMarks(strip.settings);
    let y = drawHead(pdf, words.title, [
      { text: words.about(strip) },
      { text: words.piece(strip), font: 'strong' },
    ]);
    y = drawCautionFrame(pdf, acts, y, strip.ofMaterial);
    y = drawCardPicture(pdf, markStripDrawing(strip), {
      x: page.margin,
      y,
      width: innerWidth,
      height: 62 * pt,
    });
    y = drawTickList(pdf, jobSheetText.stepsTitle, words.steps(strip), y + 4);
    y = drawTickList(pdf, words.order, words.entries(strip), y);
    y = drawNoteFields(pdf, words.notes, words.noteFields, y);
    drawFurther(pdf, acts, y, []);
  });
