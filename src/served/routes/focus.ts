import type { Ports } from '../../app/ports/ports.ts';
import type { Machine } from '../../core/machine/machine.ts';
import { done } from '../../core/problem.ts';
import type { Stock } from '../../core/stock/stock.ts';
import { stockThicknessMm } from '../../core/stock/stockThickness.ts';
import { bounds } from '../../formats/saved/limits.ts';
import { knownBy } from '../../formats/saved/materialKnown.ts';
import { api } from '../../wire/api.ts';
import type { DrawRampFile } from '../files/cardFile.ts';
import { FileAnswer } from '../fileAnswer.ts';
import type { Site } from '../site.ts';
import { unitsAsked } from '../unitsAsked.ts';

/** The ramp by which the focus is found, as a file. */
export const focusRoutes = (site: Site, ports: Ports, rampFile: DrawRampFile): void => {
  site.put(api.rampFile, async ({ params: { kind }, query }) => {
    const { designRamp } = await import('../../app/card/designRamp.ts');
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
    const card = designRamp(strip, {
      ramp: { lengthMm, blockMm, nozzleGapMm },
      setting: { powerPct, speedMmPerS, passes: 1 },
      machine,
    });
    if (!card.ok) return card;
    const file = await rampFile({ card: card.value, machine, ...unitsAsked(query) }, kind);
    if (!file.ok) return file;
    return done(new FileAnswer({ ...file.value, name: `focus-ramp.${kind}` }));
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
