import { text, type ProblemList } from './param.ts';

/** What can be the matter with a file that a person named. */
export const hostProblems = {
  'file-not-found': { file: text },
  'file-not-readable': { file: text, detail: text },
  'file-folder-not-there': { file: text, folder: text },
  'file-is-a-folder': { file: text },
  'file-too-big-to-read': { file: text },
  'file-not-written': { file: text, detail: text },
  'file-name-too-long': { file: text },
  'file-disk-full': { file: text },
  'file-is-the-store': { file: text },
  'stdin-empty': {},
  'stdin-too-big': {},
  'no-home-folder': {},
} as const satisfies ProblemList;

export type HostCode = keyof typeof hostProblems;
