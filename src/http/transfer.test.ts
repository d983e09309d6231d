import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { testServer, type TestServer } from '../../test/samples/server.ts';
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
  sampleStudy,
  sampleTally,
  sampleTime,
  savedStudy,
  selfDescribedStudy,
} from '../../test/samples/studies.ts';
import { readCard } from '../core/reading/readCard.ts';
import { api } from '../wire/api.ts';

let server: TestServer;
beforeEach(async () => {
  server = await testServer();
});
afterEach(async () => {
  expect(server.reported).toEqual([]);
  await server.close();
});

const study = sampleStudy('s1', {
  cards: [sampleCard(), sampleCard('B2B2')],
  events: [sampleEvent('e1'), sampleEvent('e2', { cardCode: 'B2B2', grade: 'hangs' })],
  tallies: [sampleTally('t1', { provenSettingId: 'b1' })],
});
const file = {
  kind: 'throughcut-export',
  version: 3,
  exportedAt: sampleTime,
  machines: [sampleMachine()],
  studies: [savedStudy(study)],
  book: [sampleEntry('b1')],
  tallies: [sampleTally('t2', { provenSettingId: 'b1' })],
  meterings: [sampleMetering('m1'), sampleMetering('m2', { at: '2031-06-01T00:00:00.000Z' })],
  focusTests: [sampleFocusTest('f1')],
  bedTests: [sampleBedTest('c1')],
  kerfTests: [sampleKerfTest('k1')],
  markTests: [sampleMarkTest('e1')],
};
const counts = {
  machines: 1,
  studies: 1,
  cards: 2,
  events: 2,
  tallies: 2,
  provenSettings: 1,
  meterings: 2,
  focusTests: 1,
  bedTests: 1,
  kerfTests: 1,
  markTests: 1,
};
const none = {
  machines: 0,
  studies: 0,
  cards: 0,
  events: 0,
  tallies: 0,
  provenSettings: 0,
  meterings: 0,
  focusTests: 0,
  bedTests: 0,
  kerfTests: 0,
  markTests: 0,
};

