import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { changeEntry } from '../../src/app/book/changeEntry.ts';
import { removeEntry } from '../../src/app/book/removeEntry.ts';
import { settingTrail } from '../../src/app/book/settingTrail.ts';
import { takeBackChange } from '../../src/app/book/takeBackChange.ts';
import type { Session, Store } from '../../src/app/ports/ports.ts';
import { kindOfChange, type SettingChange } from '../../src/core/book/settingChange.ts';
import { done, type Outcome } from '../../src/core/problem.ts';
import {
  sampleCard,
  sampleEntry,
  sampleMachine,
  sampleStudy,
  sampleTally,
  sampleTime,
} from '../samples/studies.ts';
import type { EngineUnderTest } from './store.ts';

const hours = (after: number): string =>
  new Date(Date.parse(sampleTime) + after * 3_600_000).toISOString();

/**
 * How every engine takes back, within a day, what was done to a kept setting. `beside`: two programs may ask in one thread;
 * with SQLite one would wait for the other for good, and devices ask one server.
 */
export const takeBackConformance = (
  engine: string,
  make: () => Promise<EngineUnderTest>,
  beside = true,
): void => {
  describe(`taking back on ${engine}`, () => {
    let place: EngineUnderTest;
    let store: Store;
    let now: string;
    let made = 0;
    const clock = { now: () => now };
    const ids = { newId: () => `h${String((made += 1))}`, newCode: () => 'FREE' };
    const by = (name: string, at: Store = store) => ({ store: at, clock, ids, by: name });

    const keep = async (work: (session: Session) => Promise<unknown>): Promise<void> => {
      await store.change(async (session) => done(await work(session)));
    };
    const entry = sampleEntry('b1', {
      code: 'BK01',
      note: 'for the lamps',
      holdsFor: { ...sampleEntry('b1').holdsFor, machineId: sampleMachine().id },
    });
    /** As a verb keeps it: the setting, and that it was kept. */
    const keepEntry = (): Promise<void> =>
      keep(async (session) => {
        await session.insertEntry(entry);
        const { id: settingId } = entry;
        const id = ids.newId();
        await session.noteChange({ version: 1, id, at: now, settingId, after: entry, by: 'Ada' });
      });
    const trail = async () => (await settingTrail({ store, clock }, { limit: 50 })).found;
    const lastChange = async (): Promise<SettingChange> => {
      const [last] = await trail();
      if (last === undefined) throw new Error('nothing was done');
      return last.change;
    };
    const takeBack = (change: SettingChange, name = 'Bo', at = store) =>
      takeBackChange(by(name, at), change.id);
    const codeOf = (outcome: Outcome<unknown>) => (outcome.ok ? 'done' : outcome.problem.code);
    const book = async () => (await store.read((session) => session.entries())).map(({ id }) => id);
    const kept = () => store.read((session) => session.entry('b1'));

    beforeEach(async () => {
      place = await make();
      store = await place.open();
      now = hours(0);
      await keep(async (session) => {
        await session.insertMachine(sampleMachine());
        await session.insertEntry(sampleEntry('b0', { code: 'BK00' }));
      });
      await keepEntry();
      await keep((session) => session.insertEntry(sampleEntry('b2', { code: 'BK02' })));
      now = hours(1);
    });
    afterEach(async () => {
      await store.close();
      await place.destroy();
    });

    it('gives back the note that was said before, and the new one when that is taken back too', async () => {
      await changeEntry(by('Ada'), 'b1', { note: null });
      const noted = await lastChange();
      const undone = await takeBack(noted);
      expect(await kept()).toMatchObject({ note: 'for the lamps' });
      expect(undone).toMatchObject({ ok: true, value: { by: 'Bo', undoes: noted.id } });
      await takeBack(await lastChange(), 'Ada');
      expect((await kept())?.note).toBeUndefined();
      expect((await trail()).map(({ change }) => [kindOfChange(change), change.by])).toEqual([
        ['noted', 'Ada'],
        ['noted', 'Bo'],
        ['noted', 'Ada'],
        ['kept', 'Ada'],
      ]);
    });

    it('notes nothing where a note says what it said before', async () => {
      await changeEntry(by('Ada'), 'b1', { note: 'for the lamps' });
      expect(await trail()).toHaveLength(1);
    });

    it('puts a setting back where it stood, with its photographs and its counts', async () => {
      const jpeg = Uint8Array.from({ length: 2000 }, (_, i) => (i * 7919) % 256);
      const photo = {
        subject: 'cut',
        keptAt: sampleTime,
        widthPx: 40,
        heightPx: 30,
        jpeg,
      } as const;
      await keep(async (session) => {
        await session.insertStudy(sampleStudy('s1', { cards: [sampleCard()] }), sampleTime);
        const counted = (id: string) => sampleTally(id, { provenSettingId: 'b1', by: 'Cy' });
        await session.insertTally('s1', counted('t1'));
        await session.insertTally(undefined, counted('t2'));
        await session.keepSettingPhoto('b1', photo);
      });
      const counts = () => store.read((session) => session.talliesOfEntry('b1'));
      const before = { book: await book(), entry: await kept(), counts: await counts() };
      expect(before.book).toEqual(['b2', 'b1', 'b0']);
      await removeEntry(by('Ada'), 'BK01');
      expect([await book(), await counts()]).toEqual([['b2', 'b0'], []]);
      expect(codeOf(await takeBack(await lastChange()))).toBe('done');
      expect({ book: await book(), entry: await kept(), counts: await counts() }).toEqual(before);
      const back = await store.read((session) => session.settingPhoto('b1', 'cut'));
      expect(back && [...back.jpeg]).toEqual([...jpeg]);
    });

    it('takes a setting out again that was kept by a slip, but not once it has been used', async () => {
      const before = await kept();
      const [keeping] = await trail();
      if (keeping === undefined) throw new Error('nothing was kept');
      const strip = sampleStudy('strip', { stripOf: 'b1' });
      await keep((session) => session.insertStudy(strip, sampleTime));
      expect((await trail())[0]).toMatchObject({
        mayTakeBack: false,
        held: { code: 'setting-built-on', params: { counts: 0, strips: 1, photos: 0 } },
      });
      expect(codeOf(await takeBack(keeping.change))).toBe('setting-built-on');
      await keep((session) => session.deleteStudy('strip'));
      expect((await trail())[0]?.mayTakeBack).toBe(true);
      expect(codeOf(await takeBack(keeping.change))).toBe('done');
      expect(await kept()).toBeUndefined();
      expect(codeOf(await takeBack(await lastChange()))).toBe('done');
      expect(await kept()).toEqual(before);
      expect(await book()).toEqual(['b2', 'b1', 'b0']);
    });

    it('is refused when the day is over', async () => {
      await removeEntry(by('Ada'), 'b1');
      const removed = await lastChange();
      now = hours(25);
      expect((await trail())[0]?.mayTakeBack).toBe(true);
      now = hours(25.001);
      expect((await trail())[0]?.mayTakeBack).toBe(false);
      expect(codeOf(await takeBack(removed))).toBe('setting-change-over');
      expect(await book()).toEqual(['b2', 'b0']);
    });

    it('is refused for all but what was done last, and where something stands in the place', async () => {
      const keeping = await lastChange();
      await changeEntry(by('Ada'), 'b1', { note: 'other' });
      expect(codeOf(await takeBack(keeping))).toBe('setting-changed-since');
      await removeEntry(by('Ada'), 'b1');
      const removed = await lastChange();
      await keep((session) => session.insertEntry(sampleEntry('b3', { code: 'BK01' })));
      expect(codeOf(await takeBack(removed))).toBe('setting-code-taken');
      await keep((session) => session.deleteEntry('b3'));
      await keep((session) => session.deleteMachine(sampleMachine().id));
      expect(codeOf(await takeBack(removed))).toBe('setting-machine-gone');
      await keep((session) => session.insertMachine(sampleMachine()));
      // Brought in again by a file.
      await keep((session) => session.insertEntry(entry));
      expect(codeOf(await takeBack(removed))).toBe('setting-changed-since');
      expect(codeOf(await takeBackChange(by('Bo'), 'nowhere'))).toBe('setting-change-not-found');
    });

    it('happens once, though two devices ask for it at once and one of them again', async () => {
      await removeEntry(by('Ada'), 'b1');
      const removed = await lastChange();
      const other = beside ? await place.open() : store;
      const both = await Promise.all([takeBack(removed, 'Bo'), takeBack(removed, 'Cy', other)]);
      const again = await takeBack(removed, 'Cy', other);
      if (beside) await other.close();
      const undone = [...both, again].map((outcome) => outcome.ok && outcome.value.id);
      expect(undone[0]).toMatch(/^h/);
      expect(new Set(undone).size).toBe(1);
      expect((await trail()).filter(({ change }) => change.undoes === removed.id)).toHaveLength(1);
      expect(await book()).toEqual(['b2', 'b1', 'b0']);
    });

    it('forgets what was done to the settings of the example with the example', async () => {
      const invented = sampleEntry('x1', { code: 'EX01', isExample: true });
      await keep((session) => session.insertEntry(invented));
      await changeEntry(by('Ada'), 'x1', { note: 'tried' });
      expect(await trail()).toHaveLength(2);
      await keep((session) => session.deleteExample());
      expect(await trail()).toHaveLength(1);
    });
  });
};
