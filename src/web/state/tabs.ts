import type { Sending } from './sender.ts';
import type { CallProblem } from './call.ts';
import { keepOn, type Shelf } from './shelf.ts';

/** What the tabs of one browser tell each other. */
export type TabMessage =
  /** Something new lies on the shelf to be sent. */
  | { readonly kind: 'added' }
  | { readonly kind: 'sent'; readonly keys: readonly string[]; readonly revision?: number }
  | { readonly kind: 'how'; readonly how: Sending; readonly why: CallProblem | undefined }
  /** A phone was let in, by its code. */
  | { readonly kind: 'let-in' }
  /** What the server told of a change; no study: of something else. */
  | { readonly kind: 'news'; readonly studyId?: string; readonly revision?: number }
  /** After a time without news. */
  | { readonly kind: 'look-again' }
  /** The first tab is first no longer. */
  | { readonly kind: 'left' };

type FirstChanged = (isFirst: boolean, tookOver: boolean) => void;

/**
 * One tab of this browser, the first, sends and listens for all: a browser opens only six connections to one server, and
 * two senders would put an older wish over a newer one.
 */
export interface Tabs {
  readonly isFirst: () => boolean;
  /** Told at once how it stands, and of every change. `tookOver`: another tab was first until now. */
  readonly onFirst: (changed: FirstChanged) => void;
  readonly tell: (message: TabMessage) => void;
  readonly hear: (heard: (message: TabMessage) => void) => void;
}

/** Where no other tab can be met, each does for itself. */
export const loneTab: Tabs = {
  isFirst: () => true,
  onFirst: (changed) => changed(true, false),
  tell: () => undefined,
  hear: () => undefined,
};

/** What the first tab writes for the others to see. */
interface Claim {
  readonly tab: string;
  /** When it was last renewed, in ms of the clock. */
  readonly at: number;
  readonly isVisible: boolean;
}

const key = 'throughcut.first-tab';
const beatMs = 1000;
const deadAfterMs = 3500;
/** Two tabs that claim in one moment see after this time whose claim stands. */
const settleMs = 50;

/**
 * Settles by claims on the shelf which tab is first. Not by the browser's own locks: a phone that reaches the workshop's
 * computer over plain http has none, and a tab that hangs would hold one for ever. A tab that is seen takes over from one
 * that is not, since browsers slow down what is not seen.
 */
export const openTabs = (shelf: Shelf, tab: string): Tabs => {
  const channel = new BroadcastChannel('throughcut');
  const listeners = new Set<(message: TabMessage) => void>();
  const watchers = new Set<FirstChanged>();
  let first = false;
  let followed = false;

  const tell = (message: TabMessage): void => channel.postMessage(message);
  const become = (isFirst: boolean): void => {
    if (first === isFirst) return;
    first = isFirst;
    for (const changed of watchers) changed(isFirst, followed);
    if (!isFirst) followed = true;
  };
  const isVisible = (): boolean => document.visibilityState === 'visible';
  const claim = (): void => {
    const own: Claim = { tab, at: Date.now(), isVisible: isVisible() };
    keepOn(shelf, key, JSON.stringify(own));
  };
  const isOpen = (): boolean => {
    const held = claimIn(shelf.getItem(key));
    if (held === undefined || held.tab === tab) return true;
    return Math.abs(Date.now() - held.at) > deadAfterMs || (!held.isVisible && isVisible());
  };
  const consider = (): void => {
    if (first) return;
    if (!isOpen()) {
      followed = true;
      return;
    }
    claim();
    setTimeout(() => {
      if (claimIn(shelf.getItem(key))?.tab === tab) become(true);
      else followed = true;
    }, settleMs);
  };
  const beat = (): void => {
    if (!first) consider();
    else if (claimIn(shelf.getItem(key))?.tab === tab) claim();
    else become(false);
  };
  const leave = (): void => {
    if (!first) return;
    shelf.removeItem(key);
    become(false);
    tell({ kind: 'left' });
  };

  channel.onmessage = ({ data }: MessageEvent<TabMessage>) => {
    if (data.kind === 'left') consider();
    else for (const heard of listeners) heard(data);
  };
  document.addEventListener('visibilitychange', () => {
    beat();
    if (first && !isVisible()) tell({ kind: 'left' });
  });
  addEventListener('pagehide', leave);
  addEventListener('pageshow', consider);
  setInterval(beat, beatMs);
  consider();

  return {
    // Looked at anew before anything is sent: another tab may have taken over while this one was asleep.
    isFirst: () => {
      if (first && claimIn(shelf.getItem(key))?.tab !== tab) become(false);
      return first;
    },
    onFirst: (changed) => {
      watchers.add(changed);
      changed(first, followed);
    },
    tell,
    hear: (heard) => void listeners.add(heard),
  };
};

const claimIn = (text: string | null): Claim | undefined => {
  try {
    // What a tab of this page wrote.
    return (JSON.parse(text ?? 'null') as Claim | null) ?? undefined;
  } catch {
    return undefined;
  }
};
