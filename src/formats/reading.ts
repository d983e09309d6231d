import type { TracerLimits, TracerStop } from '../core/path/tracer.ts';
import { usualToleranceMm } from '../core/path/tracer.ts';
import { refused, type Outcome } from '../core/problem.ts';
import { readingLimits } from './readingLimits.ts';

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
