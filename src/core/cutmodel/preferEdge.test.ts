import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../num/seededRandom.ts';
import type { EdgeGrade } from '../reading/edge.ts';
import type { EdgeCut } from './edgeBeliefs.ts';
import { preferEdge } from './preferEdge.ts';

const at = (speedMmPerS: number) => ({ powerPct: 40, speedMmPerS });
const cut = (speedMmPerS: number, edge: EdgeGrade, count = 2): EdgeCut => ({
  ...at(speedMmPerS),
  edge,
  count,
});

describe('the setting that is preferred for its edge', () => {
  const cuts = [
    ...[cut(8, 'clear', 4), cut(10, 'clear', 4)],
    ...[cut(15, 'frosted', 4), cut(16, 'frosted', 4)],
  ];
  const mayRun = [9.8, 10, 15].map(at);

  it('is the fastest among those that are surely better, where the answer’s own edge is not the best', () => {
    const { here, preferred } = preferEdge({ cuts, kind: 'acrylic', answer: at(15.5), mayRun });
    expect(here.meanOf100).toBeLessThan(20);
    expect(preferred?.spot.speedMmPerS).toBe(10);
    expect(preferred?.share.meanOf100).toBeGreaterThan(60);
  });

  it('is none where the answer has the best edge already, nor where there is nothing to choose', () => {
    expect(preferEdge({ cuts, kind: 'acrylic', answer: at(9), mayRun }).preferred).toBeUndefined();
    expect(
      preferEdge({ cuts, kind: 'acrylic', answer: at(15.5), mayRun: [] }).preferred,
    ).toBeUndefined();
    const wood = [cut(8, 'black'), cut(10, 'brown'), cut(12, 'clean')];
    expect(
      preferEdge({ cuts: wood, kind: 'wood', answer: at(12), mayRun: [8, 10].map(at) }).preferred,
    ).toBeUndefined();
  });
});

/**
 * Workshops that cut one card of acrylic at one power, with the shares of their edges known: a change from clear to frosted
 * and one from clear to flamed, each somewhere, spread over 3 to 25 per cent of the heat.
 */
const play = (seed: number) => {
  const random = seededRandom(seed);
  const rises = (x: number): number => 1 / (1 + Math.exp(-x));
  const sum = {
    preferred: 0,
    better: 0,
    atLeast: 0,
    stated: 0,
    true_: 0,
    here: 0,
    hereTrue: 0,
    of: 0,
  };
  for (let i = 0; i < 240; i += 1) {
    const spread = [0.03, 0.1, 0.25][i % 3] ?? NaN;
    const each = i % 2 === 0 ? 2 : 4;
    const v50 = 20 * Math.exp(0.1 * random.normal());
    const flames = v50 * Math.exp(-0.6 + 0.5 * (random.uniform() - 0.3));
    const frosts = v50 * (0.6 + 0.5 * random.uniform());
    const flamed = (v: number) => rises(Math.log(flames / v) / spread);
    const frosted = (v: number) => (1 - flamed(v)) * rises(Math.log(v / frosts) / spread);
    const truth = (v: number) => 100 * (1 - flamed(v) - frosted(v));
    const cuts = [0.5, 0.6, 0.7, 0.8, 0.9, 1].flatMap((share) => {
      const speed = Math.round(v50 * share * 2) / 2;
      return Array.from({ length: each }, () => [random.uniform(), random.uniform()] as const)
        .filter(([fell]) => fell > rises(Math.log(speed / v50) / 0.05))
        .map(([, u]) =>
          cut(
            speed,
            u < flamed(speed) ? 'flamed' : u < flamed(speed) + frosted(speed) ? 'frosted' : 'clear',
            1,
          ),
        );
    });
    if (cuts.length < 6) continue;
    const answer = at(0.9 * v50);
    const speeds = new Set(cuts.map(({ speedMmPerS }) => speedMmPerS));
    const mayRun = [...speeds].filter((speed) => speed < answer.speedMmPerS).map(at);
    const { here, preferred } = preferEdge({ cuts, kind: 'acrylic', answer, mayRun });
    sum.of += 1;
    sum.here += here.meanOf100;
    sum.hereTrue += truth(answer.speedMmPerS);
    if (preferred === undefined) continue;
    const is = truth(preferred.spot.speedMmPerS);
    sum.preferred += 1;
    sum.stated += preferred.share.meanOf100;
    sum.true_ += is;
    if (is > truth(answer.speedMmPerS)) sum.better += 1;
    if (is >= preferred.share.atLeastOf100) sum.atLeast += 1;
  }
  return sum;
};

describe('in simulated workshops', () => {
  it('the edge that is preferred is as stated: better, at least as said nine times in ten, and by its mean', () => {
    const { preferred, better, atLeast, stated, true_, here, hereTrue, of } = play(20261);
    expect(preferred).toBeGreaterThan(of / 4);
    expect(better / preferred).toBeGreaterThan(0.95);
    expect(atLeast / preferred).toBeGreaterThan(0.88);
    expect(Math.abs(stated - true_) / preferred).toBeLessThan(8);
    expect(Math.abs(here - hereTrue) / of).toBeLessThan(4);
  });
});
