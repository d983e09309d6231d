import { subjectsOf, type Change } from './change.ts';
import type { Refusal } from './call.ts';
import { keepOn, keysOn, type Shelf } from './shelf.ts';

export interface Waiting {
  readonly key: string;
  readonly change: Change;
}

/** What the server would not take, with its words. It stays until a person says what becomes of it. */
export interface PutAside extends Waiting {
  readonly why: Refusal;
}

const waitingPrefix = 'throughcut.waiting.';
const asidePrefix = 'throughcut.aside.';

/**
 * Changes that the server has not confirmed, in the order in which they were made. Each lies on the shelf under a key of
 * its own, which all tabs of this browser see, and is taken off only when the server has it.
 */
export interface Outbox {
  readonly waiting: () => readonly Waiting[];
  /** Those that lie on no shelf, since the browser had no room: this tab alone knows them. */
  readonly unkept: () => readonly Waiting[];
  readonly aside: () => readonly PutAside[];
  readonly add: (change: Change) => void;
  readonly remove: (keys: readonly string[]) => void;
  readonly putAside: (what: Waiting, why: Refusal) => void;
  readonly forgetAside: (keys: readonly string[]) => void;
  /** Looks at the shelf again, where other tabs put and take. Gives what waited and has gone meanwhile. */
  readonly reread: () => readonly Waiting[];
}

export interface OutboxPorts {
  readonly shelf: Shelf;
  readonly now: () => number;
  /** A name that no other tab has. */
  readonly tab: string;
}

export const openOutbox = ({ shelf, now, tab }: OutboxPorts): Outbox => {
  let kept = new Map<string, Waiting>();
  let asideKept = new Map<string, PutAside>();
  let unkept = new Map<string, Waiting>();
  const asideUnkept = new Map<string, PutAside>();
  let all: readonly Waiting[] = [];
  let allAside: readonly PutAside[] = [];
  let last = 0;

  const gather = (): void => {
    all = [...kept.values(), ...unkept.values()].sort((a, b) => (a.key < b.key ? -1 : 1));
    allAside = [...asideKept.values(), ...asideUnkept.values()];
    last = Math.max(last, ...all.map(({ key }) => orderOf(key)));
  };
  const reread = (): readonly Waiting[] => {
    const before = kept;
    kept = readAll(shelf, waitingPrefix, before, waitingIn);
    asideKept = readAll(shelf, asidePrefix, asideKept, asideIn);
    gather();
    return [...before.values()].filter(({ key }) => !kept.has(key));
  };
  reread();
  return {
    waiting: () => all,
    unkept: () => [...unkept.values()],
    aside: () => allAside,
    add: (change) => {
      last = Math.max(last + 1, now() * 1000);
      const key = `${waitingPrefix}${String(last).padStart(17, '0')}.${tab}`;
      const isKept = keepOn(shelf, key, JSON.stringify(change));
      (isKept ? kept : unkept).set(key, { key, change });
      gather();
    },
    remove: (keys) => {
      for (const key of keys) {
        kept.delete(key);
        unkept.delete(key);
        shelf.removeItem(key);
      }
      gather();
    },
    putAside: ({ key, change }, why) => {
      const asideKey = asidePrefix + key.slice(waitingPrefix.length);
      const text = JSON.stringify({ change, why });
      let isKept = keepOn(shelf, asideKey, text);
      shelf.removeItem(key);
      // What lay there as waiting has made room.
      isKept ||= keepOn(shelf, asideKey, text);
      (isKept ? asideKept : asideUnkept).set(asideKey, { key: asideKey, change, why });
      kept.delete(key);
      unkept.delete(key);
      gather();
    },
    forgetAside: (keys) => {
      for (const key of keys) {
        asideKept.delete(key);
        asideUnkept.delete(key);
        shelf.removeItem(key);
      }
      gather();
    },
    reread: () => {
      // There may be room again for what had none.
      for (const { key, change } of unkept.values())
        if (keepOn(shelf, key, JSON.stringify(change))) unkept = without(unkept, key);
      return reread();
    },
  };
};

const without = <T>(map: ReadonlyMap<string, T>, key: string): Map<string, T> => {
  const rest = new Map(map);
  rest.delete(key);
  return rest;
};

const orderOf = (key: string): number =>
  Number(key.slice(waitingPrefix.length, waitingPrefix.length + 17)) || 0;

/** What lies there now; what was read before is not read anew, since nothing is ever changed under its key. */
const readAll = <T extends Waiting>(
  shelf: Shelf,
  prefix: string,
  known: ReadonlyMap<string, T>,
  read: (key: string, value: object) => T | undefined,
): Map<string, T> =>
  new Map(
    keysOn(shelf, prefix).flatMap((key) => {
      const found = known.get(key) ?? read(key, objectIn(shelf.getItem(key)));
      return found === undefined ? [] : [[key, found]];
    }),
  );

const objectIn = (text: string | null): object => {
  try {
    const value: unknown = JSON.parse(text ?? 'null');
    return typeof value === 'object' && value !== null ? value : {};
  } catch {
    return {};
  }
};

/** What this page itself wrote. The server checks it again by its schema before anything is stored. */
const waitingIn = (key: string, value: object): Waiting | undefined =>
  'kind' in value && ('studyId' in value || 'machineId' in value)
    ? { key, change: value as Change }
    : undefined;

const asideIn = (key: string, value: object): PutAside | undefined =>
  'change' in value && 'why' in value
    ? { key, ...(value as Pick<PutAside, 'change' | 'why'>) }
    : undefined;

const travelTogetherAtMost = 500;

export interface SendingRules {
  /** Sheets and machines of which nothing can be sent now. */
  readonly isHeld: (subject: string) => boolean;
  /** With how many others a change may travel, where that was found out. */
  readonly atMost: (key: string) => number | undefined;
}

/**
 * The first change that may go, and with it the readings of the same sheet that follow at once: they travel together. No
 * change overtakes an earlier one of its own sheet or machine.
 */
export const nextToSend = (
  waiting: readonly Waiting[],
  { isHeld, atMost }: SendingRules,
): readonly Waiting[] => {
  const free = freeToGo(waiting, isHeld);
  const first = free[0];
  if (first === undefined) return [];
  if (first.change.kind !== 'read') return [first];
  const { studyId } = first.change;
  const stop = free.findIndex(({ change }) => change.kind !== 'read' || change.studyId !== studyId);
  const most = Math.min(atMost(first.key) ?? travelTogetherAtMost, travelTogetherAtMost);
  return free.slice(0, Math.min(stop === -1 ? free.length : stop, most));
};

const freeToGo = (
  waiting: readonly Waiting[],
  isHeld: SendingRules['isHeld'],
): readonly Waiting[] => {
  const behind = new Set<string>();
  return waiting.filter(({ change }) => {
    const subjects = subjectsOf(change);
    if (!subjects.some((subject) => behind.has(subject) || isHeld(subject))) return true;
    behind.add(subjects[0]);
    return false;
  });
};

/** Readings of one sheet travel in one envelope; everything else alone. */
export const together = (batch: readonly Waiting[]): Change => {
  const [first] = batch;
  if (first === undefined) throw new Error('nothing to send');
  if (first.change.kind !== 'read') return first.change;
  const events = batch.flatMap(({ change }) => (change.kind === 'read' ? change.events : []));
  return { ...first.change, events };
};
