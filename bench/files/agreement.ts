import * as library from 'dxf-parser';
import svgpath from 'svgpath';
import { z } from 'zod';
import type { Point } from '../../src/core/path/point.ts';
import type { Polyline } from '../../src/core/path/polyline.ts';
import type { DrawingKind } from './writeAll.ts';

// Readers that are none of the project's: what they find in our files must agree.

/** Lines of a file in mm, y upwards, in no order that matters. */
type IndependentReader = (text: string) => readonly Polyline[];

const svgBySvgpath: IndependentReader = (text) => {
  const heightMm = Number(/ height="([\d.]+)mm"/.exec(text)?.[1]);
  return [...text.matchAll(/ d="([^"]+)"/g)].flatMap(([, data = '']) => {
    const found: Point[][] = [];
    let start: Point = [0, 0];
    svgpath(data)
      .abs()
      .iterate((segment, _index, x, y) => {
        const [letter, ...figures] = segment;
        const at = (px: number, py: number): Point => [px, heightMm - py];
        if (letter === 'M') {
          start = at(Number(figures[0]), Number(figures[1]));
          found.push([start]);
        } else if (letter === 'Z') found.at(-1)?.push(start);
        else if (letter === 'L') found.at(-1)?.push(at(Number(figures[0]), Number(figures[1])));
        else throw new Error(`${letter} at ${String(x)} ${String(y)} is none of ours`);
      });
    return found;
  });
};

const entityShape = z.looseObject({
  type: z.string(),
  shape: z.boolean().optional(),
  vertices: z.array(z.looseObject({ x: z.number(), y: z.number() })).default([]),
});

const isConstructor = (found: unknown): found is typeof library.DxfParser =>
  typeof found === 'function';

const dxfByDxfParser: IndependentReader = (text) => {
  const Parser = [library.DxfParser, library.default].find(isConstructor);
  if (Parser === undefined) throw new Error('dxf-parser has no constructor');
  const { entities } = z
    .looseObject({ entities: z.array(entityShape) })
    .parse(new Parser().parseSync(text));
  return entities
    .filter(({ type }) => type === 'LWPOLYLINE')
    .map(({ vertices, shape }) => {
      const points = vertices.map(({ x, y }): Point => [x, y]);
      const [first] = points;
      return shape === true && first !== undefined ? [...points, first] : points;
    });
};

/** The plainest walk through X, Y, S and the beam's words there can be; passes count once. */
const gcodeByWalking: IndependentReader = (text) => {
  const found = new Map<string, Polyline>();
  let [x, y, s, lit] = [0, 0, 0, false];
  let line: Point[] = [];
  const end = (): void => {
    if (line.length > 1) found.set(JSON.stringify(line[0]) + JSON.stringify(line[1]), line);
    line = [];
  };
  for (const block of text.replaceAll(/\([^)]*\)/g, '').split('\n')) {
    const word = (letter: string): number | undefined => {
      const value = new RegExp(`${letter}(-?[\\d.]+)`).exec(block)?.[1];
      return value === undefined ? undefined : Number(value);
    };
    const m = word('M');
    if (m === 3 || m === 4) lit = true;
    if (m === 5) lit = false;
    if (word('G') === 0 || m === 5) end();
    const from: Point = [x, y];
    s = word('S') ?? s;
    [x, y] = [word('X') ?? x, word('Y') ?? y];
    if (!lit || !(s > 0) || (x === from[0] && y === from[1])) continue;
    if (line.length === 0) line.push(from);
    line.push([x, y]);
  }
  end();
  return [...found.values()];
};

export const independentReaders: Readonly<Record<DrawingKind, IndependentReader>> = {
  svg: svgBySvgpath,
  dxf: dxfByDxfParser,
  gcode: gcodeByWalking,
};

/**
 * The furthest that any corner of one file's lines lies from the same corner in the other's, in mm; infinite where a line
 * has no twin. Passes, which only programs repeat, count once: a twin may go on where the line ends. O(lines²), cheap.
 */
export const furthestApartMm = (a: readonly Polyline[], b: readonly Polyline[]): number => {
  const unused = new Set(b);
  return a.reduce(
    (worst, line) => {
      let best = Infinity;
      let twin: Polyline | undefined;
      for (const other of unused) {
        const apart = apartMm(line, other);
        if (apart < best) [best, twin] = [apart, other];
        if (best < 0.005) break;
      }
      if (twin !== undefined) unused.delete(twin);
      return Math.max(worst, best);
    },
    unused.size < a.length ? Infinity : 0,
  );
};

const apartMm = (line: Polyline, other: Polyline): number => {
  if (other.length < line.length) return Infinity;
  let worst = 0;
  for (let i = 0; i < line.length && worst < 0.1; i += 1) {
    const [p, q] = [line[i], other[i]];
    if (p === undefined || q === undefined) return Infinity;
    worst = Math.max(worst, Math.hypot(p[0] - q[0], p[1] - q[1]));
  }
  return worst < 0.1 ? worst : Infinity;
};
