import { problemOf } from '../core/problem.ts';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { HostError } from './hostError.ts';
import { fromWhereCalled } from './paths.ts';

type Environment = Readonly<Record<string, string | undefined>>;

/**
 * Where a workshop's things are kept: THROUGHCUT_DATA where it is set, else a folder in the user's own data directory as
 * this kind of system has it (XDG_DATA_HOME or ~/.local/share; ~/Library/Application Support; %LOCALAPPDATA%). Throws
 * `HostError`: `no-home-folder`.
 */
export const dataFolder = (
  environment: Environment = process.env,
  platform: NodeJS.Platform = process.platform,
  home: () => string = homedir,
): string => {
  const named = environment['THROUGHCUT_DATA'];
  if (named !== undefined && named !== '') return fromWhereCalled(named, environment);
  if (platform === 'darwin')
    return join(homeFrom(home), 'Library', 'Application Support', 'Throughcut');
  if (platform === 'win32')
    return join(
      environment['LOCALAPPDATA'] ?? join(homeFrom(home), 'AppData', 'Local'),
      'Throughcut',
    );
  const shared = environment['XDG_DATA_HOME'];
  // The XDG base directory specification: a relative path there is to be ignored.
  const base = shared?.startsWith('/') === true ? shared : join(homeFrom(home), '.local', 'share');
  return join(base, 'throughcut');
};

/** The data file inside that folder. */
export const dataFile = (folder: string): string => join(folder, 'workshop.sqlite');

/** A user without a home (some services have none) must say where. */
const homeFrom = (home: () => string): string => {
  try {
    const found = home();
    if (found !== '') return found;
  } catch (cause) {
    throw new HostError(problemOf('no-home-folder'), cause);
  }
  throw new HostError(problemOf('no-home-folder'));
};
