import type { MotionValues } from '../../src/core/motion/motionValues.ts';
import { cornerSpeed } from '../../src/core/motion/cornerSpeed.ts';
import { wholeJobTime, type JobMove } from '../../src/core/motion/jobTime.ts';
import type { Point } from '../../src/core/path/point.ts';
import type { Polyline } from '../../src/core/path/polyline.ts';
import type { SeededRandom } from '../../src/num/seededRandom.ts';

/** A simulated controller: how long it takes over moves. */
export type Controller = (moves: readonly JobMove[]) => number;

/** A machine such as there are: figures drawn over the range that is met, either corner rule. */
export const inventMotion = (random: SeededRandom): MotionValues => {
  const spread = (low: number, high: number): number => low * (high / low) ** random.uniform();
  const accelerationMmPerS2 = spread(200, 4000);
  return {
    accelerationMmPerS2,
    corner:
      random.uniform() < 0.5
        ? { rule: 'junction-deviation', deviationMm: spread(0.005, 0.1) }
        : { rule: 'speed-jump', xMmPerS: spread(3, 25), yMmPerS: spread(3, 25) },
    travelSpeedMmPerS: spread(80, 500),
    travelAccelerationMmPerS2: accelerationMmPerS2 * spread(0.8, 2.5),
    lineDelayS: 0.12 * random.uniform(),
    jobDelayS: 4 * random.uniform(),
  };
};

/** Moves by the planner's own rules. */
export const plain =
  (motion: MotionValues): Controller =>
  (moves) =>
    wholeJobTime(moves, motion).seconds;

/** How long and how far a change of speed takes in a direction. */
type Change = (
  slow: number,
  fast: number,
  direction: Point,
) => { readonly seconds: number; readonly mm: number };

interface Rules {
  readonly change: Change;
  readonly corner: (into: Point, out: Point) => number;
}

/**
 * Acceleration that itself rises and falls evenly, as controllers with limited jerk do: Δv/a + a/j where full acceleration is
 * reached, else 2√(Δv/j). The corner's rule stays the planner's.
 */
export const gentleStart = (motion: MotionValues, riseS: number): Controller => {
  const a = motion.accelerationMmPerS2;
  return withRules(motion, {
    change: (slow, fast) => {
      const by = fast - slow;
      const seconds = by >= a * riseS ? by / a + riseS : 2 * Math.sqrt((by * riseS) / a);
      return { seconds, mm: ((slow + fast) / 2) * seconds };
    },
    corner: ([ix, iy], [ox, oy]) => cornerSpeed(motion.corner, a, ix, iy, ox, oy),
  });
};

/** Each axis has its own acceleration: along a slope the slower decides. */
export const axisByAxis = (motion: MotionValues, yShare: number): Controller => {
  const a = motion.accelerationMmPerS2;
  return withRules(motion, {
    change: (slow, fast, [x, y]) => {
      const along = Math.min(a / Math.abs(x), (a * yShare) / Math.abs(y));
      const seconds = (fast - slow) / along;
      return { seconds, mm: ((slow + fast) / 2) * seconds };
    },
    corner: ([ix, iy], [ox, oy]) => cornerSpeed(motion.corner, a, ix, iy, ox, oy),
  });
};

/** Comes to a stop at every corner sharper than an angle and does not slow for the others. */
export const stopsAtCorners = (motion: MotionValues, sharperThanRad: number): Controller => {
  const a = motion.accelerationMmPerS2;
  return withRules(motion, {
    change: (slow, fast) => ({
      seconds: (fast - slow) / a,
      mm: ((fast - slow) * (fast + slow)) / (2 * a),
    }),
    corner: ([ix, iy], [ox, oy]) => (ix * ox + iy * oy < Math.cos(sharperThanRad) ? 0 : Infinity),
  });
};

const withRules =
  (motion: MotionValues, rules: Rules): Controller =>
  (moves) => {
    let at: Point = [0, 0];
    let seconds = motion.jobDelayS ?? 0;
    for (const move of moves) {
      if (move.kind !== 'cut') throw new Error('only lines are simulated');
      const start = move.points[0] ?? at;
      seconds += lineSeconds([at, start], motion.travelSpeedMmPerS, rules);
      seconds += lineSeconds(move.points, move.speedMmPerS, rules) + (motion.lineDelayS ?? 0);
      at = move.points.at(-1) ?? start;
    }
    return seconds;
  };

/** Two sweeps as in any planner, but every reachable and peak speed is sought by halving: the change rule is any. */
const lineSeconds = (points: Polyline, limit: number, rules: Rules): number => {
  const segments = points.flatMap((to, i) => {
    const from = points[i - 1] ?? to;
    const mm = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const direction: Point = [(to[0] - from[0]) / mm, (to[1] - from[1]) / mm];
    return mm > 1e-9 ? [{ mm, direction }] : [];
  });
  const speeds = segments.map(({ direction }, i) => {
    const before = segments[i - 1]?.direction;
    return before === undefined ? 0 : Math.min(limit, rules.corner(before, direction));
  });
  speeds.push(0);
  const reach = (
    near: number,
    far: number,
    { mm, direction }: (typeof segments)[number],
  ): number =>
    far <= near ? far : halved(near, far, (v) => rules.change(near, v, direction).mm <= mm);
  segments.forEach((segment, i) => {
    speeds[i + 1] = reach(speeds[i] ?? 0, speeds[i + 1] ?? 0, segment);
  });
  segments.toReversed().forEach((segment, back) => {
    const i = segments.length - 1 - back;
    speeds[i] = reach(speeds[i + 1] ?? 0, speeds[i] ?? 0, segment);
  });
  return segments.reduce((sum, { mm, direction }, i) => {
    const [entry, exit] = [speeds[i] ?? 0, speeds[i + 1] ?? 0];
    const changes = (peak: number) =>
      [rules.change(entry, peak, direction), rules.change(exit, peak, direction)] as const;
    const fits = (peak: number): boolean => {
      const [up, down] = changes(peak);
      return up.mm + down.mm <= mm;
    };
    const peak = halved(Math.max(entry, exit), limit, fits);
    const [up, down] = changes(peak);
    const level = Math.max(0, mm - up.mm - down.mm);
    return sum + up.seconds + down.seconds + level / Math.max(peak, 1e-9);
  }, 0);
};

/** The highest value between two that still fits, where all below it do. */
const halved = (low: number, high: number, fits: (value: number) => boolean): number => {
  if (fits(high)) return high;
  let [least, most] = [low, high];
  for (let round = 0; round < 24; round += 1) {
    const middle = (least + most) / 2;
    if (fits(middle)) least = middle;
    else most = middle;
  }
  return least;
};
