import { describe, expect, it } from 'vitest';
import { undescribedMachine } from '../../core/machine/machine.ts';
import { defaultPromise } from '../../core/reading/promise.ts';
import type { ReadingEvent } from '../../core/reading/readingEvent.ts';
import type { Study } from '../../core/study/study.ts';
import type { CallOutcome } from './call.ts';
import type { Change } from './change.ts';
import { openKeeper, type Fetched, type Keeper, type Sent } from './keeper.ts';
import type { Shelf } from './outbox.ts';

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

const emptyShelf = (): Shelf => {
  const kept = new Map<string, string>();
  return {
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, value) => void kept.set(key, value),
    removeItem: (key) => void kept.delete(key),
    key: (i) => [...kept.keys()][i] ?? null,
    get length() {
      return kept.size;
    },
  };
};

/** A server that stores what it hears unless it is down, and may die after storing but before answering. */
const pretendServer = () => {
  const heard: Change[] = [];
  const stored = new Map<string, ReadingEvent>();
  let revision = 0;
  let mood: 'up' | 'down' | 'dies-after-storing' | 'refuses' = 'up';
  const away: CallOutcome<never> = {
    ok: false,
    why: { kind: 'away', problem: { code: 'server-away', params: {} } },
  };
  return {
    heard,
    stored,
    become: (next: typeof mood) => (mood = next),
    /** Someone else's phone. */
    otherTaps: (event: ReadingEvent): number => {
      stored.set(event.id, event);
      revision += 1;
      return revision;
    },
    copy: (): Fetched => ({ study: { ...study, events: [...stored.values()] }, revision }),
    send: (change: Change): Promise<CallOutcome<Sent>> => {
      if (mood === 'down') return Promise.resolve(away);
      if (mood === 'refuses')
        return Promise.resolve({
          ok: false,
          why: { kind: 'refused', status: 422, message: 'No.', remedy: 'Do else.' },
        });
      heard.push(change);
      if (change.kind === 'read') for (const event of change.events) stored.set(event.id, event);
      revision += 1;
      return Promise.resolve(mood === 'up' ? { ok: true, value: { revision } } : away);
    },
  };
};

const opened = (shelf: Shelf, server: ReturnType<typeof pretendServer>) => {
  const later: (() => void)[] = [];
  const keeper = openKeeper({
    shelf,
    now: () => 1_000,
    send: server.send,
    fetchStudy: () => Promise.resolve({ ok: true, value: server.copy() }),
    later: (run) => void later.push(run),
  });
  return { keeper, turn: () => later.splice(0).forEach((run) => run()) };
};

const settled = async (keeper: Keeper, until: (keeper: Keeper) => boolean): Promise<void> => {
  for (let i = 0; i < 50 && !until(keeper); i += 1) await Promise.resolve();
  expect(until(keeper)).toBe(true);
};

