import { boxAround, type Box } from './box.ts';
import { drawnOnce } from './drawnOnce.ts';
import { insideTest } from './insideTest.ts';
import type { Point } from './point.ts';
import { signedAreaMm2, type Polyline } from './polyline.ts';

/** How one closed line stands to the others. */
export interface Nested {
  /** The smallest one that goes round it; undefined: none. */
  readonly within: number | undefined;
  /** How many go round it: even, an outline of a part; odd, a hole. */
  readonly depth: number;
  /** Another of the same outline, in the same place; it counts once. */
  readonly copyOf: number | undefined;
}

/** Outlines that lie this near to one another all round are one outline drawn twice. */
const sameMm = 0.02;

/**
 * Which closed lines lie in which, by a sweep from left to right with the set of lines that reach over the sweep: O(n)
 * of them on a sheet full of small parts only within its columns. Lines that cross are taken by where most of them lies.
 */
export const nestingOf = (lines: readonly Polyline[]): readonly Nested[] => {
  const outlines = lines.map(measured);
  const { first, sameAs } = drawnOnce(lines);
  const order = [...first].sort(
    (i, j) => left(outlines[i]) - left(outlines[j]) || area(outlines[j]) - area(outlines[i]),
  );
  const found: Nested[] = lines.map(() => ({ within: undefined, depth: 0, copyOf: undefined }));
  let active: number[] = [];
  for (const i of order) {
    const own = outlines[i];
    if (own === undefined) continue;
    let [within, copyOf]: (number | undefined)[] = [];
    active = active.filter((j) => (outlines[j]?.box.rightMm ?? NaN) >= own.box.leftMm - sameMm);
    // The last begun first: in a nest of many that is the smallest, and none of the others need be asked.
    for (let at = active.length - 1; at >= 0; at -= 1) {
      const j = active[at] ?? NaN;
      const other = outlines[j];
      if (other === undefined) continue;
      if (
        other.box.topMm < own.box.topMm - sameMm ||
        other.box.bottomMm > own.box.bottomMm + sameMm
      )
        continue;
      if (isCopy(own, other)) copyOf = found[j]?.copyOf ?? j;
      else if (
        other.areaMm2 > own.areaMm2 &&
        reaches(other.box, own.box) &&
        (within === undefined || other.areaMm2 < area(outlines[within])) &&
        liesIn(own, other)
      ) {
        within = j;
      }
    }
    if (copyOf === undefined) active.push(i);
    const around = within === undefined ? undefined : (found[within]?.copyOf ?? within);
    const depth = around === undefined ? 0 : (found[around]?.depth ?? NaN) + 1;
    found[i] = { within: around, depth, copyOf };
  }
  sameAs.forEach((same, i) => {
    const of = found[same];
    if (same !== i && of !== undefined) found[i] = { ...of, copyOf: of.copyOf ?? same };
  });
  return found;
};

interface Outline {
  readonly line: Polyline;
  readonly box: Box;
  readonly areaMm2: number;
  /** Middles of a few segments: where most of them lie, the line lies. */
  readonly witnesses: readonly Point[];
  /** Made when first asked for. */
  goesRound?: (point: Point) => boolean;
}

const measured = (line: Polyline): Outline | undefined => {
  const box = boxAround([line]);
  if (box === undefined) return undefined;
  const segments = line.length - 1;
  const witnesses = Array.from({ length: 5 }, (_, k): Point => {
    const i = Math.min(segments - 1, Math.floor((k * segments) / 5));
    const [x0, y0] = line[i] ?? [0, 0];
    const [x1, y1] = line[i + 1] ?? [x0, y0];
    return [(x0 + x1) / 2, (y0 + y1) / 2];
  });
  return { line, box, areaMm2: Math.abs(signedAreaMm2(line)), witnesses };
};

const left = (outline: Outline | undefined): number => outline?.box.leftMm ?? 0;
const area = (outline: Outline | undefined): number => outline?.areaMm2 ?? 0;

const reaches = (outer: Box, inner: Box): boolean =>
  outer.leftMm <= inner.leftMm + sameMm &&
  outer.rightMm >= inner.rightMm - sameMm &&
  outer.bottomMm <= inner.bottomMm + sameMm &&
  outer.topMm >= inner.topMm - sameMm;

const isCopy = (a: Outline, b: Outline): boolean =>
  reaches(a.box, b.box) &&
  reaches(b.box, a.box) &&
  Math.abs(a.areaMm2 - b.areaMm2) <= 0.005 * Math.max(a.areaMm2, b.areaMm2);

const liesIn = (inner: Outline, outer: Outline): boolean => {
  outer.goesRound ??= insideTest(outer.line);
  let votes = 0;
  for (const witness of inner.witnesses) if (outer.goesRound(witness)) votes += 1;
  return 2 * votes > inner.witnesses.length;
};
