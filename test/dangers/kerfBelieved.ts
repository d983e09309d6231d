import { parseKerfCardRequest } from '../../src/formats/kerfCardRequestFile.ts';
import { stripChangeover } from '../../src/core/study/stripChangeover.ts';
import type { FilesMade } from './whatFires.ts';

/** The changeover that is believed of the sheet of a comb or slot card: its files do not hold it. */
export const kerfBelieved = (ask: object): NonNullable<FilesMade['believed']> => {
  const request = parseKerfCardRequest(ask);
  if (!request.ok) throw new Error(request.problem.code);
  const { named, thicknessMm, machine, setting } = request.value.asked;
  const { powerPct } = setting;
  const believed = stripChangeover({ material: named.material, thicknessMm }, machine);
  return { powerPct, v50MmPerS: believed(powerPct).v50MmPerS };
};
