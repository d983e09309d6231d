import type { CutStudy } from '../../../core/cutmodel/cutStudy.ts';

/** One read cell as a sign in the picture. */
export interface PicturePoint {
  readonly powerPct: number;
  readonly speedMmPerS: number;
  readonly grade: 'out' | 'hangs' | 'stays';
}

/** How the picture is drawn, as far as signs may cover one another. */
export interface SignRoom {
  readonly pxPerPct: number;
  readonly pxPerMmPerS: number;
  /** Across a sign, with what it keeps free around it. */
  readonly signPx: number;
}

/** Every graded cell as a point, where it was cut. */
export const gradedPoints = (study: CutStudy): readonly PicturePoint[] =>
  study.cells.flatMap(({ powerPct, speedMmPerS, grade, spoilt }) =>
    grade === undefined || spoilt !== undefined ? [] : [{ powerPct, speedMmPerS, grade }],
  );

/**
 * The same, side by side where they would lie on one another: cells of one setting, and of settings so near that their signs
 * would touch. Each keeps its speed; what is cut at another power keeps its distance from the next. O(n²) in the cells.
 */
export const besideOneAnother = (
  points: readonly PicturePoint[],
  { pxPerPct, pxPerMmPerS, signPx }: SignRoom,
): readonly PicturePoint[] => {
  const powers = [...new Set(points.map(({ powerPct }) => powerPct))].sort((a, b) => a - b);
  const gaps = powers.slice(1).map((power, i) => power - (powers[i] ?? power));
  const mostPx = (Math.min(...gaps, Infinity) * pxPerPct) / 2 - signPx / 2;
  const placed: { readonly offPx: number; readonly point: PicturePoint }[] = [];
  const offsets = points.map((point) => {
    const near = placed.filter(
      (other) =>
        other.point.powerPct === point.powerPct &&
        Math.abs(other.point.speedMmPerS - point.speedMmPerS) * pxPerMmPerS < signPx,
    );
    const isFree = (offPx: number): boolean =>
      near.every((other) => Math.abs(other.offPx - offPx) >= signPx * 0.999);
    const tried = Array.from({ length: 2 * near.length + 1 }, (_, i) => sideOf(i) * signPx);
    const offPx = tried.find(isFree) ?? 0;
    placed.push({ offPx, point });
    return offPx;
  });
  const widest = Math.max(...offsets.map(Math.abs), 0);
  const squeeze = widest > mostPx ? Math.max(0, mostPx) / widest : 1;
  return points.map((point, i) => ({
    ...point,
    powerPct: point.powerPct + ((offsets[i] ?? 0) * squeeze) / pxPerPct,
  }));
};

/** 0, 1, −1, 2, −2 … */
const sideOf = (i: number): number => (i % 2 === 1 ? (i + 1) / 2 : -i / 2);
