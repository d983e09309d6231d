import type { Outcome } from '../core/problem.ts';
import { readingLimits } from './readingLimits.ts';
import { refuseDrawing } from './refuseDrawing.ts';

/** Refuses a file by its size alone, before any of it is read; undefined where it may be read. Refuses: `drawing-too-big`. */
export const refuseBySize = (bytes: number): Outcome<never> | undefined =>
  bytes <= readingLimits.bytes
    ? undefined
    : refuseDrawing('drawing-too-big', {
        megabytes: Math.round(bytes / 1e6),
        most: readingLimits.bytes / 1e6,
      });
