import { figure, text, type ProblemList } from './param.ts';

/** What can stand against a use-case. */
export const appProblems = {
  'study-not-found': { id: text },
  'card-not-found': { card: text },
  'photo-not-kept': { card: text, side: text },
  'setting-photo-not-kept': { entry: text, subject: text },
  'tally-not-found': { id: text },
  'order-not-found': { id: text },
  'order-id-taken': { id: text },
  'entry-not-found': { id: text },
  'card-code-taken': { card: text },
  'card-code-changed': { card: text, other: text },
  'card-already-read': { card: text },
  'read-cell-would-vanish': { card: text, cell: text },
  'cell-not-on-card': { card: text, cell: text },
  'tally-id-taken': { id: text },
  'entry-id-taken': { id: text },
  'power-above-machine': { powerPct: figure, mostPct: figure },
  'overdrive-needs-reason': { powerPct: figure, limitPct: figure },
  'no-forecast-to-keep': {},
  'rest-not-said': { read: figure, cells: figure },
  'import-names-unknown-setting': { tally: text, id: text },
  'import-names-unknown-machine': { id: text },
  'machine-not-found': { id: text },
  'machine-in-use': { count: figure },
  'machine-is-invented': {},
  'machine-change-id-taken': { id: text },
  'machine-change-ahead': { at: text },
  'sum-took-too-long': { seconds: figure },
  'sum-too-big': { megabytes: figure },
  'sums-waiting': { waiting: figure },
  'sum-not-wanted': {},
} as const satisfies ProblemList;

export type AppCode = keyof typeof appProblems;
