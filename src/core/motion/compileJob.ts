import type { MotionValues } from './motionValues.ts';
import { distanceMm, type Point } from '../path/point.ts';
import type { Polyline } from '../path/polyline.ts';
import { endOfLine, travelSeconds, type JobMove } from './jobTime.ts';
import { planPath } from './planPath.ts';

/** A job boiled down to what its time depends on, for many machines one after the other. */
export interface CompiledJob {
  /** Lines that differ in more than their place, and how often each is run. */
  readonly lines: readonly Counted<{ readonly points: Polyline; readonly speedMmPerS: number }>[];
  readonly travels: readonly Counted<{
    readonly lengthMm: number;
    readonly speedMmPerS?: number;
  }>[];
  readonly starts: number;
  readonly waitS: number;
}

type Counted<T> = T & { readonly count: number };

/** O(points). */
export const compileJob = (moves: readonly JobMove[]): CompiledJob => {
  const lines = new Tally<{ points: Polyline; speedMmPerS: number }>();
  const travels = new Tally<{ lengthMm: number; speedMmPerS?: number }>();
  let at: Point = [0, 0];
  let [starts, waitS] = [0, 0];
  for (const move of moves) {
    switch (move.kind) {
      case 'wait':
        waitS += move.seconds;
        break;
      case 'travel': {
        const lengthMm = distanceMm(at, move.to);
        const { speedMmPerS } = move;
        travels.add(`${lengthMm.toFixed(6)} ${String(speedMmPerS)}`, 1, {
          lengthMm,
          ...(speedMmPerS === undefined ? {} : { speedMmPerS }),
        });
        at = move.to;
        break;
      }
      case 'cut': {
        const { points, speedMmPerS, passes } = move;
        const [x0, y0] = points[0] ?? at;
        const lengthMm = distanceMm(at, [x0, y0]);
        travels.add(lengthMm.toFixed(6), 1, { lengthMm });
        const steps = points.map(([x, y]) => `${(x - x0).toFixed(6)},${(y - y0).toFixed(6)}`);
        lines.add([speedMmPerS, ...steps].join(' '), passes, { points, speedMmPerS });
        starts += passes;
        at = endOfLine(points, passes) ?? at;
      }
    }
  }
  return { lines: lines.counted(), travels: travels.counted(), starts, waitS };
};

class Tally<T> {
  readonly #by = new Map<string, { readonly item: T; count: number }>();

  add(key: string, count: number, item: T): void {
    const known = this.#by.get(key);
    if (known === undefined) this.#by.set(key, { item, count });
    else known.count += count;
  }

  counted(): readonly Counted<T>[] {
    return [...this.#by.values()].map(({ item, count }) => ({ ...item, count }));
  }
}

/** Seconds of all lines: the dear part, which knows nothing of travel and delays. */
export const lineSeconds = (
  { lines }: CompiledJob,
  { accelerationMmPerS2, corner }: Pick<MotionValues, 'accelerationMmPerS2' | 'corner'>,
): number =>
  lines.reduce((sum, { points, speedMmPerS, count }) => {
    const plan = planPath(points, { speedMmPerS, accelerationMmPerS2, corner });
    return sum + count * plan.seconds;
  }, 0);

/** Seconds of all that is not a line; with {@link lineSeconds} the whole job, as `wholeJobTime` has it. */
export const otherSeconds = (job: CompiledJob, motion: MotionValues): number =>
  job.travels.reduce(
    (sum, { lengthMm, speedMmPerS, count }) =>
      sum + count * travelSeconds(lengthMm, motion, speedMmPerS),
    job.waitS + job.starts * (motion.lineDelayS ?? 0) + (motion.jobDelayS ?? 0),
  );
