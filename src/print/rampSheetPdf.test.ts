import { describe, expect, it } from 'vitest';

import { textOfPdf } from '../../test/fixtures/textOfPdf.ts';
import { rampCard, type RampCard } from '../core/card/rampCard.ts';
import { undescribedMachine } from '../core/machine/machine.ts';
import { allCautions, rampSheetText } from '../words/texts.ts';
import { printable } from './fonts.ts';
import { rampActs, rampSheetPdf } from './rampSheetPdf.ts';

const card = (): RampCard => {
  const made = rampCard({
    ramp: { lengthMm: 120, blockMm: 8, nozzleGapMm: 12 },
    setting: { powerPct: 14, speedMmPerS: 30, passes: 1 },
    machine: undescribedMachine,
    believed: () => ({ v50MmPerS: 6, lnSd: 0.6 }),
  });
  if (!made.ok) throw new Error(made.problem.code);
  return made.value;
};
const madeAt = '2031-04-05T06:07:08.000Z';
const bare = (text: string): string => printable(text).replaceAll(/\s/g, '');

describe('the sheet of a focus ramp as PDF', () => {
  it('says how it lies, every step, every line and every caution', async () => {
    const text = textOfPdf(await rampSheetPdf(card(), { madeAt }));
    const wanted = [
      rampSheetText.about(card().ramp),
      rampSheetText.clearance(card().ramp),
      ...rampSheetText.steps(card().ramp),
      ...card().lines.map((line) => rampSheetText.line(line)),
      ...rampActs.flatMap((act) => allCautions[act]).map(({ sentence }) => sentence),
    ];
    for (const sentence of wanted) expect(text).toContain(bare(sentence));
  });

  it('is the same bytes for the same ramp at the same time', async () => {
    const [first, second] = [
      await rampSheetPdf(card(), { madeAt }),
      await rampSheetPdf(card(), { madeAt }),
    ];
    expect(Buffer.compare(first, second)).toBe(0);
  });
});
