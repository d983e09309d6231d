import { figure, text, type ProblemList } from './param.ts';

/** What can stand against a command before any use-case is asked. */
export const cliProblems = {
  'command-misused': { detail: text },
  'order-not-said': {},
  'port-not-a-port': { port: text },
  'setting-not-a-number': { name: text, given: text, least: figure, most: figure },
  'setting-not-one-of': { name: text, given: text, known: text },
  'tls-half-said': {},
  'tls-not-usable': { file: text, detail: text },
  'port-taken': { port: text },
  'port-not-allowed': { port: text },
} as const satisfies ProblemList;

export type CliCode = keyof typeof cliProblems;
