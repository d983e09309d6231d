import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { chordsOfBezier, pointOnBezier } from './bezier.ts';
import { boxAround } from './box.ts';
import { chordsOfArc, circleArc, longestRadius, mappedArc, pointOnArc } from './ellipseArc.ts';
import { mapped, shift, stretch, times, turn, type Matrix } from './matrix.ts';
import { splinePieces, wrongWithNurbs, type Nurbs } from './nurbs.ts';
import { distanceMm, type Point } from './point.ts';
import { lengthMm, type Polyline } from './polyline.ts';
import { splineThrough } from './splineThrough.ts';
import { Tracer } from './tracer.ts';

const limits = { toleranceMm: 0.01, mostPoints: 100_000, farthestMm: 1000 };
const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
const place = fc.tuple(coordinate, coordinate);
const traced = (draw: (tracer: Tracer) => void, toleranceMm = 0.01): readonly Polyline[] => {
  const tracer = new Tracer({ ...limits, toleranceMm });
  draw(tracer);
  return tracer.taken();
};
/** How far a place lies from the nearest of many lines. */
const fromLine = ([x, y]: Point, line: Polyline): number =>
  Math.min(
    ...line.slice(1).map((to, i) => {
      const [ax, ay] = line[i] ?? to;
      const [dx, dy] = [to[0] - ax, to[1] - ay];
      const square = dx * dx + dy * dy;
      const t =
        square === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / square));
      return Math.hypot(x - ax - t * dx, y - ay - t * dy);
    }),
  );

describe('a map of the plane', () => {
  it('acts like its parts, the inner first', () => {
    const angle = fc.double({ min: -7, max: 7, noNaN: true });
    fc.assert(
      fc.property(place, place, angle, (at, by, rad) => {
        const [outer, inner] = [times(turn(rad), stretch(2, -3)), shift(by)];
        const [x, y] = mapped(times(outer, inner), at);
        const [u, v] = mapped(outer, mapped(inner, at));
        expect(x).toBeCloseTo(u, 8);
        expect(y).toBeCloseTo(v, 8);
      }),
    );
    // A quarter of a turn takes the x axis to the y axis.
    expect(mapped(turn(Math.PI / 2), [1, 0])[1]).toBeCloseTo(1, 12);
  });
});

describe('a Bézier curve', () => {
  it('goes where Bernstein’s polynomials say (Farin, Curves and surfaces for CAGD, 4)', () => {
    const controls: readonly Point[] = [
      [0, 0],
      [1, 3],
      [4, 2],
      [5, -1],
    ];
    for (const t of [0, 0.25, 0.5, 0.9, 1]) {
      const s = 1 - t;
      const weights = [s ** 3, 3 * s * s * t, 3 * s * t * t, t ** 3];
      const sum = (axis: 0 | 1): number =>
        weights.reduce((total, w, i) => total + w * (controls[i]?.[axis] ?? 0), 0);
      const [x, y] = pointOnBezier(controls, t);
      expect(x).toBeCloseTo(sum(0), 12);
      expect(y).toBeCloseTo(sum(1), 12);
    }
  });

  it('is never left by its chords by more than the tolerance, whatever its degree', () => {
    const controls = fc.array(place, { minLength: 3, maxLength: 7 });
    const tolerance = fc.constantFrom(0.5, 0.05, 0.01);
    fc.assert(
      fc.property(controls, tolerance, fc.double({ min: 0, max: 1, noNaN: true }), (all, mm, t) => {
        const [first = [0, 0], ...rest] = all;
        const [line = []] = traced((tracer) => {
          tracer.moveTo(first);
          tracer.curveTo(rest);
        }, mm);
        expect(line.length).toBeLessThanOrEqual(chordsOfBezier(all, mm) + 1);
        if (line.length > 1) expect(fromLine(pointOnBezier(all, t), line)).toBeLessThan(mm + 1e-9);
      }),
    );
  });

  it('of the parabola y = x² from 0 to 1 is 1.478943 long (elementary calculus: √5/2 + arsinh 2/4)', () => {
    const [line = []] = traced((tracer) => {
      tracer.moveTo([0, 0]);
      tracer.curveTo([
        [0.5, 0],
        [1, 1],
      ]);
    }, 1e-7);
    expect(lengthMm(line)).toBeCloseTo(Math.sqrt(5) / 2 + Math.asinh(2) / 4, 6);
  });
});

