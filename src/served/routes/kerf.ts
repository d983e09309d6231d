import type { z } from 'zod';
import { combDirections } from '../../core/kerf/kerfComb.ts';
import type { KerfCardWish } from '../../core/kerf/kerfCard.ts';
import { done } from '../../core/problem.ts';
import { kerfResultFile, parseKerfFile } from '../../formats/kerfFile.ts';
import { knownBy } from '../../formats/saved/materialKnown.ts';
import { kerfApi as api, type kerfCardQuery } from '../../wire/kerfApi.ts';
import { importBytesAtMost } from '../../wire/importLimit.ts';
import { problemInWords } from '../../words/words.ts';
import { filesByRequest } from '../files/filesByRequest.ts';
import type { Printer } from '../files/printer.ts';
import { filed } from '../filed.ts';
import { machineAsked, settingAsked } from '../machineAsked.ts';
import type { ServedPorts } from '../servedPorts.ts';
import type { Site } from '../site.ts';
import { unitsAsked } from '../unitsAsked.ts';

/** Kerf and joints: the cards as files, what was measured on them, and a drawing that is moved by half the kerf. */
export const kerfRoutes = (site: Site, ports: ServedPorts, printer: Printer): void => {
  site.put(api.kerfCardFile, async ({ params: { kind }, query }) => {
    const machine = await machineAsked(ports, query.machineId);
    if (!machine.ok) return machine;
    const { material, materialKnown, thicknessMm, scorePct, scoreMmPerS } = query;
    const asked = {
      named: knownBy(materialKnown === 'true')({ material }),
      wish: wishOf(query),
      setting: settingAsked(query),
      ...(scorePct === undefined || scoreMmPerS === undefined
        ? {}
        : { scoring: { powerPct: scorePct, speedMmPerS: scoreMmPerS, passes: 1 } }),
      thicknessMm,
      machine: machine.value,
    };
    return filed(filesByRequest.kerf, asked, { kind, printer, ...unitsAsked(query) });
  });
  site.put(api.calcKerf, async ({ body }) => {
    const { tellKerf } = await import('../../core/kerf/tellKerf.ts');
    const file = parseKerfFile(body);
    if (!file.ok) return file;
    const told = tellKerf(file.value);
    return told.ok ? done(kerfResultFile(told.value, problemInWords)) : told;
  });
  site.put(
    api.growDrawing,
    async ({ body: { text, kerfMm, as }, gone }) => {
      const grown = await ports.until(gone).model.ask('growDrawing', { text, kerfMm });
      if (!grown.ok) return grown;
      const { drawing, parts, rest, lost, remarks } = grown.value;
      const { drawingText } = await import('../../formats/drawingText.ts');
      return done({
        version: 1 as const,
        growMm: kerfMm / 2,
        text: drawingText(drawing, as, `moved by half a kerf of ${String(kerfMm)} mm`),
        parts,
        rest,
        lost: lost.map(({ what, at: [x, y] }) => ({ what, at: [x, y] as const })),
        remarks: remarks.map((remark) => problemInWords(remark)),
      });
    },
    { bodyLimit: importBytesAtMost },
  );
};

type Query = z.output<typeof kerfCardQuery>;

/** The piece where nobody says: an offcut that four combs fit on. */
const usualPieceMm = [300, 200] as const;

const wishOf = (query: Query): KerfCardWish => {
  const { direction, kerfMm, strips } = query;
  if (query.card === 'slots')
    return {
      kind: 'slots',
      ...(direction === undefined ? {} : { direction }),
      ...(kerfMm === undefined ? {} : { kerfMm }),
    };
  const [widthMm, heightMm] = usualPieceMm;
  return {
    kind: 'comb',
    pieceMm: [query.pieceWidthMm ?? widthMm, query.pieceHeightMm ?? heightMm],
    places: query.places === '1' ? 1 : query.places === '2' ? 2 : 4,
    directions: direction === undefined ? combDirections : [direction],
    ...(strips === undefined ? {} : { strips }),
  };
};
