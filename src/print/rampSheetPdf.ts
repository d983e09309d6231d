import { rampDrawing, type RampCard } from '../core/card/rampCard.ts';
import type { UnitPreference } from '../core/units/unitPreference.ts';
import type { CautionAct } from '../words/shape/caution.ts';
import { jobSheetText, rampSheetText as words } from '../words/texts.ts';
import { drawCardPicture } from './cardPicture.ts';
import { drawCautionFrame } from './cautionFrame.ts';
import { newPdf } from './newPdf.ts';
import { innerWidth, page, pt } from './sheetOfPaper.ts';
import { drawFurther, drawHead, drawNoteFields, drawTickList } from './sheetParts.ts';

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
    y = drawTickList(pdf, jobSheetText.stepsTitle, words.steps(card.ramp), y + 4);
    const [first] = card.lines;
    y = drawTickList(
      pdf,
      words.order,
      [
        ...(first === undefined ? [] : [words.marks(first)]),
        ...card.lines.map(words.line),
        words.tryFirst,
      ],
      y,
    );
    y = drawNoteFields(
      pdf,
      words.notes,
      words.noteFields(card.lines.map(({ letter }) => letter)),
      y,
    );
    drawFurther(pdf, rampActs, y);
  });
