import { describe, expect, it } from 'vitest';

import { demoRequest } from '../../../test/fixtures/cardRequest.ts';
import { cardDrawing } from '../../core/card/cardDrawing.ts';
import type { CardRequest } from '../../core/card/cardRequest.ts';
import { designCard } from '../../core/card/designCard.ts';
import { writeSvg } from './writeSvg.ts';

const svgOf = (change: Partial<CardRequest> = {}): string => {
  const outcome = designCard({ ...demoRequest, ...change });
  if (!outcome.ok) throw new Error(outcome.problem.code);
  const { card } = outcome.value;
  return writeSvg(cardDrawing(card), `Test card ${card.code}`);
};

describe('a card as SVG', () => {
  it('says its size in mm and has one unit for one mm', () => {
    const [, width, height] =
      /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 \1 \2"/.exec(svgOf()) ?? [];
    expect(Number(width)).toBeGreaterThan(60);
    expect(Number(height)).toBeGreaterThan(40);
  });

  it('has one group a rung, named by its setting, marks first and outline last', () => {
    const svg = svgOf();
    const ids = [...svg.matchAll(/<g id="([^"]+)"/g)].map(([, id]) => id);
    expect(ids).toHaveLength(9);
    expect(ids[0]).toMatch(/^marks_90.0mmps_14pct_corner14$/);
    expect(ids[1]).toMatch(/^A_\d+\.\dmmps_34pct_corner34$/);
    expect(ids[8]).toMatch(/^outline_8.0mmps_34pct_corner34$/);
    for (const id of ids) expect(id).toMatch(/^[A-Za-z_][\w.-]*$/);
  });

  it('gives every id once, as XML asks', () => {
    const ids = [...svgOf().matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(ids).toEqual(expect.arrayContaining(['hint', 'hint-2']));
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('holds nothing that a control program may read in its own way: text, fills, transforms, styles', () => {
    const svg = svgOf();
    expect(svg).not.toMatch(/<text|transform=|style=|<style|<use|fill="(?!none)/);
    expect(new Set([...svg.matchAll(/<(\w+)/g)].map(([, tag]) => tag))).toEqual(
      new Set(['svg', 'title', 'g', 'path']),
    );
  });

  it.each<[string, Partial<CardRequest>]>([
    ['card-ladder-star', {}],
    ['card-two-way-key', { vary: 'speed-and-power', cellsEach: 1, shape: 'key', seed: 3 }],
    ['card-passes-comb', { vary: 'passes', shape: 'comb', seed: 2, sheetMm: [200, 120] }],
    ['card-slim-hook', { shape: 'hook', sheetMm: [75, 200], seed: 5, outline: 'none' }],
  ])('looks like the picture that was looked at: %s', async (name, change) => {
    await expect(svgOf(change)).toMatchFileSnapshot(`../../../test/golden/${name}.svg`);
  });
});
