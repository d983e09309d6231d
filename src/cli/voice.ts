import type { BackupsStand } from '../app/ports/backups.ts';
import { done, refused, type Outcome } from '../core/problem.ts';
import type { FoundAtPlace } from '../host/foundAtPlace.ts';
import { jsonLog } from '../host/jsonLog.ts';
import type { ServedRequest } from '../http/metrics.ts';
import type { PairingCode } from '../http/pairing.ts';
import { terminalText } from '../words/texts.ts';
import { problemInWords } from '../words/words.ts';
import { tell } from './output.ts';

/** How a server says what happens: to who sits at the terminal, or to a program that gathers logs. */
export interface Voice {
  readonly started: (how: {
    readonly greeting: string;
    readonly port: number;
    readonly store: 'file' | 'database';
    readonly found: FoundAtPlace;
  }) => void;
  readonly stopping: () => void;
  readonly stopped: () => void;
  readonly answered: (request: ServedRequest) => void;
  readonly backups: (stand: BackupsStand) => void;
  readonly paused: (next: PairingCode, from: string) => void;
  readonly broke: (error: unknown) => void;
}

const none = (): void => undefined;

const inWords: Voice = {
  started: ({ greeting }) => process.stdout.write(greeting),
  stopping: none,
  stopped: none,
  answered: none,
  backups: ({ failing }) => {
    if (failing === undefined) {
      tell(terminalText.backupsAgain);
      return;
    }
    const { message, remedy } = problemInWords(failing.problem);
    tell(terminalText.backupsFail(message, remedy));
  },
  paused: ({ code }, from) => {
    const at = new Date(from).toLocaleTimeString();
    process.stdout.write(`${terminalText.pairingPaused(code, at)}\n`);
  },
  broke: (error) => {
    tell(error instanceof Error ? (error.stack ?? error.message) : String(error));
  },
};

/** On standard output, one JSON value a line. No code that lets a phone in: the page at the desk shows one. */
const inJson = (): Voice => {
  const { event } = jsonLog((line) => void process.stdout.write(line));
  return {
    started: ({ port, store, found }) => event({ what: 'started', port, store, found }),
    stopping: () => event({ what: 'stopping' }),
    stopped: () => event({ what: 'stopped' }),
    answered: (request) => event({ what: 'request', ...request }),
    backups: ({ failing }) =>
      event(
        failing === undefined
          ? { what: 'backups-made-again' }
          : { what: 'backups-fail', code: failing.problem.code },
      ),
    paused: () => event({ what: 'pairing-paused' }),
    broke: (error) => event({ what: 'broke', error }),
  };
};

/** As THROUGHCUT_LOG says: `json`, or in words where it is not set. Refuses: `setting-not-one-of`. */
export const openVoice = (given = process.env['THROUGHCUT_LOG']?.trim() ?? ''): Outcome<Voice> => {
  if (given === '') return done(inWords);
  return given === 'json'
    ? done(inJson())
    : refused('setting-not-one-of', { name: 'THROUGHCUT_LOG', given, known: 'json' });
};
