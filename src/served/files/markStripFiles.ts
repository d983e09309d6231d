import { designMarkStrip, type MarkStripAsked } from '../../app/card/designMarkStrip.ts';
import { rungLetter } from '../../core/card/rungLetter.ts';
import { actsOfMarks } from '../../core/marking/actsOfMarks.ts';
import { markStripDrawing, type MarkStrip } from '../../core/marking/markStrip.ts';
import { andThen, done } from '../../core/problem.ts';
import { parseMarkStripRequest } from '../../formats/markStripRequestFile.ts';
import type { PageBeside } from '../../words/shape/pageBeside.ts';
import { markStripText as words } from '../../words/texts.ts';
import type { RequestKind } from './toFile.ts';

/** A marking strip. */
export const markStripFiles: RequestKind<MarkStripAsked> = {
  read: parseMarkStripRequest,
  make: (asked) =>
    andThen(designMarkStrip(asked), ({ strip, limits }) =>
      done({
        ...limits,
        name: words.file,
        page: () => markStripPage(strip),
        told: () => ({
          strip: strip.kind,
          pieceMm: [strip.widthMm, strip.heightMm],
          lineSpacingMm: strip.lineSpacingMm,
          steps: strip.settings.map((setting, i) => ({ step: rungLetter(i), ...setting })),
          scoring: strip.scoring,
          how: words.steps(strip),
        }),
      }),
    ),
};

const markStripPage = (strip: MarkStrip): PageBeside => ({
  title: words.title,
  about: words.about(strip),
  minded: words.piece(strip),
  acts: actsOfMarks(strip.settings),
  ...(strip.ofMaterial === undefined ? {} : { ofMaterial: strip.ofMaterial }),
  drawing: markStripDrawing(strip),
  steps: words.steps(strip),
  entries: words.entries(strip),
  noteFields: words.noteFields,
});
