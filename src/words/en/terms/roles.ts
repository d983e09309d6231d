import type { LeastRole, Role } from '../../../core/role.ts';

/** The three roles: what each is called, and what whoever has it may do. */
export const roleText = {
  is: {
    'reads-and-counts': 'reads and counts',
    decides: 'decides',
    'runs-the-place': 'runs the place',
  } satisfies Record<Role, string>,
  /** Behind “may”. */
  may: {
    'reads-and-counts': 'read and count',
    decides: 'decide on settings',
    'runs-the-place': 'run the place',
  } satisfies Record<Role, string>,
  more: {
    'reads-and-counts':
      'Looks at everything, reads and photographs cards, counts parts and makes notes. For an apprentice.',
    decides:
      'Also designs cards, keeps and changes settings, runs orders, says what sheet it is and tests the machine.',
    'runs-the-place':
      'Also says what the machine may do, takes in files of other workshops, and lets phones in and out.',
  } satisfies Record<Role, string>,
  least: {
    anyone: 'anyone, let in or not',
    'reads-and-counts': 'whoever is let in',
    decides: 'whoever decides or runs the place',
    'runs-the-place': 'whoever runs the place',
  } satisfies Record<LeastRole, string>,
  /** In the place of what this device may not do. */
  notHere: (who: string) => `This is for ${who}.`,
  toSay: (field: string, who: string) => `with “${field}”: ${who}`,
};
