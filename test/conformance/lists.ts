import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { EntriesAsked, Session, Store, Stretch } from '../../src/app/ports/ports.ts';
import type { ProvenSetting } from '../../src/core/book/provenSetting.ts';
import { undescribedMachine } from '../../src/core/machine/machine.ts';
import { done } from '../../src/core/problem.ts';
import { soughtIn } from '../../src/core/search/sought.ts';
import type { Study } from '../../src/core/study/study.ts';
import {
  sampleCard,
  sampleEntry,
  sampleMachine,
  sampleOrder,
  sampleSetting,
  sampleStudy,
  sampleTally,
  sampleTime,
  savedStudy,
} from '../samples/studies.ts';
import type { EngineUnderTest } from './store.ts';

/** How every engine searches its lists, and gives them a stretch at a time. */
export const listConformance = (engine: string, make: () => Promise<EngineUnderTest>): void => {
  describe(`lists on ${engine}`, () => {
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

    describe('a book of several', () => {
      const kept = (
        id: string,
        holdsFor: Partial<ProvenSetting['holdsFor']>,
        over: Partial<ProvenSetting> = {},
      ) =>
        sampleEntry(id, {
          code: 'AAAA',
          holdsFor: {
            material: 'plywood',
            nominalThicknessMm: 3,
            machineId: 'machine-1',
            ...holdsFor,
          },
          ...over,
        });
      beforeEach(async () => {
        await keep(async (session) => {
          await session.insertEntry(
            kept('thin', { batch: 'spring' }, { note: 'Contreplaqué, 100%_for! the lamps' }),
          );
          await session.insertEntry(
            kept('thick', { nominalThicknessMm: 6, measuredThicknessMm: 5.25 }, { code: 'X3MQ' }),
          );
          await session.insertEntry(kept('acrylic', { material: 'Cast acrylic' }));
        });
      });
      const found = async (text: string, asked: Omit<EntriesAsked, 'sought'> = {}) =>
        store.read(async (session) => {
          const { found: some, total } = await session.listEntries({
            ...asked,
            sought: soughtIn(text),
          });
          return [...some.map(({ id }) => id), total];
        });

      it('is given a stretch at a time, with how many there are', async () => {
        expect(await found('  ')).toEqual(['acrylic', 'thick', 'thin', 3]);
        expect(await found('', { from: 1, limit: 1 })).toEqual(['thick', 3]);
        expect(await found('', { from: 9 })).toEqual([3]);
      });

      it('is searched by every word, without minding case or accents', async () => {
        expect(await found('ACRYLIC cast')).toEqual(['acrylic', 1]);
        expect(await found('acrylic lamps')).toEqual([0]);
        expect(await found('contreplaque')).toEqual(['thin', 1]);
        expect(await found('x3mq')).toEqual(['thick', 1]);
      });

      it('is found by a note that is said anew, and no longer by the one before', async () => {
        const thin = await store.read((session) => session.entry('thin'));
        if (thin === undefined) throw new Error('not kept');
        await keep((session) => session.replaceEntry({ ...thin, note: 'For the shelf' }));
        expect(await found('lamps')).toEqual([0]);
        expect(await found('shelf')).toEqual(['thin', 1]);
        // In the place that it has: nothing else of it is other than before.
        expect(await found('')).toEqual(['acrylic', 'thick', 'thin', 3]);
        expect(await store.read((session) => session.entry('thin'))).toEqual({
          ...thin,
          note: 'For the shelf',
        });
      });

      it('takes what a search says as it is', async () => {
        expect(await found('100%_for!')).toEqual(['thin', 1]);
        expect(await found('%')).toEqual(['thin', 1]);
        expect(await found('_i_')).toEqual([0]);
        expect(await found("'; drop table study; --")).toEqual([0]);
      });

      it('is searched by a thickness, of the label or of the caliper', async () => {
        expect(await found('3 mm')).toEqual(['acrylic', 'thin', 2]);
        expect(await found('5.3mm')).toEqual(['thick', 1]);
        expect(await found('5,25 mm plywood')).toEqual(['thick', 1]);
      });

      it('is searched by the name that a machine has now', async () => {
        expect(await found('left')).toEqual([0]);
        const named = { ...undescribedMachine, name: 'The léft one' };
        await keep((session) =>
          session.replaceMachine(sampleMachine('machine-1', { machine: named })),
        );
        expect(await found('left plywood')).toEqual(['thick', 'thin', 2]);
      });

      it('begins with the sheet on the bed, and its batch before others', async () => {
        const onBed = { material: ' PLYWOOD', nominalThicknessMm: 3, thicknessReadingsMm: [] };
        expect(await found('', { onBed })).toEqual(['thin', 'acrylic', 'thick', 3]);
        await keep((session) => session.insertEntry(kept('autumn', { batch: 'autumn' })));
        expect(await found('3 mm ply', { onBed })).toEqual(['autumn', 'thin', 2]);
        expect(await found('3 mm ply', { onBed: { ...onBed, batch: 'spring' } })).toEqual([
          'thin',
          'autumn',
          2,
        ]);
      });

      it('gives the same rows in stretches of any length as at once, with or without a sheet on the bed', async () => {
        let n = 0;
        await keep(async (session) => {
          for (const batch of ['autumn', 'spring', 'autumn'])
            await session.insertEntry(kept(`more-${String((n += 1))}`, { batch }));
        });
        const stock = { material: 'Plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] };
        for (const asked of [{}, { onBed: stock }, { onBed: { ...stock, batch: 'spring' } }])
          for (const text of ['', 'ply', '3 mm']) {
            const all = (await found(text, asked)).slice(0, -1);
            for (let limit = 1; limit <= 4; limit += 1) {
              const pieces: unknown[] = [];
              for (let from = 0; from < all.length; from += limit)
                pieces.push(...(await found(text, { ...asked, from, limit })).slice(0, -1));
              expect(pieces).toEqual(all);
            }
          }
      });

      it('only ever leaves out, never adds, when a word is added', async () => {
        const words = fc.stringMatching(/^[a-zé%_! ]{0,12}$/);
        await fc.assert(
          fc.asyncProperty(words, words, async (one, more) => {
            expect(await found(one)).toEqual(
              expect.arrayContaining((await found(`${one} ${more}`)).slice(0, -1)),
            );
          }),
          { numRuns: 40 },
        );
      });

      it('tells those of a sheet, of a kind, and of the very same stock', async () => {
        await keep((session) =>
          session.insertEntry(
            kept(
              'of-s1',
              { material: 'birch plywood' },
              { cameFrom: { ...sampleEntry('any').cameFrom, studyId: 's1' } },
            ),
          ),
        );
        expect(await found('', { studyId: 's1' })).toEqual(['of-s1', 1]);
        const kind = { isExample: false, machine: { id: 'machine-1' }, limit: 2 };
        await store.read(async (session) => {
          const isSameMaterial = (name: string) => name.includes('plywood');
          const some = await session.entriesOfKind({ ...kind, isSameMaterial });
          expect(some.map(({ id }) => id)).toEqual(['of-s1', 'thick']);
          expect(
            await session.entriesOfKind({ ...kind, isSameMaterial, machine: { id: undefined } }),
          ).toEqual([]);
          const like = kept('any', { material: 'Plywood ', batch: ' SPRING' });
          const ids = async (entry: ProvenSetting) =>
            (await session.entriesOnlyByAir(entry)).map(({ id }) => id);
          expect(await ids(like)).toEqual([]);
          const off = { ...sampleSetting, air: 'off' } as const;
          expect(await ids({ ...like, setting: off })).toEqual(['thin']);
          expect(await ids({ ...like, setting: { ...off, passes: 2 } })).toEqual([]);
        });
      });
    });

    describe('a list of several sheets', () => {
      const begun = (id: string, over: Partial<Study>, code: string) =>
        keep((session) =>
          session.insertStudy(
            savedStudy(sampleStudy(id, { ...over, cards: [sampleCard(code)] })),
            sampleTime,
          ),
        );
      const ply = { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] };
      beforeEach(async () => {
        await begun('s1', { stock: { ...ply, thicknessReadingsMm: [3.4, 3.6] } }, 'LARK');
        await begun('s2', { stock: { ...ply, batch: 'Frühling' } }, 'WREN');
        await begun('s3', { stock: { ...ply, material: 'MDF', nominalThicknessMm: 12 } }, 'TERN');
        await keep((session) => session.insertTally('s2', sampleTally('t1')));
      });
      const listed = (text: string, stretch: Stretch = {}) =>
        store.read(async (session) => {
          const { found, total } = await session.listSheets({ ...stretch, sought: soughtIn(text) });
          return [...found.map(({ id }) => id), total];
        });

      it('says of each in a stretch what the whole list says', async () => {
        await store.read(async (session) => {
          const whole = await session.summaries();
          const { found } = await session.listSheets({ from: 1, limit: 2 });
          expect(found).toEqual(whole.slice(1, 3));
          expect(found.map(({ tallyCount }) => tallyCount)).toEqual([1, 0]);
        });
        expect(await listed('', { limit: 2 })).toEqual(['s3', 's2', 3]);
      });

      it('is searched by words, thickness and the code of a card', async () => {
        expect(await listed('fruhling')).toEqual(['s2', 1]);
        expect(await listed('lark')).toEqual(['s1', 1]);
        expect(await listed('3.5 mm birch')).toEqual(['s1', 1]);
        expect(await listed('3mm')).toEqual(['s2', 's1', 2]);
        expect(await listed('lark wren')).toEqual([0]);
      });

      it('is searched by the note of a sheet, of a card and by the name of a job, as they are said by now', async () => {
        await keep(async (session) => {
          await session.replaceHead('s1', {
            ...sampleStudy('s1'),
            stock: { ...ply, note: 'Warped at one corner\nkept for étuis' },
          });
          await session.replaceCard('s2', sampleCard('WREN', { note: '100%_lens! cleaned' }));
          await session.insertCard('s3', sampleCard('KNOT', { note: 'cut on the left bed' }));
          await session.keepOrder('s3', sampleOrder('o1', { name: 'Lämpchen for the fair' }));
        });
        expect(await listed('etuis corner')).toEqual(['s1', 1]);
        expect(await listed('100%_lens!')).toEqual(['s2', 1]);
        expect(await listed('left 12 mm')).toEqual(['s3', 1]);
        expect(await listed('lampchen')).toEqual(['s3', 1]);
        await keep(async (session) => {
          await session.replaceCard('s2', sampleCard('WREN'));
          await session.keepOrder('s3', sampleOrder('o1', { name: 'Keyrings' }));
        });
        expect(await listed('lens!')).toEqual([0]);
        expect(await listed('lampchen')).toEqual([0]);
        expect(await listed('keyrings')).toEqual(['s3', 1]);
        await keep((session) => session.deleteOrder('o1'));
        expect(await listed('keyrings')).toEqual([0]);
      });

      it('finds a card’s note by each of its words, whatever they are', async () => {
        const words = fc.array(fc.stringMatching(/^[A-Za-zÄé%_!'\\]{2,9}$/), {
          minLength: 1,
          maxLength: 4,
        });
        await fc.assert(
          fc.asyncProperty(words, async (several) => {
            await keep((session) =>
              session.replaceCard('s2', sampleCard('WREN', { note: several.join('\n') })),
            );
            for (const word of several) expect(await listed(word)).toContain('s2');
            expect(await listed(several.join(' '))).toContain('s2');
          }),
          { numRuns: 30 },
        );
      });

      it('follows what is said of a sheet later', async () => {
        const head = { ...sampleStudy('s1'), stock: { ...ply, material: 'cork' } };
        await keep((session) => session.replaceHead('s1', head));
        expect(await listed('cork 3 mm')).toEqual(['s1', 1]);
        expect(await listed('3.5 mm')).toEqual([0]);
      });

      it('tells the sheets of one kind', async () => {
        const kind = {
          isExample: false,
          machine: { id: 'machine-1' },
          isSameMaterial: (name: string) => name.includes('ply'),
          except: 'none',
          limit: 10,
        };
        await store.read(async (session) => {
          expect(await session.sheetsOfKind(kind)).toEqual(['s2', 's1']);
          expect(await session.sheetsOfKind({ ...kind, except: 's2' })).toEqual(['s1']);
          expect(await session.sheetsOfKind({ ...kind, limit: 1 })).toEqual(['s2']);
          expect(await session.sheetsOfKind({ ...kind, isExample: true })).toEqual([]);
          expect(await session.sheetsOfKind({ ...kind, machine: { id: 'other' } })).toEqual([]);
          const listedOf = await session.listSheets({ kind });
          expect(listedOf).toMatchObject({ found: [{ id: 's2' }, { id: 's1' }], total: 2 });
          expect(await session.sheet('s1')).toEqual((await session.summaries())[2]);
          expect(await session.sheet('none')).toBeUndefined();
          const thicknessMm = { least: 3.2, most: 4 };
          expect(await session.sheetsOfKind({ ...kind, thicknessMm })).toEqual(['s1']);
          const begunSince = '2031-05-06T07:08:09.001Z';
          expect(await session.sheetsOfKind({ ...kind, begunSince })).toEqual([]);
        });
      });
    });
  });
};
