import { machineFiles } from '../../formats/machineFiles.ts';
import { rampDrawing, type RampCard } from '../../core/card/rampCard.ts';
import { andThen, done } from '../../core/problem.ts';
import { metricUnits } from '../../core/units/unitPreference.ts';
import { fileForMachine } from '../../formats/fileForMachine.ts';
import type { DrawRampFile } from './cardFile.ts';
import type { Printer } from './printer.ts';
import { cautionLines } from '../../words/cautionLines.ts';
import { inUnits, rampSheetText } from '../../words/texts.ts';

/** The cautions that go with every file of a ramp, wherever there is room for words. */
export const rampCautions = ({ ofMaterial }: RampCard): readonly string[] =>
  cautionLines(['focus', 'unattended', 'fire', 'beforeCut', 'always'], ofMaterial);

/** Makes the file of one kind, its cautions with it; what the check of files faults is not made. */
export const rampFileBy =
  (printer: Printer): DrawRampFile =>
  async ({ card, machine, dialect, units = metricUnits }, kind) => {
    const drawn = await fileForMachine(kind === 'pdf' ? 'svg' : kind, {
      of: { title: rampSheetText.title, plainTitle: 'focus ramp', drawing: rampDrawing(card) },
      machine,
      ...(dialect === undefined ? {} : { dialect }),
      notes: inUnits(units, () => [
        rampSheetText.about(card.ramp),
        rampSheetText.clearance(card.ramp),
        ...rampCautions(card),
      ]),
    });
    if (!drawn.ok) return drawn;
    if (kind !== 'pdf')
      return done({ contentType: machineFiles[kind].contentType, body: drawn.value });
    return andThen(await printer.rampSheet(card, { units }), (body) =>
      done({ contentType: 'application/pdf', body }),
    );
  };