describe('the keeper of what was done on this page', () => {
  it('shows a change before the server has heard of it', () => {
    const server = pretendServer();
    server.become('down');
    const { keeper } = opened(emptyShelf(), server);
    keeper.make({ kind: 'start', studyId: 's1', study }, tap('e1'));
    expect(keeper.study('s1')?.events.map(({ id }) => id)).toEqual(['e1']);
  });

  it('sends in order and forgets what was confirmed', async () => {
    const server = pretendServer();
    const { keeper } = opened(emptyShelf(), server);
    keeper.make({ kind: 'start', studyId: 's1', study }, tap('e1'), tap('e2'));
    await settled(keeper, (k) => k.state().sending === 'all-sent' && k.state().waiting === 0);
    expect(server.heard.map(({ kind }) => kind)).toEqual(['start', 'read']);
    expect([...server.stored.keys()]).toEqual(['e1', 'e2']);
    expect(keeper.study('s1')?.events).toHaveLength(2);
  });

  it('keeps what the server never heard through a reload, and sends it then', async () => {
    const [server, shelf] = [pretendServer(), emptyShelf()];
    server.become('down');
    const before = opened(shelf, server);
    before.keeper.make({ kind: 'start', studyId: 's1', study }, tap('e1'), tap('e2'), tap('e3'));
    await settled(before.keeper, (k) => k.state().sending === 'away');

    server.become('up');
    const after = opened(shelf, server);
    expect(after.keeper.study('s1')?.events.map(({ id }) => id)).toEqual(['e1', 'e2', 'e3']);
    await settled(after.keeper, (k) => k.state().waiting === 0);
    expect([...server.stored.keys()]).toEqual(['e1', 'e2', 'e3']);
  });

  it('sends again what may or may not have arrived, and shows it once', async () => {
    const [server, shelf] = [pretendServer(), emptyShelf()];
    const { keeper, turn } = opened(shelf, server);
    keeper.make({ kind: 'start', studyId: 's1', study });
    await settled(keeper, (k) => k.state().waiting === 0);
    server.become('dies-after-storing');
    keeper.make(tap('e1'));
    await settled(keeper, (k) => k.state().sending === 'away');
    server.become('up');
    turn();
    await settled(keeper, (k) => k.state().waiting === 0);
    expect(server.heard.filter(({ kind }) => kind === 'read')).toHaveLength(2);
    expect(keeper.study('s1')?.events).toHaveLength(1);
  });

  it('takes back what the server refuses, and says why', async () => {
    const server = pretendServer();
    const { keeper } = opened(emptyShelf(), server);
    keeper.make({ kind: 'start', studyId: 's1', study });
    await settled(keeper, (k) => k.state().waiting === 0);
    server.become('refuses');
    keeper.make({ kind: 'head', studyId: 's1', head: { aim: 'cleanest' } });
    await settled(keeper, (k) => k.state().refusal !== undefined);
    expect(keeper.study('s1')?.aim).toBe('fastest');
    expect(keeper.state().refusal?.message).toBe('No.');
  });

  it('shows what another phone tapped, when told and when a revision betrays it', async () => {
    const server = pretendServer();
    const { keeper } = opened(emptyShelf(), server);
    const ids = () =>
      keeper
        .study('s1')
        ?.events.map(({ id }) => id)
        .sort();
    keeper.make({ kind: 'start', studyId: 's1', study }, tap('e1'));
    await settled(keeper, (k) => k.state().waiting === 0);
    keeper.noticed('s1', server.otherTaps(eventOf(tap('p1'))));
    await settled(keeper, () => ids()?.join() === 'e1,p1');

    server.otherTaps(eventOf(tap('p2'))); // and nobody tells
    keeper.make(tap('e2'));
    await settled(keeper, () => ids()?.join() === 'e1,e2,p1,p2');
  });

  it('lets no overtaken reply take a tap away', async () => {
    const server = pretendServer();
    const late: ((value: Fetched) => void)[] = [];
    const keeper = openKeeper({
      shelf: emptyShelf(),
      now: () => 1_000,
      send: server.send,
      fetchStudy: () =>
        new Promise((resolve) => late.push((value) => resolve({ ok: true, value }))),
      later: () => undefined,
    });
    keeper.make({ kind: 'start', studyId: 's1', study }, tap('e1'));
    await settled(keeper, (k) => k.state().waiting === 0);
    const old = server.copy();
    const loading = keeper.load('s1');
    keeper.make(tap('e2'));
    await settled(keeper, (k) => k.state().waiting === 0);
    for (const answer of late) answer(old);
    await loading;
    expect(keeper.study('s1')?.events.map(({ id }) => id)).toEqual(['e1', 'e2']);
  });

  it('forgets a study that is gone', async () => {
    const server = pretendServer();
    const { keeper } = opened(emptyShelf(), server);
    keeper.make({ kind: 'start', studyId: 's1', study });
    await settled(keeper, (k) => k.state().waiting === 0);
    keeper.noticed('s1', undefined);
    expect(keeper.study('s1')).toBeUndefined();
  });
});
