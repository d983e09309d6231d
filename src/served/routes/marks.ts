import { usualLineSpacingMm } from '../../core/marking/mark.ts';
import { andThen, done } from '../../core/problem.ts';
import { parseEvenShades } from '../../formats/evenShadesFile.ts';
import { parseMarksFile } from '../../formats/marksFile.ts';
import { usualSteps } from '../../formats/markStripRequestFile.ts';
import { knownBy } from '../../formats/saved/materialKnown.ts';
import { markApi as api } from '../../wire/markApi.ts';
import type { DrawMarkStripFile } from '../files/cardFile.ts';
import { marksSaid, shadesSaid } from '../files/marksSaid.ts';
import { FileAnswer } from '../fileAnswer.ts';
import { machineAsked, settingAsked } from '../machineAsked.ts';
import type { ServedPorts } from '../servedPorts.ts';
import type { Site } from '../site.ts';
import { unitsAsked } from '../unitsAsked.ts';

/** Marks beside a cut: where to begin, strips as files, and even shades from a strip that was read. */
export const markRoutes = (
  site: Site,
  ports: ServedPorts,
  markStripFile: DrawMarkStripFile,
): void => {
  site.put(api.markStripFile, async ({ params: { kind }, query }) => {
    const { designMarkStrip } = await import('../../app/card/designMarkStrip.ts');
    const machine = await machineAsked(ports, query.machineId);
    if (!machine.ok) return machine;
    const { material, materialKnown, thicknessMm } = query;
    const { strip, steps = usualSteps, lineSpacingMm = usualLineSpacingMm } = query;
    const made = designMarkStrip({
      wish: { kind: strip, steps, lineSpacingMm },
      cut: settingAsked(query),
      stock: {
        ...knownBy(materialKnown === 'true')({ material }),
        nominalThicknessMm: thicknessMm,
      },
      machine: machine.value,
    });
    if (!made.ok) return made;
    const file = await markStripFile({ ...made.value, ...unitsAsked(query) }, kind);
    return file.ok ? done(new FileAnswer({ ...file.value, name: `marking-strip.${kind}` })) : file;
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
