import { refused, type Outcome } from '../core/problem.ts';

/** What a workshop brought in from a file may have at most, in bytes. */
export const importBytesAtMost = 64 * 1024 * 1024;

/** Refuses such a file by its size; undefined where it may be sent. Refuses: `request-body-too-big`. */
export const refuseImportBySize = (bytes: number): Outcome<never> | undefined =>
  bytes <= importBytesAtMost ? undefined : refused('request-body-too-big');