describe('export and import', () => {
  it('bring back exactly what was there', async () => {
    expect(await server.ask(api.importAll, { body: file })).toEqual({
      added: counts,
      alreadyHere: none,
      notAdvised: [],
    });
    const exported = await server.ask(api.exportAll);
    expect({ ...exported, exportedAt: sampleTime }).toEqual(file);
  });

  it('take a file of the first version, from before meterings were kept', async () => {
    const { kind, exportedAt, book, tallies } = file;
    const studies = [selfDescribedStudy(study)];
    const first = { kind, version: 1, exportedAt, studies, book, tallies };
    const { added } = await server.ask(api.importAll, { body: first });
    expect(added).toEqual({
      ...counts,
      ...{ meterings: 0, focusTests: 0, bedTests: 0, kerfTests: 0, markTests: 0 },
    });
    expect(await server.ask(api.exportAll)).toMatchObject({
      version: 3,
      meterings: [],
      focusTests: [],
      bedTests: [],
    });
  });

  it('add nothing the second time', async () => {
    await server.ask(api.importAll, { body: file });
    const before = await server.ask(api.getStudy, { params: { id: 's1' } });
    expect(await server.ask(api.importAll, { body: file })).toEqual({
      added: none,
      alreadyHere: counts,
      notAdvised: [],
    });
    expect(await server.ask(api.getStudy, { params: { id: 's1' } })).toEqual(before);
  });

  it('go out whole though they are sent in pieces', async () => {
    const studies = Array.from({ length: 150 }, (_, i) => {
      const cards = [{ ...sampleCard(), code: `A${String(i).padStart(3, '0')}` }];
      return savedStudy(sampleStudy(`s${String(i)}`, { cards, events: [] }));
    });
    const body = { ...file, studies, book: [], tallies: [] };
    await server.ask(api.importAll, { body });
    const { payload } = await server.app.inject('/api/export');
    expect(payload.length).toBeGreaterThan(100_000);
    const gone = JSON.parse(payload) as { readonly studies: readonly { readonly id: string }[] };
    const idsOf = (list: typeof gone.studies) => list.map(({ id }) => id).sort();
    expect(idsOf(gone.studies)).toEqual(idsOf(studies));
    const table = (await server.app.inject('/api/export/cells.csv')).payload;
    expect(table.split('\r\n')).toHaveLength(1 + 4 * studies.length + 1);
  });

  it('add to a study what it does not have yet, and leave the rest as it is', async () => {
    await server.ask(api.importAll, { body: file });
    await server.ask(api.changeStudy, { params: { id: 's1' }, body: { aim: 'cleanest' } });
    const more = sampleStudy('s1', {
      cards: [sampleCard(), sampleCard('C3C3')],
      events: [sampleEvent('e3', { cardCode: 'C3C3' })],
    });
    const { added } = await server.ask(api.importAll, {
      body: { ...file, studies: [savedStudy(more)] },
    });
    expect(added).toEqual({ ...none, cards: 1, events: 1 });
    const { study } = await server.ask(api.getStudy, { params: { id: 's1' } });
    expect(study.aim).toBe('cleanest');
    expect(study.cards.map(({ code }) => code)).toEqual(['K7QX', 'B2B2', 'C3C3']);
  });

  it('stand as a table, one line a cell', async () => {
    await server.ask(api.importAll, { body: file });
    const reply = await server.app.inject({ url: '/api/export/cells.csv' });
    expect(reply.headers['content-type']).toContain('text/csv');
    const [head = '', ...rows] = reply.body.trim().split('\r\n');
    const cells = file.studies.flatMap(({ cards }) => cards.flatMap(({ cells: each }) => each));
    expect(rows).toHaveLength(cells.length);
    const grade = head.split(',').indexOf('grade');
    const grades = rows.map((row) => row.split(',')[grade]).filter((said) => said !== '');
    expect(grades).toEqual(['out', 'hangs']);
  });

  it('let the later word stand, though it is not the one that came last', async () => {
    await server.ask(api.importAll, { body: file });
    const params = { id: 's1' };
    const at = (hour: string) => `2031-05-06T${hour}:00:00.000Z`;
    const said = { kind: 'graded', cardCode: 'K7QX' } as const;
    const atDesk = [
      { ...said, id: 'noon', at: at('12'), cell: 'A1', grade: 'out' },
      { ...said, id: 'slip', at: at('14'), cell: 'B1', grade: 'out' },
      { id: 'taken-back', cardCode: 'K7QX', at: at('15'), kind: 'undone', eventId: 'slip' },
    ] as const;
    await server.ask(api.recordReadings, { params, body: { events: atDesk } });
    const elsewhere = [
      ...(file.studies[0]?.events ?? []),
      { ...said, id: 'morning', at: at('09'), cell: 'A1', grade: 'stays' } as const,
      { ...said, id: 'two', at: at('13'), cell: 'B1', grade: 'hangs' } as const,
      { ...said, id: 'evening', at: at('19'), cell: 'A2', grade: 'hangs' } as const,
    ];
    const [first] = file.studies;
    const copy = { ...file, studies: [{ ...first, events: elsewhere }] };
    const { added } = await server.ask(api.importAll, { body: copy });
    expect(added).toEqual({ ...none, events: 3 });
    const { study, revision } = await server.ask(api.getStudy, { params });
    expect(study.events.map(({ id }) => id)).toEqual([
      'e1',
      'e2',
      'morning',
      'noon',
      'two',
      'slip',
      'taken-back',
      'evening',
    ]);
    const cells = readCard(sampleCard(), study.events).cells;
    const ends = cells.map(({ id, reading }) => [id, reading.kind === 'graded' && reading.grade]);
    expect(ends).toEqual([
      ['A1', 'out'],
      ['B1', 'hangs'],
      ['A2', 'hangs'],
      ['B2', false],
    ]);
    // Brought in again it changes nothing.
    await server.ask(api.importAll, { body: copy });
    const again = await server.ask(api.getStudy, { params });
    expect(again.study).toEqual(study);
    expect(again.revision).toBe(revision);
  });

  it.each([
    [{ ...file, version: 7 }, 400, 'file-version-unknown'],
    [{ ...file, studies: [{ ...file.studies[0], id: '' }] }, 400, 'file-value-refused'],
    [{ ...file, book: [] }, 422, 'import-names-unknown-setting'],
    [{ ...file, machines: [] }, 422, 'import-names-unknown-machine'],
    [
      { ...file, studies: [savedStudy(sampleStudy('s9', { events: [sampleEvent('e1')] }))] },
      404,
      'card-not-found',
    ],
  ])('change nothing when any of it is refused %#', async (body, status, code) => {
    expect(await server.refusal(api.importAll, { body })).toEqual([status, code]);
    expect(await server.ask(api.home)).toEqual({ hasWork: false, exampleOpen: false });
  });

  it('leave the example behind', async () => {
    await server.ask(api.openExample);
    expect(await server.ask(api.exportAll)).toMatchObject({ studies: [], book: [], tallies: [] });
  });

  it('can be imported elsewhere whatever became of the example', async () => {
    await server.ask(api.openExample);
    const own = { id: 's1', stock: sampleStudy('s1').stock };
    await server.ask(api.startStudy, { body: own });
    const tally = sampleTally('t1', { provenSettingId: 'example-kept' });
    await server.ask(api.recordTally, { params: { id: 's1' }, body: tally });
    await server.ask(api.removeStudy, { params: { id: 'example-plywood' } });
    const exported = await server.ask(api.exportAll);
    expect(exported.studies[0]?.tallies).toEqual([sampleTally('t1')]);
    const elsewhere = await testServer();
    await elsewhere.ask(api.importAll, { body: exported });
    await elsewhere.close();
  });

  it('give the book as a table', async () => {
    await server.ask(api.importAll, { body: file });
    const response = await server.send(api.exportBookTable);
    expect(response.headers['content-type']).toBe('text/csv; charset=utf-8');
    const [head, row, end] = response.body.split('\r\n');
    expect(head?.split(',').slice(0, 3)).toEqual(['code', 'kept_at', 'machine']);
    expect(row).toMatch(/^BK42,2031/);
    expect(end).toBe('');
  });
});

