import type { CallOutcome, CallProblem, Refusal } from './call.ts';
import type { WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import { subjectsOf, type Change } from './change.ts';
import { nextToSend, together, type Outbox, type Waiting } from './outbox.ts';

/** What the server says of a change that it took: the study's revision with it, where it is a change of the study. */
export interface Sent {
  readonly revision?: number;
  /** What it says of the machine now, where it is a change of one. */
  readonly machine?: WorkshopMachine;
}

/**
 * How it stands with what was done here. `away`: nobody answers. `held`: the server answers, but cannot take something
 * now. `not-let-in`: this phone has to be let in first.
 */
export type Sending = 'all-sent' | 'sending' | 'away' | 'held' | 'not-let-in';

export interface SenderPorts {
  readonly outbox: Outbox;
  readonly send: (change: Change, stop: AbortSignal) => Promise<CallOutcome<Sent>>;
  /** Calls back after so many milliseconds. */
  readonly later: (run: () => void, ms: number) => void;
  /** Whether this tab sends for all; else only what no other can know. */
  readonly sendsForAll: () => boolean;
  readonly onSent: (batch: readonly Waiting[], sent: Sent) => void;
  readonly onPutAside: (what: Waiting) => void;
  readonly onStep: () => void;
  /** Nothing is under way any more. */
  readonly onRest: () => void;
}

export interface Sender {
  readonly how: () => Sending;
  /** Why something has to wait, in the server's words where it said some. */
  readonly why: () => CallProblem | undefined;
  readonly isBusy: () => boolean;
  readonly send: () => void;
  /** Tries everything now instead of at the next turn. `afresh`: a request under way may hang on a dead connection. */
  readonly sendNow: (how?: 'afresh') => void;
  readonly letIn: () => void;
  readonly notLetIn: (why: CallProblem) => void;
}

const firstWaitMs = 700;
const longestWaitMs = 10_000;
const longer = (ms: number): number => Math.min(ms * 2, longestWaitMs);

interface Hold {
  readonly waitMs: number;
  readonly why: CallProblem;
  readonly isOver: boolean;
}

/** Sends what waits, again and again until the server has it or will never take it. */
export const openSender = (ports: SenderPorts): Sender => {
  const { outbox } = ports;
  /** Sheets and machines of which a change could not be stored just now; the others go on. */
  const holds = new Map<string, Hold>();
  const atMost = new Map<string, number>();
  let pause: Hold | undefined;
  let busy = false;
  let notLetIn: CallProblem | undefined;
  let underWay: AbortController | undefined;

  const isHeld = (subject: string): boolean => holds.get(subject)?.isOver === false;
  const mine = (): readonly Waiting[] => (ports.sendsForAll() ? outbox.waiting() : outbox.unkept());

  /** Waits a while with what is of one sheet or machine, or with all. */
  const wait = (why: CallProblem, subject?: string): void => {
    const before = subject === undefined ? pause : holds.get(subject);
    const waitMs = before === undefined ? firstWaitMs : longer(before.waitMs);
    const hold = { waitMs, why, isOver: false };
    const set = (to: Hold): void => {
      if (subject === undefined) pause = to;
      else holds.set(subject, to);
    };
    set(hold);
    ports.later(() => {
      if ((subject === undefined ? pause : holds.get(subject)) !== hold) return;
      set({ ...hold, isOver: true });
      void pump();
    }, waitMs);
  };

  const settle = (batch: readonly Waiting[], outcome: CallOutcome<Sent>): void => {
    const [first] = batch;
    if (first === undefined) return;
    if (outcome.ok) {
      pause = notLetIn = undefined;
      holds.delete(subjectsOf(first.change)[0]);
      for (const { key } of batch) atMost.delete(key);
      ports.onSent(batch, outcome.value);
      return;
    }
    const { why } = outcome;
    switch (fateOf(why)) {
      case 'nobody-there':
        wait(why);
        return;
      case 'not-let-in':
        notLetIn = why;
        wait(why);
        return;
      case 'later':
        pause = undefined;
        wait(why, subjectsOf(first.change)[0]);
        return;
      case 'never':
        pause = undefined;
        // One of them is at fault, and the others must not go with it.
        if (batch.length > 1)
          for (const { key } of batch) atMost.set(key, Math.ceil(batch.length / 2));
        else if (why.kind === 'refused') {
          outbox.putAside(first, why);
          ports.onPutAside(first);
        }
    }
  };

  const pump = async (): Promise<void> => {
    if (busy) return;
    busy = true;
    for (;;) {
      const batch =
        pause?.isOver === false
          ? []
          : nextToSend(mine(), { isHeld, atMost: (key) => atMost.get(key) });
      if (batch.length === 0) break;
      underWay = new AbortController();
      ports.onStep();
      const outcome = await ports.send(together(batch), underWay.signal);
      // What was broken off by ourselves is sent again, and the server stores it once.
      if (!underWay.signal.aborted || outcome.ok) settle(batch, outcome);
      ports.onStep();
    }
    underWay = undefined;
    busy = false;
    ports.onStep();
    ports.onRest();
  };

  return {
    how: () => {
      if (notLetIn !== undefined) return 'not-let-in';
      const waiting = outbox.waiting();
      if (waiting.length === 0) return 'all-sent';
      if (pause !== undefined) return 'away';
      return waiting.every(({ change }) => subjectsOf(change).some((subject) => holds.has(subject)))
        ? 'held'
        : 'sending';
    },
    why: () => notLetIn ?? pause?.why ?? [...holds.values()][0]?.why,
    isBusy: () => busy,
    send: () => void pump(),
    sendNow: (how) => {
      if (pause !== undefined) pause = { ...pause, waitMs: firstWaitMs, isOver: true };
      for (const [id, hold] of holds) holds.set(id, { ...hold, waitMs: firstWaitMs, isOver: true });
      if (how === 'afresh') underWay?.abort();
      void pump();
    },
    letIn: () => {
      notLetIn = undefined;
      pause = undefined;
      ports.onStep();
      void pump();
    },
    notLetIn: (why) => {
      notLetIn = why;
      ports.onStep();
    },
  };
};

/** What becomes of a change, by what was said to it. Only what will never be taken is given up sending. */
const fateOf = (why: CallProblem): 'nobody-there' | 'not-let-in' | 'later' | 'never' => {
  if (why.kind === 'away') return 'nobody-there';
  if (why.kind === 'later') return 'later';
  return why.status === 401 ? 'not-let-in' : isForNow(why) ? 'later' : 'never';
};

/** 403: asked under a name that is not ours, as by another door, but for what this phone may not do; 408 and 429: too slow, too much at once; 5xx: broken there. */
const isForNow = ({ status, code }: Refusal): boolean =>
  ([403, 408, 429].includes(status) && code !== 'role-too-low') || status >= 500;
