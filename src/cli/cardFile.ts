import type { Card } from '../core/card/card.ts';
import { done, type Outcome } from '../core/problem.ts';
import type { Study } from '../core/study/study.ts';
import type { CardFile, CardFileKind } from '../http/server.ts';

/** Makes the file of one kind; each writer is loaded when it is first asked for. */
export const cardFile = async (
  _study: Study,
  card: Card,
  kind: CardFileKind,
): Promise<Outcome<CardFile>> => {
  switch (kind) {
    case 'svg': {
      const { cardDrawing } = await import('../core/card/cardDrawing.ts');
      const { writeSvg } = await import('../formats/svg/writeSvg.ts');
      const body = writeSvg(cardDrawing(card), `Card ${card.code}`);
      return done({ contentType: 'image/svg+xml', body });
    }
    case 'dxf': {
      const { cardDrawing } = await import('../core/card/cardDrawing.ts');
      const { writeDxf } = await import('../formats/dxf/writeDxf.ts');
      return done({ contentType: 'image/vnd.dxf', body: writeDxf(cardDrawing(card)) });
    }
    case 'gcode': {
      const { plainDialect } = await import('../formats/gcode/gcodeDialect.ts');
      const { writeGcode } = await import('../formats/gcode/writeGcode.ts');
      const written = writeGcode(card, plainDialect);
      return written.ok ? done({ contentType: 'text/x-gcode', body: written.value }) : written;
    }
    case 'json': {
      const { writeCardFile } = await import('../formats/cardFile.ts');
      return done({ contentType: 'application/json', body: writeCardFile(card) });
    }
    case 'pdf':
      throw new Error('not yet');
  }
};
