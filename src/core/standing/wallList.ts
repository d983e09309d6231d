import { stockOnMachine } from '../book/keptStock.ts';
import type { ProvenSetting } from '../book/provenSetting.ts';
import type { Kerf } from '../kerf/kerf.ts';
import { kerfTestSays, kerfTestsOf, type KerfTest } from '../kerf/kerfTest.ts';
import type { WorkshopMachine } from '../machine/workshopMachine.ts';
import { marksOf, type KeptMarks, type MarkTest } from '../marking/markTest.ts';
import type { Standing } from './standing.ts';

/** A kept setting, and how it stands. */
export interface StandingEntry {
  readonly entry: ProvenSetting;
  readonly standing: Standing;
}

/** One line of the wall list. */
export interface WallLine extends StandingEntry {
  /** Where one was kept with the setting: the latest. */
  readonly kerf?: Kerf;
  /** That are kept of its material and thickness. */
  readonly marks: KeptMarks;
}

/** What was kept beside settings, the latest first. */
export interface BesideSettings {
  readonly kerfTests: readonly KerfTest[];
  readonly markTests: readonly MarkTest[];
  /** As they are by now. */
  readonly machines: readonly Pick<WorkshopMachine, 'id' | 'machine'>[];
}

/** The kept settings of one machine. */
export interface WallMachine {
  /** Absent: it has no name. */
  readonly name?: string;
  readonly lines: readonly WallLine[];
}

/** What hangs on the wall: kept settings by machine, by material and thickness, the last kept first among equals. */
export const wallList = (
  entries: readonly StandingEntry[],
  { kerfTests, markTests, machines: known }: BesideSettings,
): readonly WallMachine[] => {
  const machines = new Map<string, { name: string | undefined; lines: WallLine[] }>();
  for (const found of entries) {
    const { machineId, machine } = found.entry.holdsFor;
    const key = machineId ?? machine ?? '';
    const group = machines.get(key) ?? { name: machine, lines: [] };
    const kerf = kerfOf(found.entry, kerfTests);
    const now = known.find(({ id }) => id === machineId)?.machine;
    const marks = marksOf(stockOnMachine(found.entry.holdsFor), markTests, now);
    group.lines.push({ ...found, ...(kerf === undefined ? {} : { kerf }), marks });
    machines.set(key, group);
  }
  return [...machines.values()]
    .toSorted((a, b) => compare(a.name ?? '', b.name ?? ''))
    .map(({ name, lines }) => ({
      ...(name === undefined ? {} : { name }),
      lines: lines.toSorted(inOrder),
    }));
};

const kerfOf = (
  { setting, holdsFor }: ProvenSetting,
  tests: readonly KerfTest[],
): Kerf | undefined => {
  for (const test of kerfTestsOf({ setting, ...stockOnMachine(holdsFor) }, tests)) {
    const told = kerfTestSays(test);
    if (told.ok && told.value.kerf !== undefined) return told.value.kerf;
  }
  return undefined;
};

const inOrder = ({ entry: a }: WallLine, { entry: b }: WallLine): number =>
  compare(a.holdsFor.material, b.holdsFor.material) ||
  a.holdsFor.nominalThicknessMm - b.holdsFor.nominalThicknessMm ||
  compare(b.keptAt, a.keptAt);

/** By code points, so that every computer orders alike. */
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
