import type { Ports } from '../../app/ports/ports.ts';
import type { Machine } from '../../core/machine/machine.ts';
import type { Stock } from '../../core/stock/stock.ts';
import { stockThicknessMm } from '../../core/stock/stockThickness.ts';
import { bounds } from '../../formats/saved/limits.ts';
import { knownBy } from '../../formats/saved/materialKnown.ts';
import { api } from '../../wire/api.ts';
import { filesByRequest } from '../files/filesByRequest.ts';
import type { Printer } from '../files/printer.ts';
import { filed } from '../filed.ts';
import type { Site } from '../site.ts';
import { unitsAsked } from '../unitsAsked.ts';

/** The ramp by which the focus is found, as a file. */
export const focusRoutes = (site: Site, ports: Ports, printer: Printer): void => {
  site.put(api.rampFile, async ({ params: { kind }, query }) => {
    const {
      material,
      materialKnown,
      lengthMm,
      blockMm,
      nozzleGapMm,
      powerPct,
      speedMmPerS,
      studyId,
    } = query;
    const { machine, stock } = await machineOf(ports, studyId);
    const thicknessMm =
      query.thicknessMm ?? (stock?.material === material ? stockThicknessMm(stock) : undefined);
    const strip = {
      ...knownBy(materialKnown === 'true')({ material }),
      ...(thicknessMm === undefined ? {} : { thicknessMm }),
    };
    const wish = {
      ramp: { lengthMm, blockMm, nozzleGapMm },
      setting: { powerPct, speedMmPerS, passes: 1 },
      machine,
    };
    return filed(filesByRequest.ramp, { strip, wish }, { kind, printer, ...unitsAsked(query) });
  });
};

/** Without a study nobody has described the machine here: the page that asks knows its limits. */
const machineOf = async (
  { store }: Pick<Ports, 'store'>,
  studyId: string | undefined,
): Promise<{ readonly machine: Machine; readonly stock?: Stock }> => {
  const stored =
    studyId === undefined ? undefined : await store.read((session) => session.study(studyId));
  const [slowest, fastest] = bounds.speedMmPerS;
  return stored?.study ?? { machine: { maxPowerPct: 100, speedRangeMmPerS: [slowest, fastest] } };
};
