import fc from 'fast-check';
import svgpath from 'svgpath';
import { describe, expect, it } from 'vitest';

import { pointOnArc, type EllipseArc } from '../../core/path/ellipseArc.ts';
import { endpointArc } from './endpointArc.ts';
import { readPathData } from './pathData.ts';
import type { PathSink } from './pathPen.ts';

type Step = readonly [kind: string, ...figures: number[]];

const told = (
  data: string,
): { readonly steps: readonly Step[]; readonly slip: string | undefined } => {
  const steps: Step[] = [];
  const sink: PathSink = {
    moveTo: (to) => steps.push(['M', ...to]),
    lineTo: (to) => steps.push(['L', ...to]),
    curveTo: (controls) => steps.push([controls.length === 3 ? 'C' : 'Q', ...controls.flat()]),
    arcTo: (_arc, to) => steps.push(['A', ...to]),
    close: () => steps.push(['Z']),
  };
  return { steps, slip: readPathData(data, sink) };
};

describe('path data', () => {
  it('are read as the grammar has them (SVG 2, 9.3)', () => {
    expect(told('M10-20.5L1e1,2E-1 3 4z').steps).toEqual([
      ['M', 10, -20.5],
      ['L', 10, 0.2],
      ['L', 3, 4],
      ['Z'],
    ]);
    expect(told('m1 2 3 4 5 6').steps).toEqual([
      ['M', 1, 2],
      ['L', 4, 6],
      ['L', 9, 12],
    ]);
    expect(told('M0 0h5v5H1V1zl1 1').steps).toEqual([
      ['M', 0, 0],
      ['L', 5, 0],
      ['L', 5, 5],
      ['L', 1, 5],
      ['L', 1, 1],
      ['Z'],
      ['L', 1, 1],
    ]);
    expect(told('M.5.5-.5-.5 007 08').steps).toEqual([
      ['M', 0.5, 0.5],
      ['L', -0.5, -0.5],
      ['L', 7, 8],
    ]);
    // The flags of an arc need nothing between them.
    expect(told('M0 0a1 1 0 01.5.5').steps).toEqual([
      ['M', 0, 0],
      ['A', 0.5, 0.5],
    ]);
  });

  it('mirror the last control in shortened curves of the same degree, and else stand on the spot', () => {
    expect(told('M0 0C1 1 2 1 3 0S5-1 6 0T8 0').steps.slice(2)).toEqual([
      ['C', 4, -1, 5, -1, 6, 0],
      ['Q', 6, 0, 8, 0],
    ]);
    expect(told('M0 0q1 2 2 0t2 0s1 1 2 0').steps.slice(2)).toEqual([
      ['Q', 3, -2, 4, 0],
      ['C', 4, 0, 5, 1, 6, 0],
    ]);
  });

  it('end at the first slip, and keep what comes before (SVG 2, 9.5.4)', () => {
    for (const [data, count] of [
      ['L1 1', 0],
      ['M1 1L2', 1],
      ['M1 1L2 2 3', 2],
      ['M1 1R2 2', 1],
      ['M1 1a1 1 0 2 0 1 1', 1],
      ['M1 1Lx', 1],
      ['M0 0L1 1 oops', 2],
    ] as const) {
      const { steps, slip } = told(data);
      expect([data, steps.length, typeof slip]).toEqual([data, count, 'string']);
    }
    expect(told('')).toEqual({ steps: [], slip: undefined });
    expect(told(' M1 1 ').slip).toBeUndefined();
  });

  it('are the same as another reader finds (svgpath 2.6.0), however they are written', () => {
    const figure = fc.oneof(
      fc.integer({ min: -99, max: 99 }).map(String),
      fc.double({ min: -99, max: 99, noNaN: true }).map((value) => value.toFixed(3)),
    );
    const gap = fc.constantFrom(' ', ',', ' , ', '\n');
    const command = fc.constantFrom(...Array.from('MmLlHhVvCcSsQqTtAaZz')).chain((letter) =>
      fc
        .tuple(fc.array(figure, { minLength: 6, maxLength: 6 }), gap, fc.boolean())
        .map(([figures, between, again]) => {
          const count = { m: 2, l: 2, h: 1, v: 1, c: 6, s: 4, q: 4, t: 2, z: 0 }[
            letter.toLowerCase()
          ];
          if (count === undefined)
            return `${letter}${figures[0]?.replace('-', '') ?? ''} 4 30 0 1 ${figures.slice(1, 3).join(between)}`;
          const set = figures.slice(0, count).join(between);
          return letter + (again && count > 0 ? `${set}${between}${set}` : set);
        }),
    );
    fc.assert(
      fc.property(fc.array(command, { maxLength: 12 }), (commands) => {
        const data = `M1 2${commands.join('')}`;
        const others: number[][] = [];
        let [x, y] = [0, 0];
        svgpath(data)
          .abs()
          .unshort()
          .iterate((segment, _i, atX, atY) => {
            [x, y] = [atX, atY];
            const [kind, ...rest] = segment as [string, ...number[]];
            if (kind === 'H') others.push([rest[0] ?? 0, y]);
            else if (kind === 'V') others.push([x, rest[0] ?? 0]);
            else if (kind === 'A') others.push(rest.slice(-2));
            else others.push(rest);
          });
        const mine = told(data).steps.map(([, ...figures]) => figures);
        expect(mine.length).toBe(others.length);
        mine.forEach((figures, i) => {
          figures.forEach((value, j) => expect(value).toBeCloseTo(others[i]?.[j] ?? NaN, 6));
        });
      }),
      { numRuns: 300 },
    );
  });

  // A twentieth of this on an idle computer; what grows with the square would take minutes.
  it('cost no more than their length: 500 000 points in one command', { timeout: 10_000 }, () => {
    let points = 0;
    const nothing = (): void => undefined;
    const sink = { moveTo: nothing, curveTo: nothing, arcTo: nothing, close: nothing };
    readPathData(`M0 0${' 1 2'.repeat(500_000)}`, { ...sink, lineTo: () => (points += 1) });
    expect(points).toBe(500_000);
  });
});

