import { figure, text, type ProblemList } from './param.ts';

/** What can be the matter with a file or a message from outside. */
export const formatProblems = {
  'file-not-json': { detail: text },
  'file-version-unknown': { path: text, got: text, known: text },
  'file-key-unknown': { path: text, got: text, key: text, hint: text, known: text },
  'file-value-missing': { path: text, got: text },
  'file-value-wrong-type': { path: text, got: text, wanted: text },
  'file-value-too-small': { path: text, got: text, limit: figure },
  'file-value-not-above': { path: text, got: text, limit: figure },
  'file-value-too-big': { path: text, got: text, limit: figure },
  'file-value-not-below': { path: text, got: text, limit: figure },
  'file-value-not-allowed': { path: text, got: text, allowed: text },
  'file-text-empty': { path: text, got: text },
  'file-text-too-long': { path: text, got: text, limit: figure },
  'file-list-too-short': { path: text, got: text, limit: figure },
  'file-list-too-long': { path: text, got: text, limit: figure },
  'file-value-refused': { path: text, got: text, why: text },
  'plan-not-said': {},
} as const satisfies ProblemList;

export type FormatCode = keyof typeof formatProblems;
