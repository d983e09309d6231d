/** What may be changed on a machine so that cards from before teach less of what it cuts now. */
export const machineChangeKinds = [
  'lens',
  'mirrors-cleaned',
  'tube',
  'supply',
  'nozzle',
  'aligned',
  'moved',
  'other',
] as const;

export type MachineChangeKind = (typeof machineChangeKinds)[number];

/** Something that was changed on a machine, and when. */
export interface MachineChange {
  readonly id: string;
  /** ISO 8601, UTC: when it was done, not when it was noted. */
  readonly at: string;
  readonly what: MachineChangeKind;
  readonly note?: string;
}

/** The last change up to a moment; absent: none. Changes may stand in any order. O(n). */
export const changeBefore = (
  changes: readonly MachineChange[],
  at: string,
): MachineChange | undefined =>
  newest(changes.filter((change) => instant(change.at) <= instant(at)));

/** The last change of all; absent: none. */
export const lastChange = (changes: readonly MachineChange[]): MachineChange | undefined =>
  newest(changes);

const newest = (changes: readonly MachineChange[]): MachineChange | undefined =>
  changes.reduce<MachineChange | undefined>(
    (last, each) => (last === undefined || instant(each.at) >= instant(last.at) ? each : last),
    undefined,
  );

const instant = (at: string): number => Date.parse(at);
