import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { demoRequest } from '../../../test/fixtures/cardRequest.ts';
import { cardDrawing } from '../card/cardDrawing.ts';
import { designCard } from '../card/designCard.ts';
import { parseLayerName } from '../card/settingWords.ts';
import { placed } from '../path/polyline.ts';
import { checkToolpath } from './checkToolpath.ts';
import { matchCard } from './matchCard.ts';
import type { PathLine, Toolpath } from './toolpath.ts';

const card = (() => {
  const outcome = designCard(demoRequest);
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value.card;
})();

/** The card's own drawing as a toolpath, moved. */
const moved = (x: number, y: number): Toolpath => ({
  kind: 'dxf',
  travels: [],
  noticed: [],
  lines: cardDrawing(card)
    .layers.flatMap((layer) => layer.polylines.map((points) => ({ layer, points })))
    .map(({ layer, points }, i): PathLine => {
      const spelt = parseLayerName(layer.name);
      return {
        points: placed(points, [x, y]),
        passes: 1,
        layer: layer.name,
        ...(spelt === undefined ? {} : { spelt }),
        where: i + 1,
      };
    }),
});

describe('holding a toolpath against its card', () => {
  it('finds every part of it, wherever the whole was moved to', () => {
    const by = fc.double({ min: -200, max: 400, noNaN: true });
    fc.assert(
      fc.property(by, by, (x, y) => {
        const matched = matchCard(card, moved(x, y));
        expect(matched?.cells.map(({ pieces }) => pieces.length)).toEqual(card.cells.map(() => 1));
        expect(matched?.words.every(({ found, expected }) => found === expected)).toBe(true);
        expect(matched?.strangers).toEqual([]);
        expect(checkToolpath(moved(x, y), { card }).findings).toEqual([]);
      }),
      { numRuns: 20 },
    );
  });

  it('finds every part where each cell’s words came to lie in the cell, as after a few millimetres upwards', () => {
    const by = fc.double({ min: 2, max: 12, noNaN: true });
    const slightly = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(slightly, by, (x, y) => {
        const matched = matchCard(card, moved(x, y));
        expect(matched?.shiftMm[1]).toBeCloseTo(-y, 6);
        expect(matched?.strangers).toEqual([]);
        expect(checkToolpath(moved(x, y), { card }).findings).toEqual([]);
      }),
      { numRuns: 20 },
    );
  });

  it('names exactly the cell whose line says another setting', () => {
    fc.assert(
      fc.property(fc.nat({ max: card.cells.length - 1 }), (n) => {
        const cells = moved(0, 0).lines.filter(({ spelt }) => /^[A-F]$/.test(spelt?.label ?? ''));
        const slip = cells[n];
        const lines = moved(0, 0).lines.map((line): PathLine =>
          line.where === slip?.where && line.spelt !== undefined
            ? {
                ...line,
                spelt: { ...line.spelt, setting: { ...line.spelt.setting, speedMmPerS: 44 } },
              }
            : line,
        );
        const { findings } = checkToolpath({ ...moved(0, 0), lines }, { card });
        expect(findings.map(({ code, cell }) => [code, cell])).toEqual([
          ['check-cell-differs', card.cells[n]?.id],
        ]);
      }),
      { numRuns: 12 },
    );
  });

  it('is told where nothing of the card is there', () => {
    const lines = moved(0, 0).lines.filter(({ spelt }) => spelt?.label === 'marks');
    const { findings, ok } = checkToolpath({ ...moved(0, 0), lines }, { card });
    expect(ok).toBe(false);
    expect(findings[0]).toMatchObject({ code: 'check-not-this-card', params: { card: 'K7WM' } });
  });
});
