import { describe, expect, it } from 'vitest';
import { fallsShort } from '../night/nightPart.ts';
import { examineFiles } from './filesPart.ts';

describe('the examination of files, a smaller part of what the night runs', () => {
  it('reaches every figure: own files unfaulted, other readers agreeing, words right, changed files judged rightly', () => {
    const figures = [...examineFiles({ cards: 6, changedCards: 1, seed: 5 })];
    expect(figures.filter(fallsShort)).toEqual([]);
    const valueOf = (what: string): number =>
      figures.find((figure) => figure.what === what)?.value ?? 0;
    expect(valueOf('files held against the SVG by other readers')).toBeGreaterThanOrEqual(6);
    expect(valueOf('cells whose engraved words were read')).toBeGreaterThanOrEqual(24);
    expect(valueOf('harmless files') + valueOf('spoilt files')).toBeGreaterThanOrEqual(100);
  }, 240_000);
});