describe('the first screen', () => {
  it('knows an empty workshop', async () => {
    expect(await server.ask(api.home)).toEqual({ hasWork: false, exampleOpen: false });
  });

  it('opens the example with one click and removes it with one', async () => {
    const opened = await server.ask(api.openExample);
    expect(opened).toMatchObject({ hasWork: false, exampleOpen: true });
    expect(await server.ask(api.openExample)).toEqual(opened);
    expect((await server.ask(api.searchBook)).entries[0]?.standing.counted.parts).toBeGreaterThan(
      100,
    );
    expect(await server.ask(api.removeExample)).toEqual({ hasWork: false, exampleOpen: false });
    expect((await server.ask(api.listStudies)).studies).toEqual([]);
  });

  it('opens on the sheet on the bed, one’s own before the example’s', async () => {
    await server.ask(api.importAll, { body: file });
    await server.ask(api.openExample);
    const { latest, hasWork } = await server.ask(api.home);
    expect(hasWork).toBe(true);
    expect(latest?.study.id).toBe('s1');
    expect(latest?.lastTally?.id).toBe('t1');
    expect(latest?.kept).toBeUndefined();
  });
});

describe('materials', () => {
  it('are judged with reason and source', async () => {
    const judged = (text: string) => server.ask(api.judgeMaterial, { query: { text } });
    expect(await judged('birch plywood')).toMatchObject({ material: 'plywood' });
    const vinyl = await judged('vinyl');
    expect(vinyl.decision).toBe('refuse');
    expect(vinyl.said?.message).toMatch(/hydrogen chloride/i);
    expect(vinyl.sources?.length).toBeGreaterThan(0);
    expect(await server.refusal(api.judgeMaterial, { query: { text: '' } })).toEqual([
      400,
      'file-text-empty',
    ]);
  });
});
