import { median } from '../../num/median.ts';
import type { Point } from '../path/point.ts';
import { minus } from './cellLooks.ts';
import { toneAt, type Seen, type Tone } from './opponent.ts';
import type { RimPoint, ShapeGrid } from './shapeGrid.ts';

/** How a cut shows along the outline of a shape that is in place. */
export interface CutLine {
  /** Share of the outline along which it is seen as a line. */
  readonly lined: number;
  /** The faintest line that would have been seen there, ln of light and hues. */
  readonly faintestLn: number;
}

/** From the cut to what lies beside it. */
const besideMm = 0.6;
/** What lies this far off the outline, on either side, has no cut: what strays there is the sheet's own. */
const elsewhereMm = 1.3;
/** From behind a card is found to about this, by its sides alone. */
const shiftsMm: readonly Point[] = [-0.4, -0.2, 0, 0.2, 0.4].flatMap((x) =>
  [-0.4, -0.2, 0, 0.2, 0.4].map((y): Point => [x, y]),
);
/** Lines are followed over pieces of so many rim points to either side. */
const along = 2;
/** Fainter than this is grain, however even the sheet. */
const leastLn = 0.05;
const timesStray = 4;

export const cutLine = (seen: Seen, { rim }: ShapeGrid, middle: Point): CutLine => {
  const stray = [-elsewhereMm, elsewhereMm].flatMap((off) => followed(seen, rim, middle, off));
  const strayLn = 1.4826 * (median(stray.map((tone) => Math.hypot(...tone))) ?? NaN);
  const faintestLn = Math.max(leastLn, timesStray * strayLn);
  const shares = shiftsMm.map(([x, y]) => {
    const tones = followed(seen, rim, [middle[0] + x, middle[1] + y], 0);
    const usual = usualOf(tones.filter((tone) => Math.hypot(...tone) > faintestLn));
    return (
      tones.filter((tone) => Math.hypot(...tone) > faintestLn && dot(tone, usual) > 0).length /
      Math.max(1, tones.length)
    );
  });
  return { lined: Math.max(...shares), faintestLn };
};

/** How each rim point differs from what lies to either side of it, the mean over those next to it. */
const followed = (
  seen: Seen,
  rim: readonly RimPoint[],
  [cx, cy]: Point,
  offMm: number,
): readonly Tone[] => {
  const ridges = rim.map(({ at, outward }): Tone => {
    const tone = (mm: number): Tone =>
      toneAt(
        seen,
        cx + at[0] + (offMm + mm) * outward[0],
        cy + at[1] + (offMm + mm) * outward[1],
      ) ?? [NaN, NaN, NaN];
    const [here, inner, outer] = [tone(0), tone(-besideMm), tone(besideMm)];
    return minus(here, [
      (inner[0] + outer[0]) / 2,
      (inner[1] + outer[1]) / 2,
      (inner[2] + outer[2]) / 2,
    ]);
  });
  return ridges.map((_, i): Tone => {
    const near = Array.from(
      { length: 2 * along + 1 },
      (__, k) => ridges[(i + k - along + ridges.length) % ridges.length],
    );
    const mean = (k: 0 | 1 | 2): number =>
      near.reduce((sum, tone) => sum + (tone?.[k] ?? NaN), 0) / near.length;
    return [mean(0), mean(1), mean(2)];
  });
};

const usualOf = (tones: readonly Tone[]): Tone => [
  median(tones.map((tone) => tone[0])) ?? NaN,
  median(tones.map((tone) => tone[1])) ?? NaN,
  median(tones.map((tone) => tone[2])) ?? NaN,
];

const dot = (a: Tone, b: Tone): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
