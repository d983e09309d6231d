import type { MachineChange, MachineChangeKind } from '../machine/machineChange.ts';
import type { WatchPoint } from './watchChart.ts';

/** Something was changed on the machine between two counts. */
export interface MachineChangeOnChart {
  /** Place among the counts of the first one since; as many as there are counts: none was counted since. */
  readonly atPoint: number;
  readonly at: string;
  readonly what: MachineChangeKind;
}

/** The changes of a machine since a setting was kept, oldest first, each before the first count since it. O(changes × points). */
export const machineChangesAmong = (
  points: readonly Pick<WatchPoint, 'at'>[],
  changes: readonly MachineChange[],
  keptAt: string,
): readonly MachineChangeOnChart[] =>
  changes
    .filter(({ at }) => Date.parse(at) > Date.parse(keptAt))
    .sort((a, b) => Date.parse(a.at) - Date.parse(b.at))
    .map(({ at, what }) => {
      const since = points.findIndex((point) => Date.parse(point.at) >= Date.parse(at));
      return { atPoint: since < 0 ? points.length : since, at, what };
    });