describe('an arc of an ellipse', () => {
  const figure = fc.double({ min: -3, max: 3, noNaN: true });
  const matrix: fc.Arbitrary<Matrix> = fc.tuple(figure, figure, figure, figure, figure, figure);

  it('is mapped point by point, and reaches as far as its longest radius', () => {
    const angle = fc.double({ min: -7, max: 7, noNaN: true });
    fc.assert(
      fc.property(
        matrix,
        place,
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        angle,
        (m, at, r, rad) => {
          const circle = circleArc(at, r, 0, 6);
          const there = mappedArc(m, circle);
          const [x, y] = pointOnArc(there, rad);
          const [u, v] = mapped(m, pointOnArc(circle, rad));
          expect(x).toBeCloseTo(u, 6);
          expect(y).toBeCloseTo(v, 6);
          expect(distanceMm([x, y], there.centre)).toBeLessThanOrEqual(longestRadius(there) + 1e-6);
        },
      ),
    );
    // Half axes 3 and 2 at right angles.
    expect(
      longestRadius({ ...circleArc([0, 0], 1, 0, 1), axisA: [0, 3], axisB: [2, 0] }),
    ).toBeCloseTo(3, 12);
  });

  it('is never left by its chords by more than the tolerance', () => {
    fc.assert(
      fc.property(matrix, fc.double({ min: 0.1, max: 50, noNaN: true }), (m, r) => {
        const arc = mappedArc(m, circleArc([0, 0], r, 0.3, 5));
        const [line = []] = traced((tracer) => {
          tracer.moveTo(pointOnArc(arc, 0.3));
          tracer.arcTo(arc, pointOnArc(arc, 5.3));
        });
        expect(line.length).toBeLessThanOrEqual(chordsOfArc(arc, 0.01) + 1);
        for (const rad of line.length > 1 ? [0.31, 1.7, 2.9, 4.4, 5.29] : [])
          expect(fromLine(pointOnArc(arc, rad), line)).toBeLessThan(0.01 + 1e-9);
      }),
    );
  });

  it('of an ellipse of half axes 5 and 3 is 25.526999 round (Abramowitz & Stegun 17.3: 4·a·E(e²))', () => {
    const arc = { ...circleArc([0, 0], 1, 0, 2 * Math.PI), axisA: [5, 0], axisB: [0, 3] } as const;
    const [line = []] = traced((tracer) => {
      tracer.moveTo([5, 0]);
      tracer.arcTo(arc, [5, 0]);
    }, 1e-7);
    expect(lengthMm(line)).toBeCloseTo(25.526998863398, 5);
  });
});

