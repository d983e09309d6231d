import { describe, expect, it } from 'vitest';

import { boxAround, gapBetween, liesWithin } from '../path/box.ts';
import { demoRequest } from '../../../test/fixtures/cardRequest.ts';
import { cardDrawing } from './cardDrawing.ts';
import { colourTrial } from './colourTrial.ts';
import { designCard } from './designCard.ts';

describe('the colour trial', () => {
  it('has one strip for every colour that a card of so many rungs uses, and no other', () => {
    const designed = designCard(demoRequest);
    if (!designed.ok) throw new Error(designed.problem.code);
    const used = new Set(cardDrawing(designed.value.card).layers.map(({ colour }) => colour));
    const tried = colourTrial(6).layers.map(({ colour }) => colour);
    expect(new Set(tried)).toEqual(used);
    expect(tried).toHaveLength(used.size);
  });

  it('keeps its strips apart and on the page, however many', () => {
    for (const rungs of [1, 6, 20, 60]) {
      const trial = colourTrial(rungs);
      expect(trial.layers).toHaveLength(rungs + 2);
      const page = { leftMm: 0, bottomMm: 0, rightMm: trial.widthMm, topMm: trial.heightMm };
      const boxes = trial.layers.flatMap(({ polylines }) => boxAround(polylines) ?? []);
      boxes.forEach((a, i) => {
        expect(liesWithin(a, page)).toBe(true);
        for (const b of boxes.slice(i + 1)) expect(gapBetween(a, b)).toBeGreaterThan(0.5);
      });
    }
  });
});
