import { planPath, type PathPlan } from '../../src/core/motion/planPath.ts';
import type { Point } from '../../src/core/path/point.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';

/** A wandering line of 100 000 segments of about 0.3 mm, bends and corners of all kinds. */
const longLine: readonly Point[] = (() => {
  const random = seededRandom(3);
  let [x, y, heading] = [0, 0, 0];
  return Array.from({ length: 100_001 }, (): Point => {
    const point: Point = [x, y];
    heading += random.uniform() < 0.05 ? 6 * (random.uniform() - 0.5) : 0.1;
    x += 0.3 * Math.cos(heading);
    y += 0.3 * Math.sin(heading);
    return point;
  });
})();

export const planLongLine = (): PathPlan =>
  planPath(longLine, {
    speedMmPerS: 40,
    accelerationMmPerS2: 800,
    corner: { rule: 'junction-deviation', deviationMm: 0.02 },
  });
