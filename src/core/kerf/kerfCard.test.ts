import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Machine } from '../machine/machine.ts';
import { boxAround, liesWithin } from '../path/box.ts';
import { isClosed, lengthMm, signedAreaMm2, type Polyline } from '../path/polyline.ts';
import { stripChangeover } from '../study/stripChangeover.ts';
import { partsOf } from '../proof/partsOf.ts';
import { kerfCard, kerfCardDrawing, type KerfCardRequest } from './kerfCard.ts';
import { kerfFromCombs } from './kerfFromCombs.ts';

const machine: Machine = { maxPowerPct: 80, speedRangeMmPerS: [1, 300] };
const request = (change: Partial<KerfCardRequest> = {}): KerfCardRequest => {
  const { thicknessMm = 3.1 } = change;
  return {
    wish: { kind: 'comb', pieceMm: [300, 200], places: 4, directions: ['across', 'up'] },
    setting: { powerPct: 40, speedMmPerS: 14, passes: 1 },
    thicknessMm,
    machine,
    believed: stripChangeover({ material: 'birch plywood', thicknessMm }, machine),
    ...change,
  };
};
const drawn = (change: Partial<KerfCardRequest> = {}) => {
  const card = kerfCard(request(change));
  if (!card.ok) throw new Error(card.problem.code);
  return { card: card.value, drawing: kerfCardDrawing(card.value) };
};

describe('a comb card', () => {
  it('has a comb and a bar of one width in every place and direction', () => {
    const { card, drawing } = drawn();
    if (card.sheet.kind !== 'comb') throw new Error('no comb');
    expect(card.sheet.combs.map(({ label }) => label)).toEqual([
      ...['1X', '1Y', '2X', '2Y', '3X', '3Y', '4X', '4Y'],
    ]);
    const [, inside, outline] = drawing.layers;
    // Ten strips are parted by nine lines; around them goes the outline, and the bar is one piece.
    expect(inside?.polylines).toHaveLength(8 * 9);
    expect(outline?.polylines).toHaveLength(8 * 2);
    for (const comb of card.sheet.combs) {
      const along = comb.direction === 'across' ? 'widthMm' : 'heightMm';
      expect(comb.block[along]).toBe(comb.nominalMm);
      expect(comb.bar[along]).toBe(comb.nominalMm);
    }
  });

  it('gives strips and bars whose widths tell the kerf that cut them', () => {
    // A beam of width k takes half of k off every edge: the strips of a comb lack a whole kerf each, the bar one.
    const { card } = drawn();
    if (card.sheet.kind !== 'comb') throw new Error('no comb');
    const k = 0.23;
    const combs = card.sheet.combs.map(({ label, direction, strips, nominalMm }) => ({
      place: label,
      direction,
      strips,
      nominalMm,
      measuredMm: [strips * (nominalMm / strips - k)],
      barMm: [nominalMm - k],
    }));
    const none = { resolutionMm: 0, caliperLimitMm: 0, scaleLimitPct: 0, gapMm: 0 };
    expect(kerfFromCombs(combs, none)).toMatchObject({ ok: true });
    const told = kerfFromCombs(combs, none);
    expect(told.ok ? told.value.kerfMm : NaN).toBeCloseTo(k, 9);
  });

  it('frees nothing before its inside is cut, and keeps parts a sheet apart', () => {
    const { drawing } = drawn({ thicknessMm: 6 });
    expect(drawing.layers.map(({ name }) => name.split(' ')[0])).toEqual([
      ...['marks', 'inside', 'outline'],
    ]);
    const outlines = drawing.layers[2]?.polylines ?? [];
    expect(outlines.every(isClosed)).toBe(true);
    expect(leastApartMm(outlines)).toBeGreaterThanOrEqual(6);
  });

  it('scores every strip and bar with the name of its comb, and no word over an edge', () => {
    const { card, drawing } = drawn();
    if (card.sheet.kind !== 'comb') throw new Error('no comb');
    const words = drawing.layers[0]?.polylines ?? [];
    const edges = [
      ...(drawing.layers[1]?.polylines ?? []),
      ...(drawing.layers[2]?.polylines ?? []),
    ].flatMap((line) => line.slice(1).map((to, i) => boxAround([[line[i] ?? to, to]])));
    const boxes = words.map((word) => boxAround([word]));
    for (const box of boxes)
      for (const edge of edges)
        if (box !== undefined && edge !== undefined)
          expect(
            edge.rightMm < box.leftMm ||
              edge.leftMm > box.rightMm ||
              edge.topMm < box.bottomMm ||
              edge.bottomMm > box.topMm,
          ).toBe(true);
  });

  it('stays on its piece, or says how large a piece it needs, and that one is enough', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 40, max: 400 }),
        fc.integer({ min: 40, max: 400 }),
        fc.constantFrom(1 as const, 2 as const, 4 as const),
        fc.constantFrom(['across'] as const, ['up'] as const, ['across', 'up'] as const),
        fc.double({ min: 0.5, max: 9, noNaN: true }),
        (widthMm, heightMm, places, directions, thicknessMm) => {
          const of = (pieceMm: readonly [number, number]) =>
            kerfCard(
              request({
                wish: { kind: 'comb', pieceMm, places, directions },
                thicknessMm,
                believed: () => ({ v50MmPerS: 14, lnSd: 0.3, thinkableFromMmPerS: 1 }),
              }),
            );
          const first = of([widthMm, heightMm]);
          if (!first.ok) {
            expect(first.problem.code).toBe('comb-piece-too-small');
            if (first.problem.code !== 'comb-piece-too-small') return;
            const { neededWidthMm, neededHeightMm } = first.problem.params;
            expect(of([neededWidthMm, neededHeightMm]).ok).toBe(true);
            return;
          }
          const drawing = kerfCardDrawing(first.value);
          const box = boxAround(drawing.layers.flatMap(({ polylines }) => polylines));
          const piece = { leftMm: 0, bottomMm: 0, rightMm: widthMm, topMm: heightMm };
          expect(box !== undefined && liesWithin(box, piece)).toBe(true);
        },
      ),
    );
  });

  it('has strips longer than the gaps of the bed', () => {
    const { card } = drawn({
      machine: { ...machine, bed: { widthMm: 900, heightMm: 600, gapMm: 32 } },
    });
    if (card.sheet.kind !== 'comb') throw new Error('no comb');
    expect(card.sheet.combs[0]?.block.heightMm).toBe(40);
  });

  it('refuses a setting beyond a limit, and marks that would cut', () => {
    const code = (change: Partial<KerfCardRequest>) => {
      const card = kerfCard(request(change));
      return card.ok ? 'made' : card.problem.code;
    };
    expect(code({ setting: { powerPct: 90, speedMmPerS: 14, passes: 1 } })).toBe(
      'fires-above-machine',
    );
    expect(code({ setting: { powerPct: 40, speedMmPerS: 500, passes: 1 } })).toBe(
      'fires-beyond-speeds',
    );
    expect(code({ scoring: { powerPct: 40, speedMmPerS: 14, passes: 1 } })).toBe('fires-would-cut');
    expect(code({ thicknessMm: 12 })).toBe('comb-too-wide');
  });
});

