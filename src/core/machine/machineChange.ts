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

/** The last change of all; absent: none. */
export const lastChange = (changes: readonly MachineChange[]): MachineChange | undefined =>
  changes.reduce<MachineChange | undefined>(
    (last, each) =>
      last === undefined || Date.parse(each.at) >= Date.parse(last.at) ? each : last,
    undefined,
  );
