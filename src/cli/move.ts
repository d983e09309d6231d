import { systemClock } from '../host/clock.ts';
import { placeWritten, storePlace } from '../host/storePlace.ts';
import { moveStore } from '../store/moveStore.ts';
import { printJson, type ExitCode } from './output.ts';

/** `move`: carries the workshop to another place, whatever engine is at either; what was at the first stays there. */
export const runMove = async ({ to }: { readonly to: string }): Promise<ExitCode> => {
  const moved = await moveStore({
    from: storePlace(),
    to: placeWritten(to),
    at: systemClock.now(),
  });
  printJson({
    version: 1,
    moved: moved.place,
    rows: Object.fromEntries(moved.rows.map(({ table, rows }) => [table, rows])),
  });
  return 0;
};
