import { describe, expect, it } from 'vitest';
import { undescribedMachine } from '../../core/machine/machine.ts';
import { problemOf } from '../../core/problem.ts';
import { defaultPromise } from '../../core/reading/promise.ts';
import type { ReadingEvent } from '../../core/reading/readingEvent.ts';
import type { Study } from '../../core/study/study.ts';
import type { CallOutcome } from './call.ts';
import type { Change } from './change.ts';
import { openPageStore, type Fetched, type PageStore } from './pageStore.ts';
import type { Sent } from './sender.ts';
import { shelfOfPage, type Shelf } from './shelf.ts';
import { loneTab } from './tabs.ts';

const study: Study = {
  version: 1,
  id: 's1',
  isExample: false,
  createdAt: '2031-04-05T06:07:08.000Z',
  stock: { material: 'plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] },
  machineId: 'machine-1',
  machine: undescribedMachine,
  machineChanges: [],
  promise: defaultPromise,
  aim: 'fastest',
  ask: {},
  tallies: [],
  cards: [],
  events: [],
};

const tap = (id: string): Change => ({
  kind: 'read',
  studyId: 's1',
  events: [{ id, cardCode: 'AAAA', at: study.createdAt, kind: 'graded', cell: 'A1', grade: 'out' }],
});

const eventOf = (change: Change): ReadingEvent => {
  const [event] = change.kind === 'read' ? change.events : [];
  if (event === undefined) throw new Error('no event');
  return event;
};

/** A server that stores what it hears unless it is down, and may die after storing but before answering. */
const pretendServer = () => {
  const heard: Change[] = [];
  const stored = new Map<string, ReadingEvent>();
  let revision = 0;
  let mood: 'up' | 'down' | 'dies-after-storing' | 'refuses' | number = 'up';
  const refusal = (status: number): CallOutcome<never> => ({
    ok: false,
    why: { kind: 'refused', status, message: 'No.', remedy: 'Do else.' },
  });
  const away: CallOutcome<never> = {
    ok: false,
    why: { kind: 'away', problem: { code: 'server-away', params: {} } },
  };
  return {
    heard,
    stored,
    become: (next: typeof mood) => (mood = next),
    /** An older store is put back, with a lower revision. */
    restore: (ids: readonly string[]): void => {
      for (const id of [...stored.keys()]) if (!ids.includes(id)) stored.delete(id);
      revision = 1;
    },
    /** Someone else's phone. */
    otherTaps: (event: ReadingEvent): number => {
      stored.set(event.id, event);
      revision += 1;
      return revision;
    },
    copy: (): Fetched => ({ study: { ...study, events: [...stored.values()] }, revision }),
    send: (change: Change): Promise<CallOutcome<Sent>> => {
      if (mood === 'down') return Promise.resolve(away);
      if (mood === 'refuses') return Promise.resolve(refusal(422));
      if (typeof mood === 'number') return Promise.resolve(refusal(mood));
      const misfit =
        change.kind === 'read' && change.events.some(({ cardCode }) => cardCode === 'GONE');
      if (misfit) return Promise.resolve(refusal(404));
      if ('studyId' in change && change.studyId === 'broken') return Promise.resolve(refusal(500));
      heard.push(change);
      // What is there already is not stored again, and raises nothing.
      const isKnown = change.kind === 'read' && change.events.every(({ id }) => stored.has(id));
      if (change.kind === 'read') for (const event of change.events) stored.set(event.id, event);
      if (!isKnown) revision += 1;
      return Promise.resolve(mood === 'up' ? { ok: true, value: { revision } } : away);
    },
  };
};

const opened = (
  shelf: Shelf,
  server: ReturnType<typeof pretendServer>,
  fetchStudy: () => Promise<CallOutcome<Fetched>> = () =>
    Promise.resolve({ ok: true, value: server.copy() }),
) => {
  const later: (() => void)[] = [];
  const store = openPageStore({
    shelf,
    now: () => 1_000,
    send: server.send,
    fetchStudy,
    later: (run) => void later.push(run),
    tabs: loneTab,
    tab: 'one',
  });
  return { store, later, turn: () => later.splice(0).forEach((run) => run()) };
};

/** The same with replies that come when the test gives them. */
const openedSlow = (server: ReturnType<typeof pretendServer>) => {
  const late: ((value: Fetched) => void)[] = [];
  const { store } = opened(
    shelfOfPage(),
    server,
    () => new Promise((resolve) => late.push((value) => resolve({ ok: true, value }))),
  );
  return { store, late };
};

const settled = async (store: PageStore, until: (store: PageStore) => boolean): Promise<void> => {
  for (let i = 0; i < 50 && !until(store); i += 1) await Promise.resolve();
  expect(until(store)).toBe(true);
};

describe('the store of what was done on this page', () => {
  it('shows a change before the server has heard of it', () => {
    const server = pretendServer();
    server.become('down');
    const { store } = opened(shelfOfPage(), server);
    store.make({ kind: 'start', studyId: 's1', study }, tap('e1'));
    expect(store.study('s1')?.events.map(({ id }) => id)).toEqual(['e1']);
  });

  it('sends in order and forgets what was confirmed', async () => {
    const server = pretendServer();
    const { store } = opened(shelfOfPage(), server);
    store.make({ kind: 'start', studyId: 's1', study }, tap('e1'), tap('e2'));
    await settled(store, (k) => k.state().sending === 'all-sent' && k.state().waiting === 0);
    expect(server.heard.map(({ kind }) => kind)).toEqual(['start', 'read']);
    expect([...server.stored.keys()]).toEqual(['e1', 'e2']);
    expect(store.study('s1')?.events).toHaveLength(2);
  });

  it('keeps what the server never heard through a reload, and sends it then', async () => {
    const [server, shelf] = [pretendServer(), shelfOfPage()];
    server.become('down');
    const before = opened(shelf, server);
    before.store.make({ kind: 'start', studyId: 's1', study }, tap('e1'), tap('e2'), tap('e3'));
    await settled(before.store, (k) => k.state().sending === 'away');

    server.become('up');
    const after = opened(shelf, server);
    expect(after.store.study('s1')?.events.map(({ id }) => id)).toEqual(['e1', 'e2', 'e3']);
    await settled(after.store, (k) => k.state().waiting === 0);
    expect([...server.stored.keys()]).toEqual(['e1', 'e2', 'e3']);
  });

  it('sends again what may or may not have arrived, and shows it once', async () => {
    const [server, shelf] = [pretendServer(), shelfOfPage()];
    const { store, turn } = opened(shelf, server);
    store.make({ kind: 'start', studyId: 's1', study });
    await settled(store, (k) => k.state().waiting === 0);
    server.become('dies-after-storing');
    store.make(tap('e1'));
    await settled(store, (k) => k.state().sending === 'away');
    server.become('up');
    turn();
    await settled(store, (k) => k.state().waiting === 0);
    expect(server.heard.filter(({ kind }) => kind === 'read')).toHaveLength(2);
    expect(store.study('s1')?.events).toHaveLength(1);
  });

  it('takes back what the server refuses, and says why', async () => {
    const server = pretendServer();
    const { store } = opened(shelfOfPage(), server);
    store.make({ kind: 'start', studyId: 's1', study });
    await settled(store, (k) => k.state().waiting === 0);
    server.become('refuses');
    store.make({ kind: 'head', studyId: 's1', head: { aim: 'cleanest' } });
    await settled(store, (k) => k.state().aside.length > 0);
    expect(store.study('s1')?.aim).toBe('fastest');
    expect(store.state().aside[0]?.why.message).toBe('No.');
  });

  it.each([401, 403, 408, 429, 500, 502, 503])(
    'keeps what was answered with %i, and sends it when that is over',
    async (status) => {
      const server = pretendServer();
      const { store, turn } = opened(shelfOfPage(), server);
      store.make({ kind: 'start', studyId: 's1', study });
      await settled(store, (k) => k.state().waiting === 0);
      server.become(status);
      store.make(tap('e1'), tap('e2'));
      await settled(store, (k) => ['held', 'not-let-in'].includes(k.state().sending));
      expect(store.state()).toMatchObject({ waiting: 2, aside: [] });
      expect(store.study('s1')?.events).toHaveLength(2);
      server.become('up');
      turn();
      await settled(store, (k) => k.state().sending === 'all-sent');
      expect([...server.stored.keys()]).toEqual(['e1', 'e2']);
    },
  );

  it('puts aside what this phone may not do any more, and sends the rest', async () => {
    const sent: Change[] = [];
    const store = openPageStore({
      shelf: shelfOfPage(),
      now: () => 0,
      send: (change) => {
        if (change.kind === 'read') sent.push(change);
        const why = { status: 403, code: 'role-too-low', message: 'No.', remedy: 'Ask.' };
        return Promise.resolve(
          change.kind === 'head'
            ? { ok: false, why: { kind: 'refused', ...why } }
            : { ok: true, value: {} },
        );
      },
      fetchStudy: () => Promise.reject(new Error('not asked here')),
      later: () => undefined,
      tabs: loneTab,
      tab: 'one',
    });
    const head: Change = { kind: 'head', studyId: 's1', head: { aim: 'cleanest' } };
    store.make({ kind: 'start', studyId: 's1', study }, head, tap('e1'));
    await settled(store, (k) => k.state().waiting === 0);
    expect(store.state().aside.map(({ change }) => change)).toEqual([head]);
    expect(sent).toEqual([tap('e1')]);
  });

  it('puts aside the one reading that is refused, not those that travelled with it', async () => {
    const server = pretendServer();
    const { store, turn } = opened(shelfOfPage(), server);
    store.make({ kind: 'start', studyId: 's1', study });
    await settled(store, (k) => k.state().waiting === 0);
    server.become('down');
    const misfit: Change = {
      kind: 'read',
      studyId: 's1',
      events: [{ ...eventOf(tap('bad')), cardCode: 'GONE' }],
    };
    const good = Array.from({ length: 20 }, (_, i) => `e${String(i)}`);
    store.make(...good.slice(0, 7).map(tap), misfit, ...good.slice(7).map(tap));
    await settled(store, (k) => k.state().sending === 'away');
    server.become('up');
    turn();
    await settled(store, (k) => k.state().waiting === 0);
    expect([...server.stored.keys()]).toEqual(good);
    expect(store.state().aside.map(({ change }) => change)).toEqual([misfit]);
  });

  it('goes on with other sheets where one cannot be stored, and overtakes nothing of that one', async () => {
    const server = pretendServer();
    const { store } = opened(shelfOfPage(), server);
    const ofBroken = (id: string): Change => ({
      kind: 'read',
      studyId: 'broken',
      events: [eventOf(tap(id))],
    });
    store.make({ kind: 'start', studyId: 's1', study }, ofBroken('x1'), tap('e1'));
    store.make(ofBroken('x2'), tap('e2'));
    await settled(store, (k) => k.state().sending === 'held');
    expect([...server.stored.keys()]).toEqual(['e1', 'e2']);
    expect(store.state()).toMatchObject({ waiting: 2, why: { status: 500 } });
  });

  it('keeps taps where the browser has no room, at the cost of copies', async () => {
    const kept = shelfOfPage();
    let room = Infinity;
    const shelf: Shelf = {
      getItem: kept.getItem,
      removeItem: kept.removeItem,
      key: kept.key,
      get length() {
        return kept.length;
      },
      setItem: (key, value) => {
        const held = Array.from({ length: kept.length }, (_, i) => kept.key(i) ?? '').reduce(
          (sum, each) => sum + (each === key ? 0 : (kept.getItem(each)?.length ?? 0)),
          0,
        );
        if (held + value.length > room) throw new Error('full');
        kept.setItem(key, value);
      },
    };
    const server = pretendServer();
    const { store } = opened(shelf, server);
    store.make({ kind: 'start', studyId: 's1', study });
    await settled(store, (k) => k.state().waiting === 0);
    expect(shelf.getItem('throughcut.study.s1')).not.toBeNull();
    server.become('down');
    room = (shelf.getItem('throughcut.study.s1')?.length ?? 0) + 10;
    store.make(tap('e1'));
    expect(store.state()).toMatchObject({ waiting: 1, unkept: 0 });
    expect(shelf.getItem('throughcut.study.s1')).toBeNull();
    room = 10;
    store.make(tap('e2'));
    expect(store.state()).toMatchObject({ waiting: 2, unkept: 1 });
    expect(store.study('s1')?.events.map(({ id }) => id)).toEqual(['e1', 'e2']);
  });

  it('follows a server that has an older store by now', async () => {
    const server = pretendServer();
    const { store } = opened(shelfOfPage(), server);
    store.make({ kind: 'start', studyId: 's1', study }, tap('e1'), tap('e2'));
    await settled(store, (k) => k.state().waiting === 0);
    server.restore(['e1']);
    store.catchUp();
    await settled(store, (k) => k.study('s1')?.events.length === 1);
  });

  it('shows what another phone tapped, when told and when a revision betrays it', async () => {
    const server = pretendServer();
    const { store } = opened(shelfOfPage(), server);
    const ids = () =>
      store
        .study('s1')
        ?.events.map(({ id }) => id)
        .sort();
    store.make({ kind: 'start', studyId: 's1', study }, tap('e1'));
    await settled(store, (k) => k.state().waiting === 0);
    store.noticed('s1', server.otherTaps(eventOf(tap('p1'))));
    await settled(store, () => ids()?.join() === 'e1,p1');

    server.otherTaps(eventOf(tap('p2'))); // and nobody tells
    store.make(tap('e2'));
    await settled(store, () => ids()?.join() === 'e1,e2,p1,p2');
  });

  it('takes no tap of another phone for its own that was sent twice', async () => {
    const server = pretendServer();
    const { store, turn } = opened(shelfOfPage(), server);
    const ids = () => store.study('s1')?.events.map(({ id }) => id);
    store.make({ kind: 'start', studyId: 's1', study: { ...study, machineId: 'of-its-own' } });
    await settled(store, (k) => k.state().waiting === 0);
    server.become('dies-after-storing');
    store.make(tap('e1'));
    await settled(store, (k) => k.state().sending === 'away');
    expect(await store.load('s1')).toBeUndefined(); // with e1, as news of it makes the page do
    server.otherTaps(eventOf(tap('p1'))); // one more, and the news of it comes last
    server.become('up');
    turn();
    await settled(store, (k) => k.state().waiting === 0);
    store.noticed('s1', server.copy().revision);
    await settled(store, () => ids()?.join() === 'e1,p1');
  });

  it('fetches what it missed though its own tap is answered with the newest revision', async () => {
    const server = pretendServer();
    const answers: (() => void)[] = [];
    let isSlow = false;
    const slow = {
      ...server,
      send: (change: Change) =>
        isSlow
          ? new Promise<CallOutcome<Sent>>((resolve) =>
              answers.push(() => {
                void server.send(change).then(resolve);
              }),
            )
          : server.send(change),
    };
    const { store } = opened(shelfOfPage(), slow);
    const ids = () =>
      store
        .study('s1')
        ?.events.map(({ id }) => id)
        .sort()
        .join();
    store.make({ kind: 'start', studyId: 's1', study: { ...study, machineId: 'of-its-own' } });
    await settled(store, (k) => k.state().waiting === 0);
    // This tab is first from now on: it looks at everything again while its own tap is on its way.
    isSlow = true;
    store.make(tap('e1'));
    store.catchUp();
    store.noticed('s1', server.otherTaps(eventOf(tap('p1'))) + 1);
    answers.splice(0).forEach((answer) => answer());
    await settled(store, () => ids() === 'e1,p1');
  });

  it('lets no overtaken reply take a tap away', async () => {
    const server = pretendServer();
    const { store, late } = openedSlow(server);
    store.make({ kind: 'start', studyId: 's1', study }, tap('e1'));
    await settled(store, (k) => k.state().waiting === 0);
    const old = server.copy();
    const loading = store.load('s1');
    store.make(tap('e2'));
    await settled(store, (k) => k.state().waiting === 0);
    for (const answer of late) answer(old);
    await loading;
    expect(store.study('s1')?.events.map(({ id }) => id)).toEqual(['e1', 'e2']);
  });

  it('asks again where the reply to news was lost, and once only for many', async () => {
    const server = pretendServer();
    let [asked, isLost] = [0, false];
    const { store, later, turn } = opened(shelfOfPage(), server, () => {
      asked += 1;
      return Promise.resolve(
        isLost
          ? { ok: false, why: { kind: 'away', problem: problemOf('server-away') } }
          : { ok: true, value: server.copy() },
      );
    });
    const ids = () => store.study('s1')?.events.map(({ id }) => id);
    store.make({ kind: 'start', studyId: 's1', study }, tap('e1'));
    await settled(store, (k) => k.state().waiting === 0);
    isLost = true;
    store.noticed('s1', server.otherTaps(eventOf(tap('p1'))));
    store.noticed('s1', server.otherTaps(eventOf(tap('p2'))));
    await settled(store, () => later.length > 0);
    expect(later).toHaveLength(1);
    expect(ids()).toEqual(['e1']);
    isLost = false;
    asked = 0;
    turn();
    await settled(store, () => ids()?.length === 3);
    expect(asked).toBe(1);
  });

  it('hears news of a study whose first copy is still on its way', async () => {
    const server = pretendServer();
    const { store, late } = openedSlow(server);
    server.otherTaps(eventOf(tap('p1')));
    const read = server.copy();
    void store.load('s1');
    // Stored after the copy was read, and told of before it came.
    store.noticed('s1', server.otherTaps(eventOf(tap('p2'))));
    late.splice(0).forEach((answer) => answer(read));
    await settled(store, () => late.length > 0);
    late.splice(0).forEach((answer) => answer(server.copy()));
    await settled(store, (k) => k.study('s1')?.events.length === 2);
  });

  it('forgets a study that is gone', async () => {
    const server = pretendServer();
    const { store } = opened(shelfOfPage(), server);
    store.make({ kind: 'start', studyId: 's1', study });
    await settled(store, (k) => k.state().waiting === 0);
    store.noticed('s1', undefined);
    expect(store.study('s1')).toBeUndefined();
  });
});