describe('a spline', () => {
  const drawn = (spline: Nurbs, toleranceMm = 1e-6): Polyline => {
    const lines = traced((tracer) => {
      for (const piece of splinePieces(spline)) tracer.pieceTo(piece);
    }, toleranceMm);
    expect(lines).toHaveLength(1);
    return lines[0] ?? [];
  };

  it('of nine weighted controls is a circle (Piegl & Tiller, The NURBS Book, 7.5)', () => {
    const w = Math.SQRT1_2;
    const circle: Nurbs = {
      degree: 2,
      knots: [0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4],
      controls: [
        [5, 0],
        [5, 5],
        [0, 5],
        [-5, 5],
        [-5, 0],
        [-5, -5],
        [0, -5],
        [5, -5],
        [5, 0],
      ],
      weights: [1, w, 1, w, 1, w, 1, w, 1],
    };
    const line = drawn(circle);
    for (const [x, y] of line) expect(Math.hypot(x, y)).toBeCloseTo(5, 9);
    expect(lengthMm(line)).toBeCloseTo(10 * Math.PI, 4);
  });

  it('without inner knots is the Bézier curve of its controls', () => {
    const controls: readonly Point[] = [
      [0, 0],
      [1, 3],
      [4, 2],
      [5, -1],
    ];
    const knots = [0, 0, 0, 0, 1, 1, 1, 1];
    const [piece] = [...splinePieces({ degree: 3, knots, controls })];
    expect(piece?.controls).toEqual(controls);
  });

  it('with even knots passes (1·4·1)/6 of three controls at a knot (de Boor, A practical guide to splines)', () => {
    const controls: readonly Point[] = [
      [0, 0],
      [6, 0],
      [6, 6],
      [12, 6],
      [12, 0],
    ];
    const knots = [0, 1, 2, 3, 4, 5, 6, 7, 8];
    const pieces = [...splinePieces({ degree: 3, knots, controls })];
    expect(pieces).toHaveLength(2);
    const meets = pieces[0]?.controls.at(-1) ?? [0, 0];
    expect(meets[0]).toBeCloseTo((6 + 4 * 6 + 12) / 6, 12);
    expect(meets[1]).toBeCloseTo((0 + 4 * 6 + 6) / 6, 12);
    expect(pieces[1]?.controls[0]).toEqual(meets);
  });

  it('stays within the box of its controls, and itself when all weights are doubled', () => {
    const controls = fc.array(place, { minLength: 4, maxLength: 9 });
    fc.assert(
      fc.property(controls, (all) => {
        const inner = all.length - 4;
        const knots = [0, 0, 0, 0, ...Array.from({ length: inner }, (_, i) => i + 1)];
        const ends = Array.from({ length: 4 }, () => inner + 1);
        const spline = { degree: 3, knots: [...knots, ...ends], controls: all };
        const doubled = { ...spline, weights: all.map(() => 2) };
        expect([...splinePieces(doubled)]).toEqual([...splinePieces(spline)]);
        const box = boxAround([all]);
        for (const [x, y] of [...splinePieces(spline)].flatMap((piece) => piece.controls)) {
          expect(x).toBeGreaterThanOrEqual((box?.leftMm ?? 0) - 1e-9);
          expect(y).toBeLessThanOrEqual((box?.topMm ?? 0) + 1e-9);
        }
      }),
    );
  });

  it('that is none is told from one that is', () => {
    const good: Nurbs = {
      degree: 1,
      knots: [0, 0, 1, 1],
      controls: [
        [0, 0],
        [1, 1],
      ],
    };
    expect(wrongWithNurbs(good)).toBeUndefined();
    expect(wrongWithNurbs({ ...good, degree: 0 })).toBe('degree');
    expect(wrongWithNurbs({ ...good, degree: 2 })).toBe('controls');
    expect(wrongWithNurbs({ ...good, knots: [0, 0, 1] })).toBe('knots');
    expect(wrongWithNurbs({ ...good, knots: [0, 2, 1, 1] })).toBe('knots');
    expect(wrongWithNurbs({ ...good, knots: [0, 0, 1, Number.NaN] })).toBe('knots');
    expect(wrongWithNurbs({ ...good, weights: [1, 0] })).toBe('weights');
  });

  it('through points goes through them without a corner, straight where they lie straight', () => {
    const points: readonly Point[] = [
      [0, 0],
      [10, 5],
      [20, 0],
      [30, 20],
    ];
    const pieces = splineThrough({ points, closed: false });
    expect(pieces.map((piece) => piece[0])).toEqual(points.slice(0, 3));
    for (const [i, piece] of pieces.slice(1).entries()) {
      const [before, here, after] = [pieces[i]?.[2], piece[0], piece[1]];
      const cross =
        ((here?.[0] ?? 0) - (before?.[0] ?? 0)) * ((after?.[1] ?? 0) - (here?.[1] ?? 0)) -
        ((here?.[1] ?? 0) - (before?.[1] ?? 0)) * ((after?.[0] ?? 0) - (here?.[0] ?? 0));
      expect(cross).toBeCloseTo(0, 9);
    }
    const straight = splineThrough({
      points: [
        [0, 0],
        [1, 1],
        [5, 5],
      ],
      closed: false,
    });
    for (const [x, y] of straight.flat()) expect(x).toBeCloseTo(y, 12);
  });

  it('through points of a circle keeps within 0.2 % of it, closed without a corner', () => {
    const points = Array.from({ length: 12 }, (_, i): Point => {
      const rad = (i * Math.PI) / 6;
      return [10 * Math.cos(rad), 10 * Math.sin(rad)];
    });
    const pieces = splineThrough({ points, closed: true });
    expect(pieces).toHaveLength(12);
    for (const piece of pieces) expect(Math.hypot(...pointOnBezier(piece, 0.5))).toBeCloseTo(10, 1);
    const [first, last] = [pieces[0], pieces.at(-1)];
    expect(last?.at(-1)).toEqual(first?.[0]);
    // Leaves to the right angle of the radius, as the circle does.
    expect((first?.[1]?.[0] ?? 0) - 10).toBeCloseTo(0, 5);
  });

  it('through points takes the directions that are said', () => {
    const [piece] = splineThrough({
      points: [
        [0, 0],
        [10, 0],
      ],
      startWay: [0, 7],
      endWay: [0, -1],
      closed: false,
    });
    expect(piece?.[1]?.[0]).toBeCloseTo(0, 12);
    expect(piece?.[1]?.[1]).toBeCloseTo(10 / 3, 12);
    expect(piece?.[2]?.[1]).toBeCloseTo(10 / 3, 12);
  });
});

