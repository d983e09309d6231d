import { defaultMachineId, type WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import type { Study } from '../../core/study/study.ts';
import type { CallOutcome, CallProblem } from './call.ts';
import { applied, concerns, type Change } from './change.ts';
import type { MachineSaid } from './machineChanges.ts';
import { nextToSend, openOutbox, type Shelf, type Waiting } from './outbox.ts';

/** The server's copy. Its revision rises with every change, whoever made it. */
export interface Fetched {
  readonly study: Study;
  readonly revision: number;
}

/** What the server says of a change that it took: the study's revision with it, where it is a change of the study. */
export interface Sent {
  readonly revision?: number;
  /** What it says of the machine now, where it is a change of one. */
  readonly machine?: WorkshopMachine;
}

/** What the keeper needs of the world. */
export interface KeeperPorts {
  readonly shelf: Shelf;
  readonly now: () => number;
  readonly send: (change: Change) => Promise<CallOutcome<Sent>>;
  /** What the server says of a machine, before a waiting change of it is taken as done. */
  readonly heardOfMachine?: (machine: WorkshopMachine) => void;
  readonly fetchStudy: (id: string) => Promise<CallOutcome<Fetched>>;
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
  /** What was said of machines and not confirmed yet; the same array as long as nothing changes. */
  readonly machineChanges: () => readonly MachineSaid[];
  readonly make: (...changes: readonly Change[]) => void;
  /** Gets the server's copy. Resolves to what went wrong, if something did. */
  readonly load: (id: string) => Promise<CallProblem | undefined>;
  /** Someone changed a study, perhaps this page itself; no revision: it is gone. Only studies opened here are fetched. */
  readonly noticed: (id: string, revision: number | undefined) => void;
  /** Fetches every study opened here again, as after a time without news. */
  readonly catchUp: () => void;
  /** Tries now instead of at the next turn. */
  readonly sendNow: () => void;
  readonly forgetRefusal: () => void;
}

const firstWaitMs = 700;
const longestWaitMs = 10_000;
const cached = (id: string): string => `throughcut.study.${id}`;

export const openKeeper = (ports: KeeperPorts): Keeper => {
  const outbox = openOutbox(ports.shelf, ports.now);
  const base = new Map<string, Fetched>();
  /** Revisions that were told of while this page was sending: fetched when it is done, unless they were its own. */
  const stale = new Map<string, number>();
  const shown = new Map<string, Study | undefined>();
  /** What was shown last of each study, whatever has happened since. */
  const before = new Map<string, Study | undefined>();
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
  const setBase = (id: string, study: Study | undefined, revision: number): void => {
    if (study === undefined) return;
    base.set(id, { study, revision });
    shown.delete(id);
    try {
      ports.shelf.setItem(cached(id), JSON.stringify(study));
    } catch {
      // The server has it: the copy here only saves a wait.
    }
  };
  const baseOf = (id: string): Fetched | undefined => {
    if (!base.has(id)) {
      const kept = readKept(ports.shelf.getItem(cached(id)));
      if (kept !== undefined) base.set(id, { study: kept, revision: 0 });
    }
    return base.get(id);
  };
  const ownWaiting = (id: string): readonly Change[] =>
    outbox
      .waiting()
      .flatMap(({ change }) =>
        concerns(change, { id, machineId: machineIdOf(id) }) ? [change] : [],
      );
  /** By the server's copy, else by the change that begins the study. */
  const machineIdOf = (id: string): string | undefined =>
    baseOf(id)?.study.machineId ??
    outbox
      .waiting()
      .flatMap(({ change }) =>
        change.kind === 'start' && change.studyId === id ? [change.study.machineId] : [],
      )[0];
  let saidOfMachines: readonly MachineSaid[] = [];
  const readSaidOfMachines = (): void => {
    const now = outbox.waiting().flatMap(({ change }) => ('studyId' in change ? [] : [change]));
    if (now.length > 0 || saidOfMachines.length > 0) saidOfMachines = now;
  };
  readSaidOfMachines();
  /** Forgets what was put together for whatever a change concerns. */
  const changed = (change: Change): void => {
    readSaidOfMachines();
    if ('studyId' in change) shown.delete(change.studyId);
    else shown.clear();
  };

  /** What was sent is the server's now. A revision that jumped says that someone else changed the study too. */
  const confirm = (sent: readonly Waiting[], { revision, machine }: Sent): void => {
    if (machine !== undefined) ports.heardOfMachine?.(machine);
    outbox.remove(sent.map(({ key }) => key));
    for (const { change } of sent) {
      if (!('studyId' in change)) {
        for (const [id, { study, revision: held }] of base)
          if (study.machineId === change.machineId) setBase(id, applied(study, change), held);
        changed(change);
        continue;
      }
      const held = baseOf(change.studyId);
      const known = held?.revision ?? 0;
      const now = Math.max(known, revision ?? 0);
      setBase(change.studyId, applied(held?.study, change), now);
      // Which machine is the default, the server knows.
      const isOfDefault = base.get(change.studyId)?.study.machineId === defaultMachineId;
      if (isOfDefault || (known > 0 && now > known + 1)) stale.set(change.studyId, Infinity);
    }
  };
  const load = async (id: string): Promise<CallProblem | undefined> => {
    const outcome = await ports.fetchStudy(id);
    if (!outcome.ok) return outcome.why;
    const { study, revision } = outcome.value;
    // A reply that was overtaken by a change of our own would take that change away again.
    if (revision >= (baseOf(id)?.revision ?? 0)) {
      setBase(id, study, revision);
      tell(state.sending);
    }
    return undefined;
  };
  const loadStale = (): void => {
    if (busy) return;
    const told = [...stale];
    stale.clear();
    for (const [id, revision] of told) {
      if (revision > (base.get(id)?.revision ?? 0)) void load(id);
    }
  };
  const drop = (sent: readonly Waiting[]): void => {
    outbox.remove(sent.map(({ key }) => key));
    for (const { change } of sent) changed(change);
  };

  const pump = async (): Promise<void> => {
    const batch = nextToSend(outbox.waiting());
    if (busy || batch.length === 0) return;
    busy = true;
    if (state.sending !== 'away') tell('sending');
    const outcome = await ports.send(together(batch));
    busy = false;
    if (outcome.ok) {
      confirm(batch, outcome.value);
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
    if (outbox.waiting().length === 0) loadStale();
    await pump();
  };

  const keeper: Keeper = {
    subscribe: (heard) => {
      listeners.add(heard);
      return () => listeners.delete(heard);
    },
    state: () => state,
    study: (id) => {
      if (!shown.has(id)) {
        const now = ownWaiting(id).reduce(applied, baseOf(id)?.study);
        // A confirmation changes nothing that is seen: then the very same study is given, and nothing is reckoned anew.
        const last = before.get(id);
        shown.set(id, isSame(last, now) ? last : now);
        before.set(id, shown.get(id));
      }
      return shown.get(id);
    },
    machineChanges: () => saidOfMachines,
    make: (...changes) => {
      for (const change of changes) {
        outbox.add(change);
        changed(change);
      }
      tell(state.sending);
      void pump();
    },
    load,
    noticed: (id, revision) => {
      if (!base.has(id)) return;
      if (revision === undefined) {
        base.delete(id);
        shown.delete(id);
        ports.shelf.removeItem(cached(id));
        tell(state.sending);
      } else if (revision > (base.get(id)?.revision ?? 0)) {
        stale.set(id, revision);
        loadStale();
      }
    },
    catchUp: () => {
      for (const id of base.keys()) stale.set(id, Infinity);
      loadStale();
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

const isSame = (a: Study | undefined, b: Study | undefined): boolean =>
  a === b || JSON.stringify(a) === JSON.stringify(b);

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
      ? withMachine(value as WithoutMachine)
      : undefined;
  } catch {
    return undefined;
  }
};

/** A copy from before machines were things of their own names none. */
const withMachine = (study: WithoutMachine): Study => ({
  ...study,
  machineId: study.machineId ?? defaultMachineId,
  machineChanges: study.machineChanges ?? [],
});

type WithoutMachine = Omit<Study, 'machineId' | 'machineChanges'> & Partial<Study>;
