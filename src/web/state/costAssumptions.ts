import { z } from 'zod';
import { between } from '../../formats/saved/bounds.ts';
import { bounds } from '../../formats/saved/limits.ts';
import { usualAssumptions, type CostAssumptions } from '../../core/cost/partCost.ts';
import { browserShelf } from './browserShelf.ts';
import { keepOn } from './shelf.ts';

const key = 'throughcut.cost';

const figure = between(bounds.figure);
/** What is assumed, as this browser keeps it. */
export const costAssumptionsShape = z.object({
  perHour: figure,
  tubePrice: figure,
  tubeHoursAtRated: figure.positive(),
  lifeExponent: between(bounds.lifeExponent),
  sheetPerPart: figure,
  knifeSeconds: figure,
});

/** What was last assumed on this device; the usual figures where nothing was, or what was kept cannot be read. */
export const keptAssumptions = (): CostAssumptions => {
  try {
    const read = costAssumptionsShape.safeParse(JSON.parse(browserShelf.getItem(key) ?? 'null'));
    return read.success ? read.data : usualAssumptions;
  } catch {
    return usualAssumptions;
  }
};

export const keepAssumptions = (assumed: CostAssumptions): void => {
  keepOn(browserShelf, key, JSON.stringify(assumed));
};
