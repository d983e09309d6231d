import type { FoundAtPlace } from './foundAtPlace.ts';
import pino from 'pino';

/**
 * What happens while the server runs, for a program that gathers logs. No name of a person, a material or a thing stands in it, no
 * address as it was asked, no code and no token: routes, statuses, codes of problems, times.
 */
export type LoggedEvent =
  | {
      readonly what: 'started';
      readonly port: number;
      readonly store: 'file' | 'database';
      readonly found: FoundAtPlace;
    }
  | { readonly what: 'stopping' }
  | { readonly what: 'stopped' }
  | {
      readonly what: 'request';
      readonly method: string;
      readonly route: string;
      readonly status: number;
      readonly tookMs: number;
    }
  | { readonly what: 'backups-fail'; readonly code: string }
  | { readonly what: 'backups-made-again' }
  | { readonly what: 'pairing-paused' }
  | { readonly what: 'broke'; readonly error: unknown };

export interface JsonLog {
  readonly event: (event: LoggedEvent) => void;
}

type Level = 'debug' | 'info' | 'warn' | 'error';

/** One line of JSON an event on `write`, with its level in words and its time in ISO 8601, UTC. Below `least` nothing is written. */
export const jsonLog = (write: (line: string) => void, least: Level = 'info'): JsonLog => {
  const logger = pino(
    {
      level: least,
      base: { program: 'throughcut', pid: process.pid },
      timestamp: pino.stdTimeFunctions.isoTime,
      formatters: { level: (label) => ({ level: label }) },
      messageKey: 'what',
    },
    { write },
  );
  return {
    event: ({ what, ...more }) => {
      logger[levelOf({ what, ...more } as LoggedEvent)](
        'error' in more ? { error: described(more.error) } : more,
        what,
      );
    },
  };
};

const levelOf = (event: LoggedEvent): Level => {
  switch (event.what) {
    case 'request':
      return event.status >= 500 ? 'error' : 'info';
    case 'backups-fail':
    case 'broke':
      return 'error';
    case 'pairing-paused':
      return 'warn';
    default:
      return 'info';
  }
};

/** Where it broke, and not what it said: that may hold what people have typed. */
const described = (error: unknown): Readonly<Record<string, unknown>> => {
  if (!(error instanceof Error)) return { name: typeof error };
  const at = (error.stack ?? '').split('\n').filter((line) => /^\s+at /.test(line));
  const code = 'code' in error ? { code: String(error.code) } : {};
  const problem =
    'problem' in error ? { problem: (error.problem as { readonly code: string }).code } : {};
  return { name: error.name, ...code, ...problem, at: at.map((line) => line.trim()) };
};
