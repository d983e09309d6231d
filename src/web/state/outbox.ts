import type { Change } from './change.ts';

/** The part of the browser's storage that is used here. */
export type Shelf = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

export interface Waiting {
  readonly key: string;
  readonly change: Change;
}

const prefix = 'throughcut.waiting.';

/**
 * Changes that the server has not confirmed, in the order in which they were made. Each lies on the shelf under a key of
 * its own, so that two open pages do not overwrite each other's, and is taken off only when the server has it.
 */
export interface Outbox {
  readonly waiting: () => readonly Waiting[];
  readonly add: (change: Change) => void;
  readonly remove: (keys: readonly string[]) => void;
  /** False once the browser refused to keep something: then it lives only as long as the page. */
  readonly isKept: () => boolean;
}

export const openOutbox = (shelf: Shelf, now: () => number): Outbox => {
  let waiting: readonly Waiting[] = readAll(shelf);
  let kept = true;
  let last = Math.max(0, ...waiting.map(({ key }) => orderOf(key)));
  return {
    waiting: () => waiting,
    add: (change) => {
      last = Math.max(last + 1, now() * 1000);
      const key = prefix + String(last).padStart(17, '0');
      waiting = [...waiting, { key, change }];
      try {
        shelf.setItem(key, JSON.stringify(change));
      } catch {
        kept = false;
      }
    },
    remove: (keys) => {
      waiting = waiting.filter(({ key }) => !keys.includes(key));
      for (const key of keys) shelf.removeItem(key);
    },
    isKept: () => kept,
  };
};

const orderOf = (key: string): number => Number(key.slice(prefix.length)) || 0;

const readAll = (shelf: Shelf): readonly Waiting[] =>
  Array.from({ length: shelf.length }, (_, i) => shelf.key(i))
    .filter((key): key is string => key?.startsWith(prefix) ?? false)
    .sort()
    .flatMap((key) => {
      const change = parsed(shelf.getItem(key));
      return change === undefined ? [] : [{ key, change }];
    });

/** What this page itself wrote. The server checks it again by its schema before anything is stored. */
const parsed = (text: string | null): Change | undefined => {
  try {
    const value: unknown = JSON.parse(text ?? 'null');
    return typeof value === 'object' &&
      value !== null &&
      'kind' in value &&
      ('studyId' in value || 'machineId' in value)
      ? (value as Change)
      : undefined;
  } catch {
    return undefined;
  }
};

/** The first waiting change, and with it the readings of the same study that follow at once: they travel together. */
export const nextToSend = (waiting: readonly Waiting[]): readonly Waiting[] => {
  const first = waiting[0];
  if (first === undefined) return [];
  if (first.change.kind !== 'read') return [first];
  const { studyId } = first.change;
  const stop = waiting.findIndex(
    ({ change }) => change.kind !== 'read' || change.studyId !== studyId,
  );
  return waiting.slice(0, Math.min(stop === -1 ? waiting.length : stop, 500));
};
