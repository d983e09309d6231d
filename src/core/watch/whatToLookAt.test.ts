import { describe, expect, it } from 'vitest';
import { whatToLookAt } from './whatToLookAt.ts';

describe('what to look at', () => {
  // The order is common practice, no source: what costs nothing first, the tube last.
  it('goes from the cheapest to the tube where it is the laser', () => {
    const looks = whatToLookAt('laser');
    expect(looks.slice(0, 4)).toEqual(['lens', 'water', 'focus', 'air']);
    expect(looks.at(-1)).toBe('tube');
  });

  it('looks to what feeds the tube first where the meter’s curve moved, and leaves the meter out where it did not', () => {
    expect(whatToLookAt('laser', 'lower').slice(0, 3)).toEqual(['controller', 'wiring', 'supply']);
    expect(whatToLookAt('laser', 'same')).not.toContain('meter');
  });

  it('looks at the wood for wood, at both for both, and for nothing where nothing changed', () => {
    expect(whatToLookAt('wood')).toEqual(['thickness', 'moisture', 'batch']);
    expect(whatToLookAt('unclear')).toEqual(whatToLookAt('both'));
    expect(whatToLookAt('both')).toEqual(expect.arrayContaining(['lens', 'moisture', 'tube']));
    expect(whatToLookAt('neither')).toEqual(['count-on']);
  });

  it('names nothing twice', () => {
    for (const how of ['lower', 'fires-later', 'bent', 'same', undefined] as const) {
      const looks = whatToLookAt('both', how);
      expect(new Set(looks).size).toBe(looks.length);
    }
  });
});
