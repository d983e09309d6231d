import type { Study } from '../../core/study/study.ts';
import type { CallOutcome, CallProblem } from './call.ts';
import { applied, type Change } from './change.ts';
import { nextToSend, openOutbox, type Shelf, type Waiting } from './outbox.ts';

/** What the keeper needs of the world. */
export interface KeeperPorts {
  readonly shelf: Shelf;
  readonly now: () => number;
  readonly send: (change: Change) => Promise<CallOutcome<unknown>>;
  readonly fetchStudy: (id: string) => Promise<CallOutcome<Study>>;
  /** Calls back after so many milliseconds. */
  readonly later: (run: () => void, ms: number) => void;
}

export type Sending = 'all-sent' | 'sending' | 'away';

export interface KeeperState {
  readonly sending: Sending;
  readonly waiting: number;
  /** False when the browser keeps nothing: what waits would be lost with the page. */
  readonly isKept: boolean;
  /** The last change that the server would not take, in its own words. */
  readonly refusal: (CallProblem & { readonly kind: 'refused' }) | undefined;
}

/**
 * Holds the studies that this page works on. A change shows at once, lies on the shelf of the browser until the server
 * has confirmed it, and is sent again until then. What is shown is the server's copy with the waiting changes on top.
 */
export interface Keeper {
  readonly subscribe: (heard: () => void) => () => void;
  readonly state: () => KeeperState;
  readonly study: (id: string) => Study | undefined;
  readonly make: (...changes: readonly Change[]) => void;
  /** Gets the server's copy. Resolves to what went wrong, if something did. */
  readonly load: (id: string) => Promise<CallProblem | undefined>;
  /** Tries now instead of at the next turn. */
  readonly sendNow: () => void;
  readonly forgetRefusal: () => void;
}

const firstWaitMs = 700;
const longestWaitMs = 10_000;
const cached = (id: string): string => `throughcut.study.${id}`;

export const openKeeper = (ports: KeeperPorts): Keeper => {
  const outbox = openOutbox(ports.shelf, ports.now);
  const base = new Map<string, Study>();
  const shown = new Map<string, Study | undefined>();
  const listeners = new Set<() => void>();
  let busy = false;
  let waitMs = firstWaitMs;
  let state: KeeperState = stateNow('all-sent', undefined);

  function stateNow(sending: Sending, refusal: KeeperState['refusal']): KeeperState {
    return { sending, waiting: outbox.waiting().length, isKept: outbox.isKept(), refusal };
  }
  const tell = (sending: Sending, refusal = state.refusal): void => {
    state = stateNow(sending, refusal);
    for (const heard of listeners) heard();
  };
  const setBase = (id: string, study: Study | undefined): void => {
    if (study === undefined) return;
    base.set(id, study);
    shown.delete(id);
    try {
      ports.shelf.setItem(cached(id), JSON.stringify(study));
    } catch {
      // The server has it: the copy here only saves a wait.
    }
  };
  const baseOf = (id: string): Study | undefined => {
    if (!base.has(id)) {
      const kept = readKept(ports.shelf.getItem(cached(id)));
      if (kept !== undefined) base.set(id, kept);
    }
    return base.get(id);
  };
  const ownWaiting = (id: string): readonly Change[] =>
    outbox.waiting().flatMap(({ change }) => (change.studyId === id ? [change] : []));

  const confirm = (sent: readonly Waiting[]): void => {
    outbox.remove(sent.map(({ key }) => key));
    for (const { change } of sent) setBase(change.studyId, applied(baseOf(change.studyId), change));
  };
  const drop = (sent: readonly Waiting[]): void => {
    outbox.remove(sent.map(({ key }) => key));
    for (const { change } of sent) shown.delete(change.studyId);
  };

  const pump = async (): Promise<void> => {
    const batch = nextToSend(outbox.waiting());
    if (busy || batch.length === 0) return;
    busy = true;
    if (state.sending !== 'away') tell('sending');
    const outcome = await ports.send(together(batch));
    busy = false;
    if (outcome.ok) {
      confirm(batch);
      waitMs = firstWaitMs;
    } else if (outcome.why.kind === 'refused') {
      drop(batch);
      tell(state.sending, outcome.why);
    } else {
      tell('away');
      ports.later(() => void pump(), waitMs);
      waitMs = Math.min(waitMs * 2, longestWaitMs);
      return;
    }
    tell(outbox.waiting().length > 0 ? 'sending' : 'all-sent');
    await pump();
  };

  const keeper: Keeper = {
    subscribe: (heard) => {
      listeners.add(heard);
      return () => listeners.delete(heard);
    },
    state: () => state,
    study: (id) => {
      if (!shown.has(id)) shown.set(id, ownWaiting(id).reduce(applied, baseOf(id)));
      return shown.get(id);
    },
    make: (...changes) => {
      for (const change of changes) {
        outbox.add(change);
        shown.delete(change.studyId);
      }
      tell(state.sending);
      void pump();
    },
    load: async (id) => {
      const outcome = await ports.fetchStudy(id);
      if (!outcome.ok) return outcome.why;
      setBase(id, outcome.value);
      tell(state.sending);
      return undefined;
    },
    sendNow: () => {
      waitMs = firstWaitMs;
      void pump();
    },
    forgetRefusal: () => {
      state = { ...state, refusal: undefined };
      for (const heard of listeners) heard();
    },
  };
  void pump();
  return keeper;
};

/** Readings of one study travel in one envelope; everything else alone. */
const together = (batch: readonly Waiting[]): Change => {
  const [first] = batch;
  if (first === undefined) throw new Error('nothing to send');
  if (first.change.kind !== 'read') return first.change;
  const events = batch.flatMap(({ change }) => (change.kind === 'read' ? change.events : []));
  return { ...first.change, events };
};

/** A copy that this page itself wrote; the server's own replaces it as soon as it answers. */
const readKept = (text: string | null): Study | undefined => {
  try {
    const value: unknown = JSON.parse(text ?? 'null');
    return typeof value === 'object' && value !== null && 'version' in value && value.version === 1
      ? (value as Study)
      : undefined;
  } catch {
    return undefined;
  }
};
