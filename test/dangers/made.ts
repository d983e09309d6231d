import type { FilesMade } from './whatFires.ts';

/** What came of a danger at one door. */
export interface Came {
  /** The code of the refusal. */
  readonly refused?: string;
  /** Names of files that were written all the same. */
  readonly written: readonly string[];
  /** Codes of what was said. */
  readonly said: readonly string[];
  readonly files: FilesMade;
}

export const refusedBy = (refused: string, written: readonly string[] = []): Came => ({
  refused,
  written,
  said: [],
  files: { fires: [], words: [] },
});
