import svgpath from 'svgpath';
import type { Point } from '../../core/path/point.ts';
import type { Polyline } from '../../core/path/polyline.ts';

/** How far a chord may stray from its curve, in mm. */
const toleranceMm = 0.02;

/** No curve on a bed needs more chords. */
const mostChords = 2000;

export interface FlatPath {
  readonly lines: readonly Polyline[];
  /** What is wrong with the path data; what comes before it was read. */
  readonly broken?: string;
}

/** Path data under transforms (the innermost first) as lines in the outermost coordinates. */
export const flattenPath = (
  data: string,
  transforms: readonly string[],
  outer: readonly number[],
): FlatPath => {
  let path = svgpath(data);
  const error: unknown = Reflect.get(path, 'err');
  for (const transform of transforms) path = path.transform(transform);
  path = path
    .matrix([...outer])
    .abs()
    .unshort()
    .unarc();
  const tracer = new Tracer();
  path.iterate((segment, _index, x, y) => {
    tracer.add(segment, [x, y]);
  });
  return {
    lines: tracer.lines(),
    ...(typeof error === 'string' && error !== '' ? { broken: error } : {}),
  };
};

class Tracer {
  readonly #lines: Point[][] = [];
  #current: Point[] = [];

  add(segment: readonly [string, ...number[]], from: Point): void {
    const [kind, a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = segment;
    switch (kind) {
      case 'M':
        this.#begin([a, b]);
        break;
      case 'L':
        this.#to([a, b]);
        break;
      case 'H':
        this.#to([a, from[1]]);
        break;
      case 'V':
        this.#to([from[0], a]);
        break;
      case 'Q':
        this.#curve([from, [a, b], [c, d]]);
        break;
      case 'C':
        this.#curve([from, [a, b], [c, d], [e, f]]);
        break;
      default:
        this.#close();
    }
  }

  lines(): readonly Polyline[] {
    this.#begin();
    return this.#lines;
  }

  #begin(at?: Point): void {
    if (this.#current.length > 1) this.#lines.push(this.#current);
    this.#current = at === undefined ? [] : [at];
  }

  #to(point: Point): void {
    this.#current.push(point);
  }

  /** A closed path goes on from its first point. */
  #close(): void {
    const first = this.#current[0];
    if (first === undefined) return;
    const last = this.#current.at(-1) ?? first;
    if (last[0] !== first[0] || last[1] !== first[1]) this.#to(first);
    this.#begin(first);
  }

  #curve(controls: readonly Point[]): void {
    const chords = chordsFor(controls);
    for (let i = 1; i <= chords; i += 1) this.#to(pointAt(controls, i / chords));
  }
}

/** Enough chords that none strays further than the tolerance: n² = d(d−1)·|second difference| / (8·tolerance). */
const chordsFor = (controls: readonly Point[]): number => {
  const degree = controls.length - 1;
  const bends = controls.slice(2).map((point, i) => {
    const [p, q] = [controls[i] ?? point, controls[i + 1] ?? point];
    return Math.hypot(p[0] - 2 * q[0] + point[0], p[1] - 2 * q[1] + point[1]);
  });
  const wanted = Math.sqrt((degree * (degree - 1) * Math.max(...bends)) / (8 * toleranceMm));
  return Math.min(mostChords, Math.max(1, Math.ceil(wanted)));
};

/** De Casteljau. */
const pointAt = (controls: readonly Point[], t: number): Point => {
  const [first] = controls;
  if (first === undefined) throw new Error('A curve without control points.');
  if (controls.length === 1) return first;
  return pointAt(
    controls.slice(1).map((to, i): Point => {
      const from = controls[i] ?? to;
      return [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t];
    }),
    t,
  );
};
