import { z } from 'zod';
import { usualAssumptions, type CostAssumptions } from '../../core/cost/partCost.ts';
import { browserShelf } from './browserShelf.ts';
import { keepOn } from './shelf.ts';

const key = 'throughcut.cost';

const figure = z.number().nonnegative().max(1e9);
const shape = z.object({
  perHour: figure,
  tubePrice: figure,
  tubeHoursAtRated: z.number().positive().max(1e9),
  lifeExponent: z.number().nonnegative().max(10),
  sheetPerPart: figure,
  knifeSeconds: figure,
});

/** What was last assumed on this device; the usual figures where nothing was, or what was kept cannot be read. */
export const keptAssumptions = (): CostAssumptions => {
  try {
    const read = shape.safeParse(JSON.parse(browserShelf.getItem(key) ?? 'null'));
    return read.success ? read.data : usualAssumptions;
  } catch {
    return usualAssumptions;
  }
};

export const keepAssumptions = (assumed: CostAssumptions): void => {
  keepOn(browserShelf, key, JSON.stringify(assumed));
};
