import { defaultMachineId, type WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import type { Study } from '../../core/study/study.ts';
import { isNotLetIn, type CallOutcome, type CallProblem } from './call.ts';
import { applied, concerns, withoutTakenBack, type Change } from './change.ts';
import type { MachineSaid } from './machineChanges.ts';
import { openOutbox, type PutAside, type Waiting } from './outbox.ts';
import { openSender, type Sending, type Sent } from './sender.ts';
import { copyKey, type Shelf } from './shelf.ts';
import type { TabMessage, Tabs } from './tabs.ts';

/** The server's copy. Its revision rises with every change, whoever made it. */
export interface Fetched {
  readonly study: Study;
  readonly revision: number;
}

/** What the store needs of the world. */
export interface PageStorePorts {
  readonly shelf: Shelf;
  readonly now: () => number;
  readonly send: (change: Change, stop: AbortSignal) => Promise<CallOutcome<Sent>>;
  /** What the server says of a machine, before a waiting change of it is taken as done. */
  readonly onMachine?: (machine: WorkshopMachine) => void;
  readonly fetchStudy: (id: string) => Promise<CallOutcome<Fetched>>;
  /** Calls back after so many milliseconds. */
  readonly later: (run: () => void, ms: number) => void;
  readonly tabs: Tabs;
  /** A name that no other tab has. */
  readonly tab: string;
}

export interface PageStoreState {
  readonly sending: Sending;
  /** Why something has to wait. */
  readonly why: CallProblem | undefined;
  readonly waiting: number;
  /** How many of those are of which sheet, by its id. */
  readonly waitingOf: ReadonlyMap<string, number>;
  /** How many of those the browser had no room for: they would be lost with the page. */
  readonly unkept: number;
  /** What the server would not take. */
  readonly aside: readonly PutAside[];
}

/**
 * Holds the studies that this page works on. A change shows at once, lies on the shelf of the browser until the server
 * has confirmed it, and is sent again until then. What is shown is the server's copy with the waiting changes on top.
 */
export interface PageStore {
  readonly subscribe: (heard: () => void) => () => void;
  readonly state: () => PageStoreState;
  readonly study: (id: string) => Study | undefined;
  /** What was said of machines and not confirmed yet; the same array as long as nothing changes. */
  readonly machineChanges: () => readonly MachineSaid[];
  readonly make: (...changes: readonly Change[]) => void;
  /** Gets the server's copy. Resolves to what went wrong, if something did. */
  readonly load: (id: string) => Promise<CallProblem | undefined>;
  /** Someone changed a study, perhaps this page itself; no revision: it is gone. Only studies opened here are fetched. */
  readonly noticed: (id: string, revision: number | undefined) => void;
  /** Fetches every study opened here again, as after a time without news: the server may even have another store. */
  readonly catchUp: () => void;
  /** Tries now instead of at the next turn. `afresh`: what is under way is broken off and sent again. */
  readonly sendNow: (how?: 'afresh') => void;
  /** Some call was refused, since this phone has not been let in. */
  readonly notLetIn: (why: CallProblem) => void;
  readonly letIn: () => void;
  /** Takes what was put aside away from there, and makes these changes instead of it. */
  readonly settleAside: (what: readonly PutAside[], instead: readonly Change[]) => void;
}

/** Between two tries to fetch what a reply was lost of. */
const tryAgainMs = 3000;

export const openPageStore = (ports: PageStorePorts): PageStore => {
  const outbox = openOutbox(ports);
  const base = new Map<string, Fetched>();
  /** Revisions that were told of while this page was sending: fetched when it is done, unless they were its own. */
  const stale = new Map<string, number>();
  /** Asked for, and not had while the server was away. */
  const missing = new Set<string>();
  /** Asked for, and not answered yet: how often. */
  const underWay = new Map<string, number>();
  let tryingAgain = false;
  const shown = new Map<string, Study | undefined>();
  /** What was shown last of each study, whatever has happened since. */
  const before = new Map<string, Study | undefined>();
  const listeners = new Set<() => void>();
  /** How it stands with the tab that sends for this one. */
  let elsewhere: Pick<PageStoreState, 'sending' | 'why'> | undefined;

  const sender = openSender({
    ...ports,
    outbox,
    sendsForAll: ports.tabs.isFirst,
    onSent: (batch, { revision, machine }) => {
      if (machine !== undefined) ports.onMachine?.(machine);
      outbox.remove(batch.map(({ key }) => key));
      confirm(batch, revision);
      const keys = batch.map(({ key }) => key);
      ports.tabs.tell({ kind: 'sent', keys, ...(revision === undefined ? {} : { revision }) });
    },
    onPutAside: ({ change }) => {
      changed(change);
      ports.tabs.tell({ kind: 'added' });
    },
    onStep: () => tell(),
    onRest: () => loadStale(),
  });
  let state: PageStoreState = stateNow();

  function stateNow(): PageStoreState {
    const own = { sending: sender.how(), why: sender.why() };
    const waiting = outbox.waiting().length;
    const waitingOf = new Map<string, number>();
    for (const { change } of outbox.waiting())
      if ('studyId' in change)
        waitingOf.set(change.studyId, (waitingOf.get(change.studyId) ?? 0) + 1);
    // What this tab does not send, it only knows of by hearsay.
    const isOthers = own.sending === 'sending' && !sender.isBusy();
    const { sending, why } = isOthers ? (elsewhere ?? own) : own;
    return {
      sending: sending === 'all-sent' && waiting > 0 ? 'sending' : sending,
      why,
      waiting,
      waitingOf,
      unkept: outbox.unkept().length,
      aside: outbox.aside(),
    };
  }
  const tell = (): void => {
    const last = state;
    state = stateNow();
    for (const heard of listeners) heard();
    if (ports.tabs.isFirst() && (last.sending !== state.sending || last.why !== state.why))
      ports.tabs.tell({ kind: 'how', how: state.sending, why: state.why });
  };
  const setBase = (id: string, study: Study | undefined, revision: number): void => {
    if (study === undefined) return;
    base.set(id, { study, revision });
    shown.delete(id);
    try {
      ports.shelf.setItem(copyKey(id), JSON.stringify(study));
    } catch {
      // The server has it: the copy here only saves a wait.
    }
  };
  const baseOf = (id: string): Fetched | undefined => {
    if (!base.has(id)) {
      const kept = readKept(ports.shelf.getItem(copyKey(id)));
      if (kept !== undefined) base.set(id, { study: kept, revision: 0 });
    }
    return base.get(id);
  };
  const dropBase = (id: string): void => {
    base.delete(id);
    shown.delete(id);
    ports.shelf.removeItem(copyKey(id));
    tell();
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
  const confirm = (sent: readonly Waiting[], revision: number | undefined): void => {
    const touched = new Set<string>();
    for (const { change } of sent) {
      if ('studyId' in change) {
        touched.add(change.studyId);
        continue;
      }
      for (const [id, { study, revision: held }] of base)
        if (study.machineId === change.machineId) setBase(id, applied(study, change), held);
      changed(change);
    }
    for (const id of touched)
      confirmStudy(
        id,
        sent.flatMap(({ change }) =>
          'studyId' in change && change.studyId === id ? [change] : [],
        ),
        revision,
      );
  };
  const confirmStudy = (
    id: string,
    sent: readonly Change[],
    revision: number | undefined,
  ): void => {
    if (sent.some(({ kind }) => kind === 'remove-study')) {
      dropBase(id);
      return;
    }
    const held = baseOf(id);
    const next = sent.reduce(applied, held?.study);
    const known = held?.revision ?? 0;
    const now = Math.max(known, revision ?? 0);
    // What was sent twice, as by the tab that was first before, raised nothing the second time.
    const isOwn = now <= known || (now === known + 1 && !isSame(held?.study, next));
    setBase(id, next, now);
    // Which machine is the default, the server knows.
    const isOfDefault = base.get(id)?.study.machineId === defaultMachineId;
    if (isOfDefault || !isOwn) stale.set(id, Infinity);
  };
  const load = async (id: string): Promise<CallProblem | undefined> => {
    const knownBefore = baseOf(id)?.revision ?? 0;
    underWay.set(id, (underWay.get(id) ?? 0) + 1);
    const outcome = await ports.fetchStudy(id);
    underWay.set(id, (underWay.get(id) ?? 1) - 1);
    if (!outcome.ok) {
      const { why } = outcome;
      if (isNotLetIn(why)) sender.notLetIn(why);
      if (why.kind === 'refused' && why.status === 404 && base.has(id)) dropBase(id);
      else if (!base.has(id)) missing.add(id);
      else if (why.kind !== 'refused') tryAgain(id);
      return why;
    }
    missing.delete(id);
    const { study, revision } = outcome.value;
    const known = baseOf(id)?.revision ?? 0;
    if (revision < known && known > knownBefore) {
      // A reply that was overtaken by a change of our own would take that change away again.
      stale.set(id, Infinity);
      loadStale();
    } else {
      // A lower revision than before is no mistake: the server may have another store by now.
      setBase(id, study, revision);
      tell();
      loadStale();
    }
    return undefined;
  };
  /** What is to be fetched whatever its revision stays so, though news of one comes after. */
  const newer = (id: string, revision: number): void =>
    void stale.set(id, Math.max(stale.get(id) ?? 0, revision));
  /** One reply that was lost must not leave a screen behind for good: no other news may come for hours. */
  const tryAgain = (id: string): void => {
    stale.set(id, Infinity);
    if (tryingAgain) return;
    tryingAgain = true;
    ports.later(() => {
      tryingAgain = false;
      loadStale();
    }, tryAgainMs);
  };
  const loadStale = (): void => {
    if (sender.isBusy()) return;
    const told = [...stale];
    stale.clear();
    for (const [id, revision] of told) {
      if (revision > (base.get(id)?.revision ?? 0)) void load(id);
    }
  };
  /** What other tabs put on the shelf, or took from it without this one having heard how it went. */
  const reread = (): void => {
    for (const { change } of outbox.reread())
      if ('studyId' in change) stale.set(change.studyId, Infinity);
    shown.clear();
    readSaidOfMachines();
    tell();
    loadStale();
  };

  const heard = (message: TabMessage): void => {
    switch (message.kind) {
      case 'added':
        reread();
        sender.send();
        return;
      case 'sent': {
        const sent = outbox.waiting().filter(({ key }) => message.keys.includes(key));
        outbox.remove(message.keys);
        confirm(sent, message.revision);
        reread();
        return;
      }
      case 'how':
        elsewhere = { sending: message.how, why: message.why };
        if (message.how === 'not-let-in' && message.why !== undefined) sender.notLetIn(message.why);
        else if (sender.how() === 'not-let-in') sender.letIn();
        tell();
        return;
      case 'let-in':
        elsewhere = undefined;
        sender.letIn();
        store.catchUp();
        return;
      case 'news':
        if (message.studyId !== undefined) store.noticed(message.studyId, message.revision);
        return;
      case 'look-again':
        store.catchUp();
        return;
      case 'left':
    }
  };

  const store: PageStore = {
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    state: () => state,
    study: (id) => {
      if (!shown.has(id)) {
        const now = withoutTakenBack(ownWaiting(id)).reduce(applied, baseOf(id)?.study);
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
      ports.tabs.tell({ kind: 'added' });
      tell();
      sender.send();
    },
    load,
    noticed: (id, revision) => {
      if (!base.has(id)) {
        // What is on its way may have been read before this was stored.
        if ((underWay.get(id) ?? 0) > 0) newer(id, revision ?? Infinity);
        return;
      }
      if (revision === undefined) {
        dropBase(id);
      } else if (revision > (base.get(id)?.revision ?? 0)) {
        newer(id, revision);
        loadStale();
      }
    },
    catchUp: () => {
      for (const [id, { study }] of base) {
        base.set(id, { study, revision: 0 });
        stale.set(id, Infinity);
      }
      for (const id of missing) stale.set(id, Infinity);
      reread();
    },
    sendNow: sender.sendNow,
    notLetIn: sender.notLetIn,
    letIn: () => {
      heard({ kind: 'let-in' });
      ports.tabs.tell({ kind: 'let-in' });
    },
    settleAside: (what, instead) => {
      outbox.forgetAside(what.map(({ key }) => key));
      ports.tabs.tell({ kind: 'added' });
      store.make(...instead);
    },
  };
  ports.tabs.hear(heard);
  ports.tabs.onFirst((isFirst) => {
    if (isFirst) {
      elsewhere = undefined;
      reread();
      sender.send();
    } else {
      // Whoever is first now sends again what was under way here; the server stores it once.
      sender.sendNow('afresh');
    }
  });
  return store;
};

const isSame = (a: Study | undefined, b: Study | undefined): boolean =>
  a === b || JSON.stringify(a) === JSON.stringify(b);

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
