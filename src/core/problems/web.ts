import { figure, text, type ProblemList } from './param.ts';

/** What can go wrong on the page, or between it and the server. */
export const webProblems = {
  'server-away': {},
  'server-slow': { seconds: figure },
  'server-refused': { status: figure },
  'reply-not-understood': { address: text },
  'list-does-not-step': { text },
  'list-too-long': { count: figure, most: figure },
  'list-comma-unclear': { text },
  'speed-range-empty': { other: figure },
  'line-not-a-setting': { text },
  'line-not-a-reading': { text },
  'line-not-a-width': { text },
  'lines-same-power': { powerPct: figure },
  'lines-too-many': { count: figure, most: figure },
  'line-too-long': { count: figure, most: figure },
  'note-too-long': { count: figure, most: figure },
  'line-with-controls': {},
  'corner-power-too-high': { powerPct: figure },
  'day-to-come': {},
  'line-not-own-gcode': { text },
  'own-gcode-too-long': { count: figure },
} as const satisfies ProblemList;

export type WebCode = keyof typeof webProblems;
