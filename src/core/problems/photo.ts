import { figure, text, type ProblemList } from './param.ts';

/** Why a photograph cannot be read, and what is to be said of one that was. */
export const photoProblems = {
  'photo-not-a-picture': { file: text },
  'photo-too-big': { file: text, megapixels: figure, limitMegapixels: figure },
  'photo-too-small': { file: text, widthPx: figure, heightPx: figure },
  'photo-broken': { file: text, detail: text },
  'photo-card-not-found': {},
  'photo-code-unlike': { code: text },
  'photo-little-contrast': {},
  'photo-no-back': { count: figure },
  'photo-back-not-clear': {},
  'photo-cant-tell': { count: figure },
  'tones-corners': {},
  'tones-too-small': { leastPxPerMm: figure },
  'tones-no-paper': {},
  'tones-burnt-out': {},
} as const satisfies ProblemList;

export type PhotoCode = keyof typeof photoProblems;
