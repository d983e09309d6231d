import { refused, type Outcome } from '../core/problem.ts';
import { readingLimits } from './readingLimits.ts';

/** Refuses a file by its size alone, before any of it is read; undefined where it may be read. Refuses: `drawing-too-big`. */
export const refuseBySize = (bytes: number): Outcome<never> | undefined =>
  bytes <= readingLimits.bytes
    ? undefined
    : refused('drawing-too-big', {
        megabytes: Math.round(bytes / 1e6),
        most: readingLimits.bytes / 1e6,
      });
