import { describe, expect, it } from 'vitest';
import { parseLayerName } from '../card/settingWords.ts';
import { boxAround } from '../path/box.ts';
import { fourCorners, type FourCornersWish } from './fourCorners.ts';
import { bedPlaces } from './place.ts';

const wish: FourCornersWish = {
  bed: { widthMm: 900, heightMm: 600 },
  setting: { powerPct: 60, speedMmPerS: 15, passes: 1, air: 'pump' },
  scoring: { powerPct: 14, speedMmPerS: 120, passes: 1 },
  shape: 'star',
  sizeMm: 15,
  cellsEach: 4,
  marginMm: 20,
  limits: { machine: { maxPowerPct: 100, speedRangeMmPerS: [1, 200] } },
};

const drawn = (change: Partial<FourCornersWish> = {}) => {
  const outcome = fourCorners({ ...wish, ...change });
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value;
};

describe('the four-corners job', () => {
  it('has the same cells at each place, every one within its own quarter and the margin', () => {
    const { cells, drawing } = drawn();
    expect(cells).toHaveLength(16);
    expect(new Set(cells.map(({ id }) => id)).size).toBe(16);
    for (const { place, xMm, yMm } of cells) {
      expect(xMm < 450).toBe(place.endsWith('left'));
      expect(yMm < 300).toBe(place.startsWith('front'));
    }
    const box = boxAround(drawing.layers.flatMap(({ polylines }) => polylines));
    expect(box?.leftMm).toBeGreaterThanOrEqual(20);
    expect(box?.bottomMm).toBeGreaterThanOrEqual(20);
    expect(box?.rightMm).toBeLessThanOrEqual(880);
    expect(box?.topMm).toBeLessThanOrEqual(580);
  });

  it('lies alike at each place: what differs is the place alone', () => {
    const { cells } = drawn({ cellsEach: 7 });
    const steps = bedPlaces.map((place) => {
      const own = cells
        .filter((cell) => cell.place === place)
        .sort((a, b) => a.id.localeCompare(b.id));
      return own.map(({ xMm, yMm }) => [
        (xMm - (own[0]?.xMm ?? 0)).toFixed(6),
        (yMm - (own[0]?.yMm ?? 0)).toFixed(6),
      ]);
    });
    for (const each of steps) expect(each).toEqual(steps[0]);
  });

  it('lets the places take turns, each first as often as the others', () => {
    const { cells, drawing } = drawn();
    for (let round = 0; round < 4; round += 1) {
      const places = cells.slice(4 * round, 4 * round + 4).map(({ place }) => place);
      expect(new Set(places).size).toBe(4);
    }
    expect(new Set([0, 4, 8, 12].map((i) => cells[i]?.place)).size).toBe(4);
    const cut = drawing.layers.find(({ kind }) => kind === 'rung')?.parts ?? [];
    expect(cut.map(({ of }) => ('cell' in of ? of.cell : ''))).toEqual(cells.map(({ id }) => id));
  });

  it('spells its one setting in the layer’s name', () => {
    const rung = drawn().drawing.layers.find(({ kind }) => kind === 'rung');
    expect(parseLayerName(rung?.name ?? '')?.setting).toEqual(wish.setting);
  });

  it.each([
    [{ bed: { widthMm: 120, heightMm: 600 } }, 'bed-too-small'],
    [{ cellsEach: 1 }, 'bed-wish-out-of-range'],
    [{ cellsEach: 4.5 }, 'bed-wish-out-of-range'],
    [{ sizeMm: Number.NaN }, 'bed-wish-out-of-range'],
    [{ bed: { widthMm: 900, heightMm: 600, gapMm: 15 } }, 'bed-cell-below-gap'],
  ] as const)('refuses %o', (change, code) => {
    const outcome = fourCorners({ ...wish, ...change });
    expect(outcome.ok ? undefined : outcome.problem.code).toBe(code);
  });
});
