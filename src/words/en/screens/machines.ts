import type { MachineChangeKind } from '../../../core/machine/machineChange.ts';

/** The machines of a workshop: which one is meant, one more, and what was changed on one. */
export const machinesText = {
  which: 'Which machine?',
  cutOn: 'On which machine is it cut?',
  nameOf: ({ isExample, machine }: { isExample: boolean; machine: { name?: string } }) =>
    machine.name ?? (isExample ? 'The invented machine' : 'Machine without a name'),
  changes: {
    lens: 'new lens',
    'mirrors-cleaned': 'mirrors cleaned',
    tube: 'new tube',
    supply: 'new power supply',
    nozzle: 'new nozzle',
    aligned: 'beam aligned',
    moved: 'machine moved',
    other: 'something else',
  } satisfies Record<MachineChangeKind, string>,
  /** By a name that may come from anywhere. */
  what: (kind: string): string => {
    const known: Readonly<Record<string, string>> = machinesText.changes;
    return Object.hasOwn(known, kind) ? (known[kind] ?? kind) : kind;
  },
  changed: 'Something changed',
  changedMore:
    'A new lens, cleaned mirrors, another tube: cards from before teach less of what the machine cuts now. Note it, and the answers count with that.',
  noteOne: 'Note a change',
  whatChanged: 'What changed?',
  when: 'On which day?',
  noteIt: 'Note it',
  takeBack: 'Take back',
  takeBackAsk: 'Take it back, as if it had never been?',
  own: 'Your machines',
  ownMore: 'Each sheet belongs to one machine. With two or more you are asked which.',
  isUsual: 'New sheets are begun on this one.',
  makeUsual: 'Begin new sheets on this one',
  remove: 'Remove this machine',
  removeAsk: 'Remove it? Only a machine without sheets, kept settings and tests can go.',
  newName: 'Name of another machine',
  add: 'Add it',
  invented:
    'This machine is invented. It belongs to the example and goes with it; none of its figures reaches a sheet of yours.',
};