describe('a slot card', () => {
  const slots = (change: Partial<KerfCardRequest> = {}, direction: 'across' | 'up' = 'across') =>
    drawn({ wish: { kind: 'slots', kerfMm: 0.2, direction }, ...change });

  it('has slots around the width that the beam opens to the thickness of the sheet', () => {
    const { card } = slots();
    if (card.sheet.kind !== 'slots') throw new Error('no slots');
    const widths = card.sheet.slots.map(({ drawnMm }) => drawnMm);
    expect(widths).toEqual([2.7, 2.75, 2.8, 2.85, 2.9, 2.95, 3, 3.05, 3.1]);
    for (const { drawnMm, box } of card.sheet.slots) expect(box.widthMm).toBe(drawnMm);
  });

  it('is one plate with holes and two tongues beside, whichever way it lies', () => {
    for (const direction of ['across', 'up'] as const) {
      const { card, drawing } = slots({}, direction);
      const [, inside, outline] = drawing.layers;
      const cut = [...(inside?.polylines ?? []), ...(outline?.polylines ?? [])];
      const { parts } = partsOf(cut);
      expect(parts).toHaveLength(3);
      expect(parts.map(({ outlines }) => outlines.length).toSorted((a, b) => b - a)).toEqual([
        10, 1, 1,
      ]);
      if (card.sheet.kind !== 'slots') throw new Error('no slots');
      const narrow = direction === 'across' ? 'widthMm' : 'heightMm';
      expect(card.sheet.slots.map(({ box }) => box[narrow])).toEqual(
        card.sheet.slots.map(({ drawnMm }) => drawnMm),
      );
      const box = boxAround(drawing.layers.flatMap(({ polylines }) => polylines));
      const { widthMm, heightMm } = drawing;
      const piece = { leftMm: 0, bottomMm: 0, rightMm: widthMm, topMm: heightMm };
      expect(box !== undefined && liesWithin(box, piece)).toBe(true);
    }
  });

  it('keeps words off the cuts', () => {
    for (const direction of ['across', 'up'] as const) {
      const { drawing } = slots({}, direction);
      const [marks, inside, outline] = drawing.layers;
      const [plate] = outline?.polylines ?? [];
      const frame = plate === undefined ? undefined : boxAround([plate]);
      for (const word of marks?.polylines ?? []) {
        const box = boxAround([word]);
        expect(box !== undefined && frame !== undefined && liesWithin(box, frame)).toBe(true);
        for (const slot of inside?.polylines ?? [])
          expect(leastApartMm([word, slot])).toBeGreaterThan(0.5);
      }
    }
  });

  it('reaches further where the kerf is a guess, and is refused where no slot is left', () => {
    const { card } = drawn({ wish: { kind: 'slots' } });
    expect(card.sheet.kind === 'slots' && card.sheet.slots).toHaveLength(13);
    const thin = kerfCard(
      request({
        wish: { kind: 'slots' },
        thicknessMm: 0.05,
        believed: () => ({ v50MmPerS: 14, lnSd: 0.3, thinkableFromMmPerS: 1 }),
      }),
    );
    expect(thin).toMatchObject({ ok: false, problem: { code: 'slots-too-narrow' } });
  });

  it('has tongues that go through a slot with room beside them', () => {
    const { card } = slots();
    if (card.sheet.kind !== 'slots') throw new Error('no slots');
    const [tongue = []] = card.sheet.tongues;
    expect(Math.abs(signedAreaMm2(tongue))).toBeCloseTo(18 * 8 + 10 * 14.2, 6);
    expect(lengthMm(tongue)).toBeGreaterThan(0);
    expect(card.sheet.slots[0]?.box.heightMm).toBe(14);
  });
});

/** Between the boxes of lines. */
const leastApartMm = (lines: readonly Polyline[]): number => {
  const boxes = lines.flatMap((line) => boxAround([line]) ?? []);
  let least = Infinity;
  for (const [i, a] of boxes.entries())
    for (const b of boxes.slice(i + 1)) {
      const x = Math.max(b.leftMm - a.rightMm, a.leftMm - b.rightMm, 0);
      const y = Math.max(b.bottomMm - a.topMm, a.bottomMm - b.topMm, 0);
      least = Math.min(least, Math.hypot(x, y));
    }
  return least;
};
