import { usualLineSpacingMm } from '../../core/marking/mark.ts';
import { andThen, done } from '../../core/problem.ts';
import { parseEvenShades } from '../../formats/evenShadesFile.ts';
import { parseMarksFile } from '../../formats/marksFile.ts';
import { usualSteps } from '../../formats/markStripRequestFile.ts';
import { knownBy } from '../../formats/saved/materialKnown.ts';
import { markApi as api } from '../../wire/markApi.ts';
import { filesByRequest } from '../files/filesByRequest.ts';
import { marksSaid, shadesSaid } from '../files/marksSaid.ts';
import type { Printer } from '../files/printer.ts';
import { filed } from '../filed.ts';
import { machineAsked, settingAsked } from '../machineAsked.ts';
import type { ServedPorts } from '../servedPorts.ts';
import type { Site } from '../site.ts';
import { unitsAsked } from '../unitsAsked.ts';

/** Marks beside a cut: where to begin, strips as files, and even shades from a strip that was read. */
export const markRoutes = (site: Site, ports: ServedPorts, printer: Printer): void => {
  site.put(api.markStripFile, async ({ params: { kind }, query }) => {
    const machine = await machineAsked(ports, query.machineId);
    if (!machine.ok) return machine;
    const { material, materialKnown, thicknessMm } = query;
    const { strip, steps = usualSteps, lineSpacingMm = usualLineSpacingMm } = query;
    const asked = {
      wish: { kind: strip, steps, lineSpacingMm },
      cut: settingAsked(query),
      stock: {
        ...knownBy(materialKnown === 'true')({ material }),
        nominalThicknessMm: thicknessMm,
      },
      machine: machine.value,
    };
    return filed(filesByRequest.mark, asked, { kind, printer, ...unitsAsked(query) });
  });
  site.put(api.calcMarks, async ({ body }) => {
    const { beginMarks } = await import('../../app/card/beginMarks.ts');
    return andThen(parseMarksFile(body), (asked) =>
      andThen(beginMarks(asked), (begun) => done(marksSaid(begun))),
    );
  });
  site.put(api.calcShades, async ({ body }) => {
    const { tellEvenShades } = await import('../../app/card/tellEvenShades.ts');
    return andThen(parseEvenShades(body), (asked) =>
      andThen(tellEvenShades(asked), (told) => done(shadesSaid(told, asked.strip.lineSpacingMm))),
    );
  });
};
