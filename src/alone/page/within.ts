import type { SumName, SumOutcome } from '../../app/sums/model.ts';
import type { StoredChange } from '../../app/ports/storedChange.ts';
import { refused } from '../../core/problem.ts';
import { nameHere } from '../../web/state/nameHere.ts';
import type { Reach } from '../../web/state/reach.ts';
import type {
  FromPlace,
  PlaceAsked,
  PlaceReply,
  SumAsked,
  SumMade,
  ToPlace,
} from '../thread/messages.ts';

interface Open {
  readonly answer: (reply: PlaceReply) => void;
  readonly refuse: (error: Error) => void;
}

/** As long as a server gives a sum. */
const sumLimitMs = 20_000;

/**
 * Reaches the workshop within this page: it is kept in one thread, and sums that others would wait for are made in another.
 * `start`: opens either.
 */
export const within = (start: (name: 'place' | 'sums') => Worker): Reach => {
  const place = start('place');
  const say = (message: ToPlace): void => place.postMessage(message);
  const open = new Map<number, Open>();
  let broke: Error | undefined;
  const listeners = new Set<(change: StoredChange) => void>();
  const sums = sumsAside(
    () => start('sums'),
    (id, outcome) => say({ kind: 'sum-made', id, outcome }),
  );
  let lastId = 0;
  place.onmessage = ({ data }: MessageEvent<FromPlace>) => {
    switch (data.kind) {
      case 'reply':
        open.get(data.id)?.answer(data.reply);
        open.delete(data.id);
        return;
      case 'news':
        askToLast();
        for (const heard of listeners) heard(data.change);
        return;
      case 'sum':
        sums.make({ id: data.id, name: data.name, question: data.question });
        return;
      case 'sum-unwanted':
        sums.leave(data.id);
    }
  };
  // Nothing is answered any more: whoever waits is told at once.
  place.onerror = ({ message }) => {
    broke = new Error(message);
    for (const { refuse } of open.values()) refuse(broke);
    open.clear();
  };
  const ask = (asked: PlaceAsked, stop: AbortSignal | null | undefined): Promise<PlaceReply> =>
    new Promise((resolve, reject) => {
      if (broke !== undefined) {
        reject(broke);
        return;
      }
      lastId += 1;
      const id = lastId;
      const leave = (): void => {
        if (!open.delete(id)) return;
        say({ kind: 'gone', id });
        reject(new DOMException('not waited for any more', 'AbortError'));
      };
      stop?.addEventListener('abort', leave, { once: true });
      open.set(id, {
        answer: (reply) => {
          stop?.removeEventListener('abort', leave);
          resolve(reply);
        },
        refuse: reject,
      });
      say({ kind: 'ask', id, asked });
    });
  return {
    ask: async (address, { method = 'GET', body, headers, signal }) => {
      const contentType = new Headers(headers).get('content-type');
      const sent =
        body instanceof Blob
          ? new Uint8Array(await body.arrayBuffer())
          : typeof body === 'string'
            ? body
            : undefined;
      const asked: PlaceAsked = {
        method,
        address,
        ...(contentType === null ? {} : { contentType }),
        ...(sent === undefined ? {} : { body: sent }),
        by: nameHere(),
      };
      return responseOf(await ask(asked, signal));
    },
    hear: ({ news, open: opened }) => {
      listeners.add(news);
      opened();
      return () => void listeners.delete(news);
    },
    isServed: false,
  };
};

let isAsked = false;

/** Once something is kept, the browser is asked not to throw it away when the disk runs short. It may say no. */
const askToLast = (): void => {
  if (isAsked || !('storage' in navigator)) return;
  isAsked = true;
  // Not every browser has it, and one that says no is as before.
  navigator.storage.persist().catch(() => undefined);
};

const responseOf = ({ status, contentType, disposition, body }: PlaceReply): Response =>
  new Response(typeof body === 'string' ? body : new Uint8Array(body), {
    status,
    headers: {
      'content-type': contentType,
      ...(disposition === undefined ? {} : { 'content-disposition': disposition }),
    },
  });

/** One thread makes them, one after another; one that takes too long, or is not wanted any more, ends with its thread. */
const sumsAside = (
  start: () => Worker,
  made: (id: number, outcome: SumOutcome<SumName>) => void,
) => {
  const waiting: SumAsked[] = [];
  let thread: Worker | undefined;
  let now: { readonly asked: SumAsked; readonly limit: ReturnType<typeof setTimeout> } | undefined;
  const end = (): void => {
    clearTimeout(now?.limit);
    now = undefined;
    thread?.terminate();
    thread = undefined;
    next();
  };
  const settle = ({ id, outcome }: SumMade): void => {
    if (now?.asked.id !== id) return;
    clearTimeout(now.limit);
    now = undefined;
    made(id, outcome);
    next();
  };
  const next = (): void => {
    if (now !== undefined) return;
    const asked = waiting.shift();
    if (asked === undefined) return;
    const { id } = asked;
    const limit = setTimeout(() => {
      end();
      made(id, refused('sum-took-too-long', { seconds: sumLimitMs / 1000 }));
    }, sumLimitMs);
    now = { asked, limit };
    thread ??= begun();
    thread.postMessage(asked);
  };
  const begun = (): Worker => {
    const opened = start();
    opened.onmessage = ({ data }: MessageEvent<SumMade>) => settle(data);
    opened.onerror = () => {
      const broken = now?.asked.id;
      end();
      if (broken !== undefined) made(broken, refused('something-broke'));
    };
    return opened;
  };
  return {
    make: (asked: SumAsked): void => {
      waiting.push(asked);
      next();
    },
    leave: (id: number): void => {
      const place = waiting.findIndex((one) => one.id === id);
      if (place >= 0) waiting.splice(place, 1);
      else if (now?.asked.id === id) end();
    },
  };
};
