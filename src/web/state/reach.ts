import type { Role } from '../../core/role.ts';
import type { StoredChange } from '../../app/ports/storedChange.ts';
import { pageApi } from '../../wire/pageApi.ts';

/** A change that is stored; or what this device may do from now on. */
export interface NewsSaid extends StoredChange {
  readonly role?: Role;
}

/** What is told of the stream of news, beside the news. */
export interface NewsHeard {
  readonly news: (change: NewsSaid) => void;
  /** Some may have been missed. */
  readonly missed: () => void;
  /** News come from now on. */
  readonly open: () => void;
}

/** How this page reaches the workshop's verbs: over the network, or within itself. */
export interface Reach {
  readonly ask: (address: string, asked: RequestInit) => Promise<Response>;
  /** Hears of every change that is stored, until it is told to stop. */
  readonly hear: (heard: NewsHeard) => () => void;
  /** A server stands behind it: files have addresses of their own, and phones can be let in. */
  readonly isServed: boolean;
}

let reach: Reach | undefined;

/** Said once, before the page is drawn. */
export const reachBy = (by: Reach): void => {
  reach = by;
};

/** How this page reaches the workshop. Where nobody has said, as in a test of one part, over the network. */
export const workshopReach = (): Reach => reach ?? overNetwork;

/** A browser gives a stream up for good where it was refused one; a phone that is let in later wants one all the same. */
const betweenTriesMs = 3000;

/** From the server that brought the page. */
export const overNetwork: Reach = {
  ask: (address, asked) => fetch(address, asked),
  hear: ({ news, missed, open }) => {
    let source: EventSource | undefined;
    let retry: ReturnType<typeof setTimeout> | undefined;
    const begin = (): void => {
      source?.close();
      const opened = new EventSource(pageApi.live.path);
      source = opened;
      // What our own server writes into the stream.
      opened.onmessage = ({ data }: MessageEvent<string>) => news(JSON.parse(data) as NewsSaid);
      opened.onerror = () => {
        missed();
        if (opened.readyState === EventSource.CLOSED) retry = setTimeout(begin, betweenTriesMs);
      };
      opened.onopen = open;
    };
    begin();
    return () => {
      clearTimeout(retry);
      source?.close();
    };
  },
  isServed: true,
};
