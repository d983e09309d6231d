import type { Card } from '../core/card/card.ts';
import { done, type Outcome } from '../core/problem.ts';
import { materialRemarks } from '../core/stock/acceptMaterial.ts';
import type { Study } from '../core/study/study.ts';
import { systemClock } from '../host/clock.ts';
import type { CardFile, CardFileKind } from '../http/cardFile.ts';
import { cardCautions } from './cardCautions.ts';

/** Makes the file of one kind, its cautions with it; each writer is loaded when it is first asked for. */
export const cardFile = async (
  study: Study,
  card: Card,
  kind: CardFileKind,
): Promise<Outcome<CardFile>> => {
  switch (kind) {
    case 'svg': {
      const { cardDrawing } = await import('../core/card/cardDrawing.ts');
      const { writeSvg } = await import('../formats/svg/writeSvg.ts');
      const body = writeSvg(cardDrawing(card), `Card ${card.code}`, cautionsOf(study));
      return done({ contentType: 'image/svg+xml', body });
    }
    case 'dxf': {
      const { cardDrawing } = await import('../core/card/cardDrawing.ts');
      const { writeDxf } = await import('../formats/dxf/writeDxf.ts');
      return done({
        contentType: 'image/vnd.dxf',
        body: writeDxf(cardDrawing(card), cautionsOf(study)),
      });
    }
    case 'gcode': {
      const { plainDialect } = await import('../core/machine/gcodeDialect.ts');
      const { writeGcode } = await import('../formats/gcode/writeGcode.ts');
      const written = writeGcode(card, study.machine.gcode ?? plainDialect, cautionsOf(study));
      return written.ok ? done({ contentType: 'text/x-gcode', body: written.value }) : written;
    }
    case 'json': {
      const { writeCardFile } = await import('../formats/cardFile.ts');
      return done({ contentType: 'application/json', body: writeCardFile(card) });
    }
    case 'pdf':
      return done({ contentType: 'application/pdf', body: await jobSheetFor(study, card) });
  }
};

const cautionsOf = ({ stock }: Study): readonly string[] => cardCautions(materialRemarks(stock));

/** The page beside the machine; what changed is told against the card before it in the study. */
const jobSheetFor = async (study: Study, card: Card): Promise<Uint8Array> => {
  const { jobSheet } = await import('../core/card/jobSheet.ts');
  const { jobSheetPdf } = await import('../print/jobSheetPdf.ts');
  const before = study.cards[study.cards.findIndex(({ code }) => code === card.code) - 1];
  return jobSheetPdf(
    jobSheet(card, {
      ...(before === undefined ? {} : { before }),
      ofMaterial: materialRemarks(study.stock),
      machine: study.machine,
    }),
    {
      stock: `${String(study.stock.nominalThicknessMm)} mm ${study.stock.material}`,
      madeAt: systemClock.now(),
    },
  );
};
