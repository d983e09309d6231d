import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalCdf } from '../../num/normal.ts';
import { seededRandom } from '../../num/seededRandom.ts';
import { bedPlaces, forEachPlace, type BedPlace } from './place.ts';
import { placeEffects, scatterUnstudied, type GradesByPlace } from './placeEffects.ts';

const { sigma, hangBand } = scatterUnstudied;

/** The same posterior by another road: draws from the prior, weighed by the probability of the grades. */
const byDrawing = (
  grades: GradesByPlace,
  place: BedPlace,
): { readonly mean: number; readonly chanceWeak: number } => {
  const random = seededRandom(7);
  let [total, sum, weak] = [0, 0, 0];
  for (let n = 0; n < 60_000; n += 1) {
    const level = 0.43 * sigma + 0.3 * random.normal();
    const effects = forEachPlace(() => 0.1 * random.normal());
    let weight = 1;
    for (const each of bedPlaces) {
      const margin = level + effects[each];
      const out = normalCdf(margin / sigma);
      const through = normalCdf((margin + hangBand) / sigma);
      const read = (p: number): number => 0.99 * p + 0.005 * (1 - p);
      weight *= read(out) ** grades[each].out;
      weight *= read(through - out) ** grades[each].hangs;
      weight *= read(1 - through) ** grades[each].stays;
    }
    const others = bedPlaces.filter((each) => each !== place);
    const difference = effects[place] - others.reduce((s, each) => s + effects[each], 0) / 3;
    total += weight;
    sum += weight * difference;
    if (difference < Math.log(0.95)) weak += weight;
  }
  return { mean: sum / total, chanceWeak: weak / total };
};

const someGrades: GradesByPlace = {
  'front-left': { out: 3, hangs: 1, stays: 0 },
  'front-right': { out: 4, hangs: 0, stays: 0 },
  'back-left': { out: 1, hangs: 1, stays: 2 },
  'back-right': { out: 2, hangs: 2, stays: 0 },
};

describe('the places’ effects', () => {
  it.each(['back-left', 'front-right'] as const)(
    'agree with weighed draws from the prior at the %s',
    (place) => {
      const found = placeEffects(someGrades).places[place];
      const drawn = byDrawing(someGrades, place);
      expect(found.chanceWeak).toBeCloseTo(drawn.chanceWeak, 1.5);
      expect(Math.log(1 - found.slowerPct / 100)).toBeCloseTo(drawn.mean, 1.9);
    },
  );

  it('before anything is read are the prior: a mean of 0, ±1.645·0.1·√(4/3)', () => {
    const { places } = placeEffects(forEachPlace(() => ({ out: 0, hangs: 0, stays: 0 })));
    const end = 1.6449 * 0.1 * Math.sqrt(4 / 3);
    for (const place of bedPlaces) {
      expect(places[place].slowerPct).toBeCloseTo(0, 6);
      expect(Math.log(1 - places[place].highPct / 100)).toBeCloseTo(-end, 2);
      expect(Math.log(1 - places[place].lowPct / 100)).toBeCloseTo(end, 2);
    }
  });

  it('do not know left from right, or front from back', () => {
    const count = fc.integer({ min: 0, max: 6 });
    const counts = fc.record({ out: count, hangs: count, stays: count });
    fc.assert(
      fc.property(counts, counts, counts, counts, (fl, fr, bl, br) => {
        const one = placeEffects({
          'front-left': fl,
          'front-right': fr,
          'back-left': bl,
          'back-right': br,
        });
        const turned = placeEffects({
          'front-left': br,
          'front-right': bl,
          'back-left': fr,
          'back-right': fl,
        });
        expect(one.places['front-left'].slowerPct).toBeCloseTo(
          turned.places['back-right'].slowerPct,
          6,
        );
        expect(one.sides.left.chanceWeak).toBeCloseTo(turned.sides.right.chanceWeak, 6);
        expect(one.sides.front.slowerPct).toBeCloseTo(turned.sides.back.slowerPct, 6);
      }),
      { numRuns: 15 },
    );
  });

  it('look weaker at a place with each cell that stays there', () => {
    const withStays = (stays: number) =>
      placeEffects({ ...someGrades, 'back-left': { out: 2, hangs: 0, stays } }).places['back-left'];
    expect(withStays(2).chanceWeak).toBeGreaterThan(withStays(1).chanceWeak);
    expect(withStays(4).slowerPct).toBeGreaterThan(withStays(2).slowerPct);
  });
});
