import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { demoRequest } from '../../../test/fixtures/cardRequest.ts';
import { boxAround, gapBetween, liesWithin, type Box } from '../path/box.ts';
import { isClosed, segmentsOf } from '../path/polyline.ts';
import { cardDrawing, type CardDrawing } from './cardDrawing.ts';
import type { CardRequest } from './cardRequest.ts';
import { designCard } from './designCard.ts';
import { parseLayerName } from './settingWords.ts';
import { testShapeNames } from './testShapes.ts';

const drawn = (change: Partial<CardRequest> = {}): CardDrawing | undefined => {
  const outcome = designCard({ ...demoRequest, ...change });
  return outcome.ok ? cardDrawing(outcome.value.card) : undefined;
};
const demo = (): CardDrawing => {
  const drawing = drawn();
  if (drawing === undefined) throw new Error('the demo card does not fit');
  return drawing;
};

/** The boxes of everything that is drawn, save what is meant to lie within something else. */
const boxes = (drawing: CardDrawing): readonly { readonly name: string; readonly box: Box }[] =>
  drawing.layers
    .flatMap((layer) => layer.parts)
    .filter(({ of }) => of.what !== 'outline')
    .flatMap(({ of, polylines }) => {
      // A notch is an angle, whose box is mostly empty: each leg by itself. Several hints: each line by itself.
      const groups =
        of.what === 'notch'
          ? polylines.flatMap((line) => segmentsOf(line).map((leg) => [leg]))
          : of.what === 'hint'
            ? polylines.map((line) => [line])
            : [polylines];
      const name = 'cell' in of ? `${of.what} ${of.cell}` : of.what;
      return groups.flatMap((lines) => {
        const box = boxAround(lines);
        return box === undefined ? [] : [{ name, box }];
      });
    });

const requests = fc.record({
  seed: fc.integer({ min: 0, max: 1000 }),
  shape: fc.constantFrom(...testShapeNames),
  sizeMm: fc.integer({ min: 8, max: 30 }),
  thicknessMm: fc.double({ min: 1, max: 12, noNaN: true }),
  cellsEach: fc.integer({ min: 1, max: 3 }),
  settingsAtMost: fc.integer({ min: 1, max: 9 }),
  sheetMm: fc.constantFrom<[number, number]>([120, 90], [90, 200], [300, 300]),
});

describe('the drawing of a card', () => {
  it('is made once, and anew for a card that was changed', () => {
    const outcome = designCard(demoRequest);
    if (!outcome.ok) throw new Error('the demo card does not fit');
    const { card } = outcome.value;
    expect(cardDrawing(card)).toBe(cardDrawing(card));
    const other = cardDrawing({ ...card, code: 'XXXX' });
    expect(other).not.toEqual(cardDrawing(card));
    expect(cardDrawing(card, 'before')).toEqual(cardDrawing(structuredClone(card), 'before'));
  });
});

describe('a drawn card', () => {
  it('has nothing that overlaps anything else', () => {
    fc.assert(
      fc.property(requests, (change) => {
        const drawing = drawn(change);
        if (drawing === undefined) return;
        const all = boxes(drawing);
        all.forEach((a, i) => {
          for (const b of all.slice(i + 1)) {
            const inside =
              [a.name, b.name].includes('hint') && [a.name, b.name].includes('write-in');
            const twin = a.name === b.name && ['hint', 'notch'].includes(a.name);
            if (inside || twin) continue;
            expect(gapBetween(a.box, b.box), `${a.name} and ${b.name}`).toBeGreaterThan(0.4);
          }
        });
      }),
      { numRuns: 60 },
    );
  });

  it('stays within its edges', () => {
    fc.assert(
      fc.property(requests, (change) => {
        const drawing = drawn(change);
        if (drawing === undefined) return;
        const edges = { leftMm: 0, bottomMm: 0, rightMm: drawing.widthMm, topMm: drawing.heightMm };
        for (const { name, box } of boxes(drawing)) expect(liesWithin(box, edges), name).toBe(true);
      }),
      { numRuns: 40 },
    );
  });

  it('starts with words and marks, then the rungs by letter, and ends with window and outline (common practice, no source)', () => {
    const layers = demo().layers.map(({ kind, rung }) => rung ?? kind);
    expect(layers).toEqual(['marks', 'A', 'B', 'C', 'D', 'E', 'F', 'window', 'outline']);
  });

  it('has one closed line for each cell, on the layer whose name spells its setting', () => {
    const outcome = designCard(demoRequest);
    if (!outcome.ok) throw new Error(outcome.problem.code);
    const { card } = outcome.value;
    const drawing = cardDrawing(card);
    for (const cell of card.cells) {
      const layer = drawing.layers.find(({ rung }) => rung === cell.rung);
      const part = layer?.parts.find(({ of }) => of.what === 'cell' && of.cell === cell.id);
      expect(part?.polylines).toHaveLength(1);
      expect(part?.polylines.every(isClosed)).toBe(true);
      const setting = card.rungs.find(({ letter }) => letter === cell.rung)?.setting;
      expect(parseLayerName(layer?.name ?? '')).toEqual({ label: cell.rung, setting });
    }
  });

  it('leaves the patch whole: no line enters it', () => {
    const outcome = designCard(demoRequest);
    if (!outcome.ok) throw new Error(outcome.problem.code);
    const place = outcome.value.card.places.whole;
    if (place === undefined) throw new Error('no patch');
    const middle = {
      leftMm: place.xMm + 0.1,
      bottomMm: place.yMm + 0.1,
      rightMm: place.xMm + place.widthMm - 0.1,
      topMm: place.yMm + place.heightMm - 0.1,
    };
    const lines = cardDrawing(outcome.value.card).layers.flatMap((layer) => layer.polylines);
    for (const segment of lines.flatMap(segmentsOf)) {
      const box = boxAround([segment]);
      expect(box === undefined ? 1 : gapBetween(box, middle)).toBeGreaterThan(0);
    }
  });

  it('gives every layer that is typed apart a colour of its own', () => {
    const typedApart = demo().layers.filter(({ kind }) => kind !== 'outline');
    expect(new Set(typedApart.map(({ colour }) => colour)).size).toBe(typedApart.length);
  });
});
