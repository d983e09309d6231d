import type { Polyline } from '../../../core/path/polyline.ts';

/** Lines in mm, y upwards, as the `d` of a path in a picture whose y points down. */
export const pathOf = (lines: readonly Polyline[], heightMm: number): string =>
  lines
    .map((line) =>
      line
        .map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${rounded(x)} ${rounded(heightMm - y)}`)
        .join(''),
    )
    .join('');

const rounded = (mm: number): string => String(Number(mm.toFixed(2)));
