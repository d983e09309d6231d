import type { Beliefs } from '../cutmodel/beliefs.ts';
import { beliefsAfter } from '../cutmodel/beliefsAfter.ts';
import type { CutStudy } from '../cutmodel/cutStudy.ts';
import type { EarlierSheet } from './earlierSheet.ts';
import { historyOf } from './historyOf.ts';

/** As many as a person opens in turn. */
const mostKept = 6;

/** What was learnt is the same for every tap on the same sheet: kept by what it was learnt from. */
const kept = new Map<string, Beliefs>();

/** What older sheets taught, given newest first. ~10 ms a sheet, and nothing when asked again. */
export const beliefsFrom = (
  { machine, stock }: Pick<CutStudy, 'machine' | 'stock'>,
  older: readonly EarlierSheet[],
): Beliefs => {
  const key = JSON.stringify([machine, stock, older]);
  const beliefs =
    kept.get(key) ??
    beliefsAfter(
      { machine, stock },
      [...older].reverse().map((sheet) => historyOf([sheet])),
    );
  kept.delete(key);
  kept.set(key, beliefs);
  for (const oldest of kept.keys()) {
    if (kept.size <= mostKept) break;
    kept.delete(oldest);
  }
  return beliefs;
};
