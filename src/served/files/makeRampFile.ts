import { rampDrawing, type RampCard } from '../../core/card/rampCard.ts';
import { metricUnits } from '../../core/units/unitPreference.ts';
import type { DrawRampFile } from './cardFile.ts';
import { drawnOrPrinted } from './drawnOrPrinted.ts';
import type { Printer } from './printer.ts';
import { cautionLines } from '../../words/cautionLines.ts';
import { inUnits, rampSheetText } from '../../words/texts.ts';

/** The cautions that go with every file of a ramp, wherever there is room for words. */
export const rampCautions = ({ ofMaterial }: RampCard): readonly string[] =>
  cautionLines(['focus', 'unattended', 'fire', 'beforeCut', 'always'], ofMaterial);

/** Makes the file of one kind, its cautions with it; what the check of files faults is not made. */
export const rampFileBy =
  (printer: Printer): DrawRampFile =>
  ({ card, machine, dialect, units = metricUnits }, kind) =>
    drawnOrPrinted(
      kind,
      {
        of: { title: rampSheetText.title, plainTitle: 'focus ramp', drawing: rampDrawing(card) },
        machine,
        ...(dialect === undefined ? {} : { dialect }),
        notes: inUnits(units, () => [
          rampSheetText.about(card.ramp),
          rampSheetText.clearance(card.ramp),
          ...rampCautions(card),
        ]),
      },
      () => printer.rampSheet(card, { units }),
    );
