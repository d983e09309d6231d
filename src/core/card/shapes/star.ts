import type { Point } from '../../path/point.ts';
import { unitOutline, type UnitShape } from './unitShape.ts';

const points = 7;
const innerRadius = 0.52;

/** Seven points and seven notches: fourteen corners in every direction, each followed by a short straight. */
export const star: UnitShape = {
  flatters: false,
  outline: unitOutline(
    Array.from({ length: 2 * points }, (_, i): Point => {
      const radius = i % 2 === 0 ? 1 : innerRadius;
      const angle = Math.PI / 2 + (i * Math.PI) / points;
      return [radius * Math.cos(angle), radius * Math.sin(angle)];
    }),
  ),
};
