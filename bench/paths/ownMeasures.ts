import { boxAround } from '../../src/core/path/box.ts';
import { lengthMm } from '../../src/core/path/polyline.ts';
import { readSvg } from '../../src/formats/svg/readSvg.ts';
import type { PathMeasure } from './browserMeasures.ts';

/** CSS Values 4, 5.2: 96 px are an inch. */
const pxAMm = 96 / 25.4;

/**
 * Lengths and boxes of all paths of a drawing by the tool’s own reader and sums, in px as a browser has them. Each
 * path is put into a group of its own, by whose name its lines are found again. Undefined for one without a line.
 */
export const ownMeasures = (text: string): readonly (PathMeasure | undefined)[] => {
  let count = 0;
  const grouped = text.replaceAll(
    /<path\b[^>]*\/>/g,
    (path) => `<g id="path-${String((count += 1))}">${path}</g>`,
  );
  // So fine that what is left is the sum’s own: a chord of a circle of 0.1 mm is shorter by 3e-6.
  const read = readSvg(grouped, { toleranceMm: 1e-6 });
  if (!read.ok) throw new Error(read.problem.code);
  const { lines, page } = read.value;
  const pageMm = page?.heightMm ?? Number.NaN;
  return Array.from({ length: count }, (_, i) => {
    const own = lines.filter(({ layer }) => layer === `path-${String(i + 1)}`);
    const box = boxAround(own.map(({ points }) => points));
    if (box === undefined) return undefined;
    return {
      length: pxAMm * own.reduce((sum, { points }) => sum + lengthMm(points), 0),
      box: [
        pxAMm * box.leftMm,
        pxAMm * (pageMm - box.topMm),
        pxAMm * box.rightMm,
        pxAMm * (pageMm - box.bottomMm),
      ],
    };
  });
};
