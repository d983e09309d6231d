import { join } from 'node:path';
import { runCommand } from '../program.ts';
import { refusedWith, type Fault } from './fault.ts';

const noHome: Fault = {
  what: 'a user without a home',
  wrongIn: async () => {
    const environment = { HOME: '', XDG_DATA_HOME: '', THROUGHCUT_DATA: '' };
    return process.platform === 'linux'
      ? refusedWith('no-home-folder', await runCommand(['export'], '', { environment }))
      : 'not here';
  },
};

const noPlace = (what: string, data: (folder: string) => string, code: string): Fault => ({
  what,
  wrongIn: async (folder) => [
    ...refusedWith(code, await runCommand(['serve'], data(folder))),
    ...refusedWith(code, await runCommand(['export'], data(folder))),
  ],
});

const long = 'n'.repeat(300);

const longTarget: Fault = {
  what: 'a name that is too long, for an export',
  wrongIn: async (folder) =>
    refusedWith(
      'file-name-too-long',
      await runCommand(['export', '--to', join(folder, long)], join(folder, 'data')),
    ),
};

/** Places and names that cannot be. */
export const noPlaces: readonly Fault[] = [
  noHome,
  noPlace('a data folder in /proc', () => '/proc/somewhere', 'store-no-such-place'),
  noPlace('a data folder whose name is too long', (at) => join(at, long), 'store-name-too-long'),
  longTarget,
];
