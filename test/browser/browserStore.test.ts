import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Session, Store } from '../../src/app/ports/ports.ts';
import { done, refused } from '../../src/core/problem.ts';
import { openBrowserStore } from '../../src/store/browser/browserStore.ts';
import { migrations } from '../../src/store/migrations/all.ts';
import { StoreError } from '../../src/store/storeError.ts';
import { newId } from '../../src/web/state/newId.ts';
import {
  sampleCard,
  sampleEvent,
  sampleMachine,
  sampleStudy,
  sampleTime,
} from '../samples/studies.ts';

let name: string;
let open: Store[];

const opened = async (
  more: Partial<Parameters<typeof openBrowserStore>[0]> = {},
): Promise<Store> => {
  const store = await openBrowserStore({ name, openedAt: sampleTime, newId, ...more });
  open.push(store);
  return store;
};
const keep = (store: Store, work: (session: Session) => Promise<unknown>) =>
  store.change(async (session) => done(await work(session)));
const eventIds = async (store: Store): Promise<readonly string[]> =>
  (await store.read((session) => session.study('s1')))?.study.events.map(({ id }) => id) ?? [];
const append = (store: Store, id: string) =>
  keep(store, (session) => session.appendEvents('s1', [sampleEvent(id)]));
const codeOf = async (work: Promise<unknown>): Promise<string> => {
  try {
    await work;
    return 'kept';
  } catch (thrown) {
    return thrown instanceof StoreError ? thrown.problem.code : String(thrown);
  }
};
const begin = async (store: Store): Promise<void> => {
  await keep(store, async (session) => {
    await session.insertMachine(sampleMachine());
    await session.insertStudy(sampleStudy('s1', { cards: [sampleCard()] }), sampleTime);
  });
};

beforeEach(() => {
  name = `test ${newId()}`;
  open = [];
});
afterEach(async () => {
  for (const store of open) await store.close();
  indexedDB.deleteDatabase(name);
});

describe('pages at work in the store of one browser', () => {
  it('see what another has kept when their next session begins', async () => {
    const [one, two] = [await opened(), await opened()];
    await begin(one);
    await append(two, 'e1');
    await append(one, 'e2');
    expect(await eventIds(two)).toEqual(['e1', 'e2']);
  });

  it('do a session anew that another came before, and lose neither', async () => {
    const [one, two] = [await opened(), await opened()];
    await begin(one);
    let tries = 0;
    await keep(one, async (session) => {
      tries += 1;
      const before = await session.study('s1');
      if (tries === 1) await append(two, 'from-two');
      await session.appendEvents('s1', [
        sampleEvent(`behind-${String(before?.study.events.length ?? 0)}`),
      ]);
    });
    expect(tries).toBe(2);
    expect(await eventIds(one)).toEqual(['from-two', 'behind-1']);
    expect(await eventIds(two)).toEqual(['from-two', 'behind-1']);
  });

  it('hear of what another has kept, and not of what was refused', async () => {
    const [one, two] = [await opened(), await opened()];
    await begin(one);
    const heard: unknown[] = [];
    two.hear((change) => heard.push(change));
    await one.change(async (session) => {
      await session.announce([{ studyId: 'refused' }]);
      return refused('study-not-found', { id: 's1' });
    });
    await keep(one, async (session) => {
      await session.touch('s1', sampleTime);
      await session.announce([{ studyId: 's1', revision: 2 }]);
    });
    await expect.poll(() => heard).toEqual([{ studyId: 's1', revision: 2 }]);
  });

  it('keep all, in one order, however their sessions and their folding fall together', async () => {
    const one = await opened({ foldAfter: 3 });
    const two = await opened({ foldAfter: 4 });
    await begin(one);
    let count = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(fc.boolean(), { minLength: 1, maxLength: 12 }), async (turns) => {
        const before = await eventIds(one);
        const ids = turns.map(() => `n${String((count += 1))}`);
        await Promise.all(ids.map((id, i) => append(turns[i] === true ? one : two, id)));
        const after = await eventIds(one);
        expect(after.slice(0, before.length)).toEqual(before);
        expect([...after.slice(before.length)].sort()).toEqual([...ids].sort());
        expect(await eventIds(two)).toEqual(after);
      }),
      { numRuns: 15 },
    );
    const fresh = await opened();
    expect(await eventIds(fresh)).toEqual(await eventIds(one));
  });
});

describe('what happens to the store of a browser', () => {
  it('an older page reads and writes no further once a newer one has brought it up to date', async () => {
    const older = await opened();
    await begin(older);
    const next = { number: 1 + migrations.length, name: 'of the future', statements: [] };
    const newer = await opened({ migrations: [...migrations, next] });
    await append(newer, 'e1');
    expect(await codeOf(eventIds(older))).toBe('store-newer-than-program');
    expect(await codeOf(append(older, 'e2'))).toBe('store-newer-than-program');
    expect(await codeOf(opened())).toBe('store-newer-than-program');
    expect(await eventIds(newer)).toEqual(['e1']);
  });

  it('thrown away by the browser: nothing more is acknowledged', async () => {
    const store = await opened();
    await begin(store);
    await new Promise((resolve, reject) => {
      const request = indexedDB.deleteDatabase(name);
      request.onsuccess = resolve;
      request.onerror = reject;
    });
    expect(await codeOf(append(store, 'e1'))).toBe('browser-store-gone');
    const anew = await opened();
    await begin(anew);
    expect(await codeOf(append(store, 'e2'))).toBe('browser-store-gone');
    expect(await eventIds(anew)).toEqual([]);
  });

  it('without room: what was kept stays, what was not is said, and it goes on when there is room', async () => {
    const store = await opened();
    await begin(store);
    await append(store, 'e1');
    // As the standard has a browser say it; on a disk that is really full: test/e2e/aloneFull.test.ts.
    const full = vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(() => {
      throw new DOMException('no room', 'QuotaExceededError');
    });
    try {
      expect(await codeOf(append(store, 'e2'))).toBe('browser-store-full');
      expect(await eventIds(store)).toEqual(['e1']);
    } finally {
      full.mockRestore();
    }
    await append(store, 'e3');
    expect(await eventIds(await opened())).toEqual(['e1', 'e3']);
  });
});
