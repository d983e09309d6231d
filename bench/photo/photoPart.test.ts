import { describe, expect, it } from 'vitest';
import { fallsShort } from '../night/nightPart.ts';
import { readMany } from './photoPart.ts';

describe('rendered photographs of cards', () => {
  it('are read as what they show, the first of the night', { timeout: 240_000 }, async () => {
    const short: string[] = [];
    const figures: string[] = [];
    for await (const figure of readMany({ each: 1, seed: 2 })) {
      figures.push(figure.what);
      if (fallsShort(figure))
        short.push(`${figure.what}: ${String(figure.value)} ${figure.cases?.join() ?? ''}`);
    }
    expect(short).toEqual([]);
    expect(figures.length).toBeGreaterThan(10);
  });
});
