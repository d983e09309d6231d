import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { api } from './api.ts';
import { addressOf } from './route.ts';

describe('the address of a route', () => {
  it('has its names filled in and its query behind', () => {
    expect(addressOf(api.home)).toBe('/api/home');
    const file = { id: 's1', code: 'K7QX', kind: 'svg' };
    expect(addressOf(api.cardFile, file)).toBe('/api/studies/s1/cards/K7QX/card.svg');
    const query = { cellsWanted: 12, settingsAtMost: undefined };
    expect(addressOf(api.proposeNextCard, { id: 's1' }, query)).toBe(
      '/api/studies/s1/nextcard?cellsWanted=12',
    );
  });

  it('lets nothing out of its place', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        const address = new URL(addressOf(api.searchBook, {}, { text }), 'http://here');
        expect(address.pathname).toBe('/api/book');
        expect(address.searchParams.get('text')).toBe(text);
      }),
    );
    expect(addressOf(api.getStudy, { id: '../x?y' })).toBe('/api/studies/..%2Fx%3Fy');
  });

  it('is there once for each method', () => {
    const all = Object.values(api).map(({ method, path }) => `${method} ${path}`);
    expect(new Set(all).size).toBe(all.length);
  });
});
