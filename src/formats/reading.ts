import type { Toolpath } from '../core/filecheck/toolpath.ts';
import type { TracerLimits, TracerStop } from '../core/path/tracer.ts';
import { usualToleranceMm } from '../core/path/tracer.ts';
import { refused, type Outcome } from '../core/problem.ts';
import { readingLimits } from './readingLimits.ts';

/**
 * A file being read, in steps of some milliseconds: each yields the share that is done, 0 to 1, never falling. Whoever
 * reads may pause between two steps, or stop for good by asking for no more.
 */
export type Reading = Generator<number, Outcome<Toolpath>, undefined>;

export interface ReadingOptions {
  /** How far a chord may stray from the curve that it stands for, mm. */
  readonly toleranceMm?: number;
}

export const tracerLimits = ({ toleranceMm }: ReadingOptions): TracerLimits => ({
  toleranceMm: toleranceMm ?? usualToleranceMm,
  mostPoints: readingLimits.points,
  farthestMm: readingLimits.farthestMm,
});

/** Why drawing was stopped, as a refusal; `where` is the place of the line in the drawing. */
export const refuseStopped = (stop: TracerStop, where: number): Outcome<never> =>
  stop === 'too-far'
    ? refused('drawing-number-absurd', { where })
    : refused('drawing-too-many-points', { points: readingLimits.points });

/** All steps in one go. */
export const finish = <T>(steps: Generator<number, T, undefined>): T => {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
};
