import { text, type ProblemList } from './param.ts';

/** What can be the matter with a reference file. */
export const referenceProblems = {
  'reference-no-file': {},
  'reference-file-not-found': { file: text },
  'reference-file-not-json': { file: text },
  'reference-file-of-other-form': { file: text, where: text },
  'reference-case-of-other-form': { name: text, where: text },
} as const satisfies ProblemList;

export type ReferenceCode = keyof typeof referenceProblems;
