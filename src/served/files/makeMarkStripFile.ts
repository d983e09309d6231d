import { actsOfMarks } from '../../core/marking/actsOfMarks.ts';
import { markStripDrawing, type MarkStrip } from '../../core/marking/markStrip.ts';
import { metricUnits } from '../../core/units/unitPreference.ts';
import { cautionLines } from '../../words/cautionLines.ts';
import { inUnits, markStripText } from '../../words/texts.ts';
import type { DrawMarkStripFile } from './cardFile.ts';
import { drawnOrPrinted } from './drawnOrPrinted.ts';
import type { Printer } from './printer.ts';

/** The cautions that go with every file of a marking strip. */
export const markStripCautions = ({ settings, ofMaterial }: MarkStrip): readonly string[] =>
  cautionLines(actsOfMarks(settings), ofMaterial);

/** Makes the file of one kind, its cautions with it; what the check of files faults is not made. */
export const markStripFileBy =
  (printer: Pick<Printer, 'markStripSheet'>): DrawMarkStripFile =>
  ({ strip, limits, dialect, units = metricUnits }, kind) =>
    drawnOrPrinted(
      kind,
      {
        of: {
          title: markStripText.title,
          plainTitle: 'marking strip',
          drawing: markStripDrawing(strip),
        },
        ...limits,
        ...(dialect === undefined ? {} : { dialect }),
        notes: inUnits(units, () => [
          markStripText.about(strip),
          markStripText.piece(strip),
          ...markStripCautions(strip),
        ]),
      },
      () => printer.markStripSheet(strip, { units }),
    );
