import { describe, expect, it } from 'vitest';
import { parseWatts, showWatts } from './watts.ts';

describe('what a tube is sold as', () => {
  it('is read with its unit and without, and not from a power setting', () => {
    for (const text of ['60', '60 W', '60 watts', '60w'])
      expect(parseWatts(text)).toEqual({ ok: true, value: 60 });
    expect(parseWatts('60 %').ok).toBe(false);
    expect(showWatts(60)).toMatch(/^60\sW$/);
  });
});
