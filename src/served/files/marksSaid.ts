import type { MarksBegun } from '../../app/card/beginMarks.ts';
import type { EvenShadesTold } from '../../app/card/tellEvenShades.ts';
import type { Setting } from '../../core/machine/setting.ts';
import { actsOfMarks } from '../../core/marking/actsOfMarks.ts';
import { isDrawn } from '../../core/marking/mark.ts';
import { evenShadesResultFile, type EvenShadesResultFile } from '../../formats/evenShadesFile.ts';
import { marksResultFile, type MarksResultFile } from '../../formats/marksFile.ts';
import { cautionLines } from '../../words/cautionLines.ts';
import { marksText } from '../../words/texts.ts';
import { problemInWords } from '../../words/words.ts';

/** Where to begin with marks, as route and command say it. */
export const marksSaid = (begun: MarksBegun): MarksResultFile => {
  const settings: readonly Setting[] = [begun.score, begun.engrave].flatMap((mark) =>
    mark.ok && isDrawn(mark.value) ? [mark.value.setting] : [],
  );
  return marksResultFile(begun, {
    say: problemInWords,
    how: marksText.guess,
    cautions: cautionLines(actsOfMarks(settings), begun.ofMaterial),
  });
};

/** Even shades, as route and command say them. */
export const shadesSaid = (told: EvenShadesTold, lineSpacingMm: number): EvenShadesResultFile =>
  evenShadesResultFile(told, lineSpacingMm, {
    say: problemInWords,
    cautions: cautionLines(actsOfMarks(told.shades.map(({ setting }) => setting)), told.ofMaterial),
  });
