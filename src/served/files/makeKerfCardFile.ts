import { actsOfKerfCard } from '../../core/kerf/actsOfKerfCard.ts';
import { kerfCardDrawing, type KerfCard } from '../../core/kerf/kerfCard.ts';
import { metricUnits } from '../../core/units/unitPreference.ts';
import { cautionLines } from '../../words/cautionLines.ts';
import { inUnits, kerfSheetText } from '../../words/texts.ts';
import type { DrawKerfCardFile } from './cardFile.ts';
import { drawnOrPrinted } from './drawnOrPrinted.ts';
import type { Printer } from './printer.ts';

/** The cautions that go with every file of a comb or slot card. */
export const kerfCardCautions = (card: KerfCard, glows: boolean): readonly string[] =>
  cautionLines(actsOfKerfCard(card, glows), card.ofMaterial);

/** Makes the file of one kind, its cautions with it; what the check of files faults is not made. */
export const kerfCardFileBy =
  (printer: Pick<Printer, 'kerfSheet'>): DrawKerfCardFile =>
  ({ card, machine, dialect, glows, units = metricUnits }, kind) =>
    drawnOrPrinted(
      kind,
      {
        of: {
          title: kerfSheetText.title(card),
          plainTitle: kerfSheetText.plainTitle[card.sheet.kind],
          drawing: kerfCardDrawing(card),
        },
        machine,
        ...(dialect === undefined ? {} : { dialect }),
        notes: inUnits(units, () => [
          kerfSheetText.about(card),
          kerfSheetText.piece(card),
          ...kerfCardCautions(card, glows),
        ]),
      },
      () => printer.kerfSheet(card, { glows, units }),
    );
