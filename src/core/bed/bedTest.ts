import type { MachineTest, Unkept } from '../machineTests.ts';
import type { Bed } from '../machine/machine.ts';
import type { Setting } from '../machine/setting.ts';
import type { Grade } from '../reading/grade.ts';
import { bedReport, type BedReport } from './bedVerdict.ts';
import { forEachPlace, type BedPlace } from './place.ts';
import type { GradesByPlace, Scatter } from './placeEffects.ts';

/** One graded cell of the four corners. Spoilt and unread ones are left out. */
export interface BedTestCell {
  /** As its own words name it: FL1. */
  readonly id: string;
  readonly place: BedPlace;
  readonly grade: Grade;
}

/** The four corners of a bed, cut and read on one day. */
export interface BedTest extends MachineTest {
  readonly bed: Bed;
  /** What all cells were cut with. */
  readonly setting: Setting;
  /** What was known of the sheet that day: later cards do not change what the test said. */
  readonly scatter: Scatter;
  readonly cells: readonly BedTestCell[];
}

/** What was read, before anybody keeps it. */
export type UnkeptBedTest = Unkept<BedTest>;

/** How many cells of each place got each grade. */
export const gradesOf = (cells: readonly Pick<BedTestCell, 'place' | 'grade'>[]): GradesByPlace =>
  forEachPlace((place) => {
    const count = (grade: Grade): number =>
      cells.filter((cell) => cell.place === place && cell.grade === grade).length;
    return { out: count('out'), hangs: count('hangs'), stays: count('stays') };
  });

/** What a test says: the same every time it is asked. */
export const bedTestReport = ({ cells, scatter }: Pick<BedTest, 'cells' | 'scatter'>): BedReport =>
  bedReport(gradesOf(cells), scatter);