describe('drawing within limits', () => {
  it('stops for good at what lies too far or is no number', () => {
    for (const bad of [1e6, Number.NaN, Infinity, -Infinity]) {
      const tracer = new Tracer(limits);
      tracer.moveTo([0, 0]);
      tracer.lineTo([1, 1]);
      tracer.lineTo([bad, 0]);
      expect(tracer.stopped).toBe('too-far');
    }
    const curved = new Tracer(limits);
    curved.moveTo([0, 0]);
    curved.curveTo([
      [1e300, 1e300],
      [1, 1],
    ]);
    expect(curved.stopped).toBe('too-far');
    const round = new Tracer(limits);
    round.moveTo([0, 0]);
    round.arcTo(circleArc([0, 0], 1e300, 0, 1), [1, 1]);
    expect(round.stopped).toBe('too-far');
  });

  it('stops before more points than allowed, before they are made', () => {
    const tracer = new Tracer({ toleranceMm: 1e-12, mostPoints: 1000, farthestMm: 1e6 });
    tracer.moveTo([0, 0]);
    tracer.curveTo([
      [1e6, 0],
      [0, 1e6],
    ]);
    expect(tracer.stopped).toBe('too-many-points');
    expect(tracer.points).toBeLessThanOrEqual(1000);
  });

  it('leaves out what has no length, and goes on where a closed line began', () => {
    const lines = traced((tracer) => {
      tracer.moveTo([5, 5]);
      tracer.lineTo([5, 5]);
      tracer.moveTo([0, 0]);
      tracer.lineTo([1, 0]);
      tracer.lineTo([1, 1]);
      tracer.close();
      tracer.lineTo([0, 5]);
    });
    expect(lines).toEqual([
      [
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 0],
      ],
      [
        [0, 0],
        [0, 5],
      ],
    ]);
  });
});
