import { describe, expect, it } from 'vitest';
import { dataFolder } from './dataFolder.ts';
import { HostError } from './hostError.ts';
import { randomIds } from './ids.ts';
import { systemClock } from './clock.ts';
import { isCardCode } from '../core/card/cardCode.ts';
import { code, id, isoTime } from '../formats/saved/bounds.ts';

describe('the data folder', () => {
  it('is the one that was named, counted from where the user called', () => {
    expect(dataFolder({ THROUGHCUT_DATA: '/srv/cut' })).toBe('/srv/cut');
    expect(dataFolder({ THROUGHCUT_DATA: 'here', INIT_CWD: '/home/kim' })).toBe('/home/kim/here');
  });

  it('else lies in the user’s own data directory', () => {
    const linux = (environment: Record<string, string>) =>
      dataFolder(environment, 'linux', () => '/home/kim');
    expect(linux({})).toBe('/home/kim/.local/share/throughcut');
    expect(linux({ THROUGHCUT_DATA: '' })).toBe('/home/kim/.local/share/throughcut');
    // XDG base directory specification: relative paths are to be ignored.
    expect(linux({ XDG_DATA_HOME: '/data' })).toBe('/data/throughcut');
    expect(linux({ XDG_DATA_HOME: 'data' })).toBe('/home/kim/.local/share/throughcut');
    expect(dataFolder({}, 'darwin', () => '/Users/kim')).toBe(
      '/Users/kim/Library/Application Support/Throughcut',
    );
  });
});

describe('a user without a home', () => {
  const none = () => {
    throw new Error('uv_os_homedir returned ENOENT');
  };

  it('is told to name a folder, and needs no home once one is named', () => {
    expect(() => dataFolder({}, 'linux', none)).toThrow(HostError);
    expect(() => dataFolder({}, 'linux', () => '')).toThrow(HostError);
    expect(dataFolder({ THROUGHCUT_DATA: '/srv/cut' }, 'linux', none)).toBe('/srv/cut');
    expect(dataFolder({ XDG_DATA_HOME: '/data' }, 'linux', none)).toBe('/data/throughcut');
  });
});

describe('this computer', () => {
  it('makes ids, codes and times that the border takes', () => {
    expect(id.safeParse(randomIds.newId()).success).toBe(true);
    const made = randomIds.newCode();
    expect(code.safeParse(made).success && isCardCode(made)).toBe(true);
    expect(isoTime.safeParse(systemClock.now()).success).toBe(true);
  });
});