describe('an arc by its ends', () => {
  const arcOf = (change: Partial<Parameters<typeof endpointArc>[0]>): EllipseArc | undefined =>
    endpointArc({
      from: [0, 0],
      to: [10, 0],
      radii: [10, 10],
      turnDeg: 0,
      large: false,
      sweep: true,
      ...change,
    });

  it('is one of the four that the flags choose (SVG 2, appendix B.2.4)', () => {
    // A chord as long as the radius stands on a sixth of the circle.
    for (const [large, sweep, turns] of [
      [false, true, 1 / 6],
      [false, false, -1 / 6],
      [true, true, 5 / 6],
      [true, false, -5 / 6],
    ] as const) {
      const arc = arcOf({ large, sweep });
      expect((arc?.turnRad ?? 0) / (2 * Math.PI)).toBeCloseTo(turns, 12);
      expect(Math.abs(arc?.centre[1] ?? 0)).toBeCloseTo(5 * Math.sqrt(3), 12);
    }
  });

  it('grows radii that do not reach, and is a line where there are none', () => {
    const arc = arcOf({ radii: [1, 2] });
    expect(arc?.axisA[0]).toBeCloseTo(5, 12);
    expect(arc?.axisB[1]).toBeCloseTo(10, 12);
    expect(arcOf({ radii: [0, 2] })).toBeUndefined();
    expect(arcOf({ to: [0, 0] })).toBeUndefined();
  });

  it('passes where another reader’s cubics meet (svgpath 2.6.0)', () => {
    const number = fc.double({ min: -50, max: 50, noNaN: true });
    const radius = fc.double({ min: 1, max: 60, noNaN: true });
    const turn = fc.integer({ min: -180, max: 180 });
    fc.assert(
      fc.property(
        fc.tuple(number, number),
        fc.tuple(radius, radius),
        turn,
        fc.boolean(),
        fc.boolean(),
        (to, radii, turnDeg, large, sweep) => {
          fc.pre(Math.hypot(...to) > 1);
          const arc = arcOf({ to, radii, turnDeg, large, sweep });
          if (arc === undefined) throw new Error('no arc');
          const flags = `${large ? 1 : 0} ${sweep ? 1 : 0}`;
          const data = `M0 0A${radii.join(' ')} ${turnDeg} ${flags} ${to.join(' ')}`;
          const meets: number[][] = [];
          svgpath(data)
            .unarc()
            .iterate((segment) => {
              if (segment[0] === 'C') meets.push([segment[5], segment[6]]);
            });
          meets.forEach(([x = 0, y = 0], i) => {
            const there = pointOnArc(arc, arc.fromRad + (arc.turnRad * (i + 1)) / meets.length);
            expect(Math.hypot(there[0] - x, there[1] - y)).toBeLessThan(1e-4);
          });
        },
      ),
    );
  });
});
