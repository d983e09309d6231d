import { describe, expect, it } from 'vitest';
import { dataFolder } from './dataFolder.ts';
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
      dataFolder(environment, 'linux', '/home/kim');
    expect(linux({})).toBe('/home/kim/.local/share/throughcut');
    expect(linux({ THROUGHCUT_DATA: '' })).toBe('/home/kim/.local/share/throughcut');
    // XDG base directory specification: relative paths are to be ignored.
    expect(linux({ XDG_DATA_HOME: '/data' })).toBe('/data/throughcut');
    expect(linux({ XDG_DATA_HOME: 'data' })).toBe('/home/kim/.local/share/throughcut');
    expect(dataFolder({}, 'darwin', '/Users/kim')).toBe(
      '/Users/kim/Library/Application Support/Throughcut',
    );
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
