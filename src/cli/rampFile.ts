import { rampDrawing, type RampCard } from '../core/card/rampCard.ts';
import { plainDialect, type GcodeDialect } from '../core/machine/gcodeDialect.ts';
import { done, type Outcome } from '../core/problem.ts';
import { systemClock } from '../host/clock.ts';
import type { CardFile, RampFileKind } from '../http/cardFile.ts';
import { cautionLines } from '../words/cautionLines.ts';
import { rampSheetText } from '../words/en/rampSheet.ts';

/** The cautions that go with every file of a ramp, wherever there is room for words. */
export const rampCautions = ({ ofMaterial }: RampCard): readonly string[] =>
  cautionLines(['focus', 'unattended', 'always'], ofMaterial);

/** Makes the file of one kind, its cautions with it; each writer is loaded when it is first asked for. */
export const rampFile = async (
  card: RampCard,
  kind: RampFileKind,
  dialect: GcodeDialect = plainDialect,
): Promise<Outcome<CardFile>> => {
  const drawing = rampDrawing(card);
  const notes = [
    rampSheetText.about(card.ramp),
    rampSheetText.clearance(card.ramp),
    ...rampCautions(card),
  ];
  switch (kind) {
    case 'svg': {
      const { writeSvg } = await import('../formats/svg/writeSvg.ts');
      return done({
        contentType: 'image/svg+xml',
        body: writeSvg(drawing, rampSheetText.title, notes),
      });
    }
    case 'dxf': {
      const { writeDxf } = await import('../formats/dxf/writeDxf.ts');
      return done({ contentType: 'image/vnd.dxf', body: writeDxf(drawing, notes) });
    }
    case 'gcode': {
      const { writeDrawingGcode } = await import('../formats/gcode/writeGcode.ts');
      const written = writeDrawingGcode({ title: 'focus ramp', drawing }, dialect, notes);
      return written.ok ? done({ contentType: 'text/x-gcode', body: written.value }) : written;
    }
    case 'pdf': {
      const { rampSheetPdf } = await import('../print/rampSheetPdf.ts');
      const body = await rampSheetPdf(card, { madeAt: systemClock.now() });
      return done({ contentType: 'application/pdf', body });
    }
  }
};
