import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Session, Store } from '../../src/app/ports/ports.ts';
import { omit } from '../../src/core/omit.ts';
import { done, refused } from '../../src/core/problem.ts';
import {
  sampleBedTest,
  sampleCard,
  sampleEntry,
  sampleEvent,
  sampleFocusTest,
  sampleKerfTest,
  sampleMarkTest,
  sampleMachine,
  sampleMetering,
  sampleOrder,
  sampleStudy,
  sampleTally,
  sampleTime,
} from '../samples/studies.ts';

/** One engine with an empty place of its own. */
export interface EngineUnderTest {
  /** Opens the same place; may be called again after `close`, and while another is open. */
  readonly open: () => Promise<Store>;
  /**
   * Starts a program of its own that appends `count` events to card K7QX of a study, one a session, and calls `heard`
   * with an event's id once the store has acknowledged it. Resolves when it has ended; `kill` ends it at once.
   */
  readonly startWriter: (options: {
    readonly studyId: string;
    readonly name: string;
    readonly count: number;
    readonly heard: (id: string) => void;
  }) => { readonly ended: Promise<void>; readonly kill: () => void };
  readonly destroy: () => Promise<void>;
}

/** What every engine must do. A new engine is one file that calls this. */
export const storeConformance = (engine: string, make: () => Promise<EngineUnderTest>): void => {
  describe(`store on ${engine}`, () => {
    let place: EngineUnderTest;
    let store: Store;

    const keep = async (work: (session: Session) => Promise<unknown>): Promise<void> => {
      await store.change(async (session) => done(await work(session)));
    };

    beforeEach(async () => {
      place = await make();
      store = await place.open();
      await keep((session) => session.insertMachine(sampleMachine()));
    });
    afterEach(async () => {
      await store.close();
      await place.destroy();
    });

    const study = (id: string) => store.read((session) => session.study(id));
    const insert = (id: string, cards = [sampleCard()]) =>
      keep((session) => session.insertStudy(sampleStudy(id, { cards }), sampleTime));

    it('gives back a study exactly as it was given', async () => {
      const whole = sampleStudy('s1', {
        habit: { powerPct: 30, speedMmPerS: 14, comesOut: 'nearly' },
        cards: [sampleCard('ZZZZ'), sampleCard('AAAA')],
        events: [
          sampleEvent('e2', { cardCode: 'ZZZZ' }),
          sampleEvent('e1', { cardCode: 'AAAA' }),
          { id: 'e0', cardCode: 'ZZZZ', at: sampleTime, kind: 'undone', eventId: 'e2' },
        ],
        tallies: [sampleTally('t2'), sampleTally('t1')],
      });
      await keep((session) => session.insertStudy(whole, sampleTime));
      expect(await study('s1')).toEqual({ study: whole, revision: 1, touchedAt: sampleTime });
    });

    it('keeps orders with their sheet, each in its place however often it is said anew', async () => {
      const nest = { widthMm: 300, heightMm: 200, parts: [[0, 0, 10, 0, 10, 10]] };
      await keep((session) =>
        session.insertStudy(
          sampleStudy('s1', { orders: [sampleOrder('o1', { nest })] }),
          sampleTime,
        ),
      );
      await insert('s2');
      await keep((session) => session.keepOrder('s1', sampleOrder('o2')));
      await keep((session) => session.keepOrder('s1', sampleOrder('o1', { parts: 60 })));
      const ordersOf = async (id: string) => (await study(id))?.study.orders;
      expect(await ordersOf('s1')).toEqual([sampleOrder('o1', { parts: 60 }), sampleOrder('o2')]);
      expect(await ordersOf('s2')).toBeUndefined();
      expect(await store.read((session) => session.studyOfOrder('o2'))).toBe('s1');
      await keep((session) => session.deleteOrder('o1'));
      expect(await ordersOf('s1')).toEqual([sampleOrder('o2')]);
      await keep((session) => session.deleteStudy('s1'));
      expect(await store.read((session) => session.studyOfOrder('o2'))).toBeUndefined();
    });

    it('keeps nothing of a session that is refused', async () => {
      const outcome = await store.change(async (session) => {
        await session.insertStudy(sampleStudy('s1'), sampleTime);
        return refused('machine-is-invented');
      });
      expect(outcome).toEqual(refused('machine-is-invented'));
      expect(await study('s1')).toBeUndefined();
    });

    it('keeps nothing of a session that throws, and works on', async () => {
      const work = store.change(async (session) => {
        await session.insertStudy(sampleStudy('s1'), sampleTime);
        throw new Error('a bug');
      });
      await expect(work).rejects.toThrow('a bug');
      expect(await study('s1')).toBeUndefined();
      await insert('s2');
      expect(await study('s2')).toBeDefined();
    });

    it('keeps nothing of a session whose last statement the schema refuses', async () => {
      await insert('s1');
      await expect(
        keep(async (session) => {
          await session.insertEntry(sampleEntry('b1'));
          await session.appendEvents('s1', [sampleEvent('e1', { cardCode: 'NONE' })]);
        }),
      ).rejects.toThrow();
      expect(await store.read((session) => session.entry('b1'))).toBeUndefined();
    });

    it('stores an event once however often it is sent, and keeps the order', async () => {
      await insert('s1');
      const send = (...ids: string[]) =>
        store.change(async (session) =>
          done(
            await session.appendEvents(
              's1',
              ids.map((id) => sampleEvent(id)),
            ),
          ),
        );
      expect(await send('c', 'a')).toEqual(done(2));
      expect(await send('a', 'b', 'b', 'c')).toEqual(done(1));
      expect((await study('s1'))?.study.events.map(({ id }) => id)).toEqual(['c', 'a', 'b']);
    });

    it('keeps more events than one statement holds', async () => {
      await insert('s1');
      const events = Array.from({ length: 2500 }, (_, i) => sampleEvent(`e${String(i)}`));
      await keep((session) => session.appendEvents('s1', events));
      expect((await study('s1'))?.study.events).toEqual(events);
    });

    it('puts events in the order that it is told, new ones among those that are there', async () => {
      await insert('s1');
      await insert('s2', [sampleCard('B2B2')]);
      const arrange = (...ids: string[]) =>
        store.change(async (session) =>
          done(
            await session.arrangeEvents(
              's1',
              ids.map((id) => sampleEvent(id)),
            ),
          ),
        );
      const stored = async () => (await study('s1'))?.study.events.map(({ id }) => id);
      await keep((session) => session.appendEvents('s2', [sampleEvent('x', { cardCode: 'B2B2' })]));
      expect(await arrange('a', 'c')).toEqual(done(2));
      expect(await arrange('a', 'b', 'c', 'd')).toEqual(done(2));
      expect(await stored()).toEqual(['a', 'b', 'c', 'd']);
      expect(await arrange('d', 'c', 'b', 'a')).toEqual(done(0));
      expect(await stored()).toEqual(['d', 'c', 'b', 'a']);
      await keep((session) => session.appendEvents('s1', [sampleEvent('e')]));
      expect(await stored()).toEqual(['d', 'c', 'b', 'a', 'e']);
      expect((await study('s2'))?.study.events.map(({ id }) => id)).toEqual(['x']);
    });

    it('loses no event by putting them in order', async () => {
      await insert('s1');
      await keep((session) => session.appendEvents('s1', [sampleEvent('a'), sampleEvent('b')]));
      await expect(
        keep((session) => session.arrangeEvents('s1', [sampleEvent('b'), sampleEvent('c')])),
      ).rejects.toThrow('event a would be lost');
      expect((await study('s1'))?.study.events.map(({ id }) => id)).toEqual(['a', 'b']);
    });

    it('counts the revision up with every touch', async () => {
      await insert('s1');
      await keep((session) => session.touch('s1', '2031-05-07T00:00:00.000Z'));
      expect(await study('s1')).toMatchObject({
        revision: 2,
        touchedAt: '2031-05-07T00:00:00.000Z',
      });
    });

    it('lists studies, the last touched first', async () => {
      await insert('s1');
      await insert('s2', [sampleCard('B2B2'), sampleCard('A1A1')]);
      await keep((session) => session.insertTally('s2', sampleTally('t1')));
      await keep((session) => session.touch('s1', '2032-01-01T00:00:00.000Z'));
      const listed = await store.read((session) => session.summaries());
      expect(listed.map(({ id, cardCodes, tallyCount }) => [id, cardCodes, tallyCount])).toEqual([
        ['s1', ['K7QX'], 0],
        ['s2', ['B2B2', 'A1A1'], 1],
      ]);
    });

    it('has on the bed what was last put there, whatever was touched since; no strip by itself', async () => {
      const onBed = () => store.read((session) => session.onBed());
      expect(await onBed()).toBeUndefined();
      await insert('s1');
      await insert('s2');
      await keep((session) => session.putOnBed('s1', '2032-01-01T00:00:00.000Z'));
      await keep((session) =>
        session.insertStudy(sampleStudy('s3', { stripOf: 'b1' }), '2033-01-01T00:00:00.000Z'),
      );
      await keep((session) => session.touch('s2', '2034-01-01T00:00:00.000Z'));
      expect((await onBed())?.id).toBe('s1');
      expect((await study('s3'))?.study.stripOf).toBe('b1');
      await keep((session) => session.putOnBed('s3', '2035-01-01T00:00:00.000Z'));
      expect(await onBed()).toMatchObject({ id: 's3', stripOf: 'b1' });
    });

    it('goes by what came last, not by a clock that was set back', async () => {
      await insert('s1', [sampleCard('AAAA')]);
      await insert('s2', [sampleCard('BBBB')]);
      await keep((session) => session.touch('s1', '2019-01-01T00:00:00.000Z'));
      await keep((session) => session.putOnBed('s1', '2019-01-01T00:00:00.000Z'));
      await keep((session) => session.insertEntry(sampleEntry('b1')));
      const earlier = sampleEntry('b2', { code: 'B222', keptAt: '2019-01-01T00:00:00.000Z' });
      await keep((session) => session.insertEntry(earlier));
      await store.read(async (session) => {
        expect((await session.summaries()).map(({ id }) => id)).toEqual(['s1', 's2']);
        expect((await session.onBed())?.id).toBe('s1');
        expect((await session.entries()).map(({ id }) => id)).toEqual(['b2', 'b1']);
      });
    });

    it('keeps two kinds of machine test under one id apart', async () => {
      await keep((session) => session.insertMachineTest('metering', sampleMetering('same')));
      await keep((session) => session.insertMachineTest('focus-test', sampleFocusTest('same')));
      await keep((session) => session.deleteMachineTest('metering', 'same'));
      await store.read(async (session) => {
        expect(await session.machineTest('metering', 'same')).toBeUndefined();
        expect(await session.machineTest('focus-test', 'same')).toEqual(sampleFocusTest('same'));
      });
    });

    it('keeps the last twenty that were removed', async () => {
      const removedAt = (n: number) => `2032-01-01T00:00:${String(n).padStart(2, '0')}.000Z`;
      for (let n = 1; n <= 22; n += 1)
        await keep((session) =>
          session.keepRemoved({
            study: omit(sampleStudy(`s${String(n)}`), 'machine', 'machineChanges'),
            removedAt: removedAt(n),
          }),
        );
      await keep((session) => session.forgetRemoved('s22'));
      const removed = await store.read((session) => session.removedStudies());
      expect(removed.map(({ study: { id } }) => id)).toEqual(
        Array.from({ length: 19 }, (_, i) => `s${String(21 - i)}`),
      );
    });

    it('replaces the head of a study and nothing else', async () => {
      await insert('s1');
      const { study: before } = (await study('s1')) ?? { study: sampleStudy('none') };
      const head = { ...before, aim: 'gentlest' as const, ask: { powerPct: 30 } };
      await keep((session) => session.replaceHead('s1', head));
      expect((await study('s1'))?.study).toEqual(head);
    });

    it('replaces and removes a card, its events with it', async () => {
      await insert('s1', [sampleCard('K7QX'), sampleCard('B2B2')]);
      await keep((session) =>
        session.appendEvents('s1', [sampleEvent('e1'), sampleEvent('e2', { cardCode: 'B2B2' })]),
      );
      const changed = sampleCard('B2B2', { sizeMm: 20 });
      await keep((session) => session.replaceCard('s1', changed));
      await keep((session) => session.deleteCard('s1', 'K7QX'));
      const now = (await study('s1'))?.study;
      expect(now?.cards).toEqual([changed]);
      expect(now?.events.map(({ id }) => id)).toEqual(['e2']);
    });

    it('keeps photographs of a card byte for byte, one a side, until it or its study is gone for good', async () => {
      await insert('s1', [sampleCard('AAAA'), sampleCard('BBBB')]);
      const jpeg = Uint8Array.from({ length: 3000 }, (_, i) => (i * 7919) % 256);
      const photo = { side: 'front', keptAt: sampleTime, widthPx: 40, heightPx: 30, jpeg } as const;
      const at = (code: string) => ({ studyId: 's1', code });
      const photos = (code: string) => store.read((session) => session.photosOf(at(code)));
      await keep(async (session) => {
        await session.keepPhoto(at('AAAA'), { ...photo, side: 'back' });
        await session.keepPhoto(at('AAAA'), { ...photo, jpeg: jpeg.slice(5) });
        await session.keepPhoto(at('AAAA'), photo);
        await session.keepPhoto(at('BBBB'), photo);
      });
      const back = await store.read((session) => session.photo(at('AAAA'), 'front'));
      expect(back && { ...back, jpeg: [...back.jpeg] }).toEqual({ ...photo, jpeg: [...jpeg] });
      expect((await photos('AAAA')).map(({ side }) => side)).toEqual(['front', 'back']);

      await keep((session) => session.deleteCard('s1', 'AAAA'));
      expect([await photos('AAAA'), (await photos('BBBB')).length]).toEqual([[], 1]);
      const removed = { study: sampleStudy('s1'), removedAt: sampleTime };
      await keep(async (session) => {
        await session.keepRemoved(removed);
        await session.deleteStudy('s1');
      });
      expect(await photos('BBBB')).toHaveLength(1);
      await keep((session) => session.forgetRemoved('s1'));
      expect(await photos('BBBB')).toEqual([]);
    });

    it('keeps photographs of a kept setting byte for byte, one a subject, until it is gone', async () => {
      const jpeg = Uint8Array.from({ length: 3000 }, (_, i) => (i * 7919) % 256);
      const photo = { keptAt: sampleTime, widthPx: 40, heightPx: 30, jpeg };
      const photos = (id: string) => store.read((session) => session.settingPhotosOf(id));
      await keep(async (session) => {
        for (const id of ['b1', 'b2']) await session.insertEntry(sampleEntry(id));
        for (const subject of ['tape', 'engrave', 'cut'] as const)
          await session.keepSettingPhoto('b1', { ...photo, subject, jpeg: jpeg.slice(7) });
        await session.keepSettingPhoto('b1', { ...photo, subject: 'cut' });
        await session.keepSettingPhoto('b2', { ...photo, subject: 'cut' });
      });
      const back = await store.read((session) => session.settingPhoto('b1', 'cut'));
      expect(back && { ...back, jpeg: [...back.jpeg] }).toEqual({
        ...photo,
        ...{ subject: 'cut', jpeg: [...jpeg] },
      });
      expect((await photos('b1')).map(({ subject }) => subject)).toEqual([
        'cut',
        'engrave',
        'tape',
      ]);
      await keep((session) => session.deleteSettingPhoto('b1', 'engrave'));
      expect(await photos('b1')).toHaveLength(2);
      await keep((session) => session.replaceEntry(sampleEntry('b1', { note: 'again' })));
      expect(await photos('b1')).toHaveLength(2);
      await keep((session) => session.deleteEntry('b1'));
      expect([await photos('b1'), (await photos('b2')).length]).toEqual([[], 1]);
    });

    it('knows which codes are taken, by cards and by the book', async () => {
      await insert('s1');
      await keep((session) => session.insertEntry(sampleEntry('b1', { code: 'BOOK' })));
      const taken = (code: string) => store.read((session) => session.codeTaken(code));
      expect([await taken('K7QX'), await taken('BOOK'), await taken('FREE')]).toEqual([
        true,
        true,
        false,
      ]);
    });

    it('finds a proven setting by id and by code, the last kept first', async () => {
      const older = sampleEntry('b1', { code: 'SAME', keptAt: '2030-01-01T00:00:00.000Z' });
      const newer = sampleEntry('b2', { code: 'SAME', note: 'second order' });
      await keep(async (session) => {
        await session.insertEntry(older);
        await session.insertEntry(newer);
      });
      await store.read(async (session) => {
        expect(await session.entries()).toEqual([newer, older]);
        expect(await session.entry('b1')).toEqual(older);
        expect(await session.entry('SAME')).toEqual(newer);
        expect(await session.entry('b3')).toBeUndefined();
      });
    });

    it('keeps the tallies of a proven setting when its study goes, and loses the others', async () => {
      await insert('s1');
      await keep(async (session) => {
        await session.insertEntry(sampleEntry('b1'));
        await session.insertTally('s1', sampleTally('t1', { provenSettingId: 'b1' }));
        await session.insertTally('s1', sampleTally('t2'));
        await session.deleteStudy('s1');
      });
      await store.read(async (session) => {
        const kept = sampleTally('t1', { provenSettingId: 'b1' });
        expect(await session.study('s1')).toBeUndefined();
        expect(await session.talliesOfEntry('b1')).toEqual([kept]);
        expect(await session.looseTallies()).toEqual([kept]);
        expect(await session.tally('t1')).toEqual({ tally: kept });
        expect(await session.tally('t2')).toBeUndefined();
      });
    });

    it('keeps the tallies of a study when its proven setting goes', async () => {
      await insert('s1');
      await keep(async (session) => {
        await session.insertEntry(sampleEntry('b1'));
        await session.insertTally('s1', sampleTally('t1', { provenSettingId: 'b1' }));
        await session.insertTally(undefined, sampleTally('t2', { provenSettingId: 'b1' }));
        await session.deleteEntry('b1');
      });
      expect((await study('s1'))?.study.tallies).toEqual([sampleTally('t1')]);
      expect(await store.read((session) => session.tally('t2'))).toBeUndefined();
    });

    it('removes every trace of the example and nothing else', async () => {
      await insert('own');
      await keep(async (session) => {
        await session.insertEntry(sampleEntry('own-entry'));
        await session.insertStudy(
          sampleStudy('example', {
            isExample: true,
            cards: [sampleCard('EXMP')],
            tallies: [sampleTally('t1')],
          }),
          sampleTime,
        );
        await session.insertEntry(sampleEntry('example-entry', { isExample: true }));
        await session.insertTally(
          undefined,
          sampleTally('t2', { provenSettingId: 'example-entry' }),
        );
      });
      await keep((session) => session.deleteExample());
      await store.read(async (session) => {
        expect((await session.summaries()).map(({ id }) => id)).toEqual(['own']);
        expect((await session.entries()).map(({ id }) => id)).toEqual(['own-entry']);
        expect(await session.tally('t1')).toBeUndefined();
        expect(await session.tally('t2')).toBeUndefined();
        expect(await session.codeTaken('EXMP')).toBe(false);
      });
    });

    it('keeps meterings exactly, the latest first, until they are removed', async () => {
      const meterings = [
        sampleMetering('m1'),
        sampleMetering('m3', { at: '2031-07-01T00:00:00.000Z', machine: 'left', note: 'new lens' }),
        sampleMetering('m2', { at: '2031-06-01T00:00:00.000Z' }),
      ];
      for (const metering of meterings)
        await keep((session) => session.insertMachineTest('metering', metering));
      const stored = () => store.read((session) => session.machineTests('metering'));
      expect(await stored()).toEqual([meterings[1], meterings[2], meterings[0]]);
      expect(await store.read((session) => session.machineTest('metering', 'm2'))).toEqual(
        meterings[2],
      );
      await expect(
        keep((session) => session.insertMachineTest('metering', sampleMetering('m1'))),
      ).rejects.toThrow();
      await keep((session) => session.deleteMachineTest('metering', 'm3'));
      await keep((session) => session.deleteExample());
      expect((await stored()).map(({ id }) => id)).toEqual(['m2', 'm1']);
      expect(await store.read((session) => session.machineTest('metering', 'm3'))).toBeUndefined();
    });

    it('keeps focus tests beside meterings, each in its own list', async () => {
      const later = sampleFocusTest('f2', {
        at: '2031-06-01T00:00:00.000Z',
        readings: { kind: 'widths', widths: [{ alongMm: 12, widthMm: 0.4 }] },
      });
      await keep(async (session) => {
        await session.insertMachineTest('focus-test', sampleFocusTest('f1'));
        await session.insertMachineTest('metering', sampleMetering('m1'));
        await session.insertMachineTest('focus-test', later);
      });
      const stored = () => store.read((session) => session.machineTests('focus-test'));
      expect(await stored()).toEqual([later, sampleFocusTest('f1')]);
      expect(await store.read((session) => session.machineTest('metering', 'f1'))).toBeUndefined();
      await keep((session) => session.deleteMachineTest('metering', 'f1'));
      await keep((session) => session.deleteMachineTest('focus-test', 'f2'));
      expect(await stored()).toEqual([sampleFocusTest('f1')]);
      expect(
        await store.read((session) => session.machineTest('focus-test', 'f2')),
      ).toBeUndefined();
    });

    it('keeps readings of the four corners in a list of their own, and lets tests of the example go with it', async () => {
      const later = sampleBedTest('c2', {
        at: '2031-06-01T00:00:00.000Z',
        note: 'after levelling',
      });
      await keep(async (session) => {
        await session.insertMachineTest('bed-test', sampleBedTest('c1'));
        await session.insertMachineTest('bed-test', later);
        await session.insertMachineTest('focus-test', sampleFocusTest('f1'));
        await session.insertMachineTest('bed-test', sampleBedTest('c3', { isExample: true }));
        await session.insertMachineTest('metering', sampleMetering('m1', { isExample: true }));
        await session.insertMachineTest('metering', sampleMetering('m2'));
      });
      const stored = () => store.read((session) => session.machineTests('bed-test'));
      expect((await stored()).map(({ id }) => id)).toEqual(['c2', 'c3', 'c1']);
      expect(await store.read((session) => session.machineTest('bed-test', 'c2'))).toEqual(later);
      expect(await store.read((session) => session.machineTest('bed-test', 'f1'))).toBeUndefined();
      await keep((session) => session.deleteExample());
      expect((await stored()).map(({ id }) => id)).toEqual(['c2', 'c1']);
      const meterings = await store.read((session) => session.machineTests('metering'));
      expect(meterings.map(({ id }) => id)).toEqual(['m2']);
      await keep((session) => session.deleteMachineTest('bed-test', 'c2'));
      expect(await stored()).toEqual([sampleBedTest('c1')]);
    });

    it('keeps measured kerfs as they were, and apart from other tests', async () => {
      await keep(async (session) => {
        await session.insertMachineTest('kerf-test', sampleKerfTest('k1'));
        await session.insertMachineTest('bed-test', sampleBedTest('c1'));
      });
      const stored = () => store.read((session) => session.machineTests('kerf-test'));
      expect(await stored()).toEqual([sampleKerfTest('k1')]);
      expect(await store.read((session) => session.machineTest('kerf-test', 'c1'))).toBeUndefined();
      await keep((session) => session.deleteMachineTest('kerf-test', 'k1'));
      expect(await stored()).toEqual([]);
    });

    it('keeps marks beside cuts as they were, the latest first, and apart from other tests', async () => {
      await keep(async (session) => {
        await session.insertMachineTest('mark-test', sampleMarkTest('e1'));
        await session.insertMachineTest(
          'mark-test',
          sampleMarkTest('e2', { mark: { kind: 'tape', tape: 'paper' } }),
        );
        await session.insertMachineTest('kerf-test', sampleKerfTest('k1'));
      });
      const stored = () => store.read((session) => session.machineTests('mark-test'));
      expect((await stored()).map(({ id }) => id)).toEqual(['e2', 'e1']);
      expect((await stored())[1]).toEqual(sampleMarkTest('e1'));
      expect(await store.read((session) => session.machineTest('mark-test', 'k1'))).toBeUndefined();
      await keep((session) => session.deleteMachineTest('mark-test', 'e2'));
      expect(await stored()).toEqual([sampleMarkTest('e1')]);
    });

    it('keeps what it acknowledged when it is closed and opened again', async () => {
      await insert('s1');
      await store.close();
      store = await place.open();
      expect((await study('s1'))?.study.cards).toEqual([sampleCard()]);
    });

    it('lets sessions of one program wait for one another', async () => {
      await insert('s1');
      const ids = Array.from({ length: 40 }, (_, i) => `e${String(i)}`);
      await Promise.all(
        ids.map((id) =>
          keep(async (session) => {
            await session.appendEvents('s1', [sampleEvent(id)]);
            await session.touch('s1', sampleTime);
          }),
        ),
      );
      const now = await study('s1');
      expect(now?.study.events.map(({ id }) => id).sort()).toEqual([...ids].sort());
      expect(now?.revision).toBe(41);
    });

    it('takes the writings of two programs at once, each in its order', async () => {
      await insert('s1');
      const heard: string[] = [];
      const writers = ['p', 'q'].map((name) =>
        place.startWriter({ studyId: 's1', name, count: 60, heard: (id) => heard.push(id) }),
      );
      await Promise.all(writers.map(({ ended }) => ended));
      const stored = (await study('s1'))?.study.events.map(({ id }) => id) ?? [];
      expect(heard).toHaveLength(120);
      expect([...stored].sort()).toEqual([...heard].sort());
      for (const name of ['p', 'q'])
        expect(stored.filter((id) => id.startsWith(name))).toEqual(
          Array.from({ length: 60 }, (_, i) => `${name}${String(i)}`),
        );
    });

    it('has everything that it acknowledged after the program was killed', async () => {
      await insert('s1');
      const heard: string[] = [];
      const writer = place.startWriter({
        studyId: 's1',
        name: 'k',
        count: 1_000_000,
        heard: (id) => {
          heard.push(id);
          if (heard.length === 25) writer.kill();
        },
      });
      await writer.ended;
      const stored = (await study('s1'))?.study.events.map(({ id }) => id) ?? [];
      expect(heard.length).toBeGreaterThanOrEqual(25);
      expect(stored.slice(0, heard.length)).toEqual(heard);
      expect(stored.length - heard.length).toBeLessThanOrEqual(1);
    });
  });
};
