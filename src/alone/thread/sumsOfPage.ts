import type { Model, SumName, SumOutcome } from '../../app/sums/model.ts';
import { refused } from '../../core/problem.ts';
import type { FromPlace } from './messages.ts';

/** Sums that the page has made for the place where the workshop is kept: it opens their thread, and ends it if it must. */
export interface SumsOfPage {
  /** Asks until whoever wants them has gone. */
  readonly until: (gone: AbortSignal) => Model;
  readonly made: (id: number, outcome: SumOutcome<SumName>) => void;
}

export const sumsOfPage = (say: (message: FromPlace) => void): SumsOfPage => {
  const open = new Map<number, (outcome: SumOutcome<SumName>) => void>();
  let lastId = 0;
  return {
    until: (gone) => ({
      ask: (name, question) =>
        new Promise((resolve) => {
          // What comes back is of the sum that this id was given to.
          const settle = (outcome: SumOutcome<SumName>): void =>
            resolve(outcome as SumOutcome<typeof name>);
          if (gone.aborted) {
            settle(refused('sum-not-wanted'));
            return;
          }
          lastId += 1;
          const id = lastId;
          const leave = (): void => {
            if (!open.delete(id)) return;
            say({ kind: 'sum-unwanted', id });
            settle(refused('sum-not-wanted'));
          };
          gone.addEventListener('abort', leave, { once: true });
          open.set(id, (outcome) => {
            gone.removeEventListener('abort', leave);
            settle(outcome);
          });
          say({ kind: 'sum', id, name, question });
        }),
    }),
    made: (id, outcome) => {
      const answer = open.get(id);
      open.delete(id);
      answer?.(outcome);
    },
  };
};
