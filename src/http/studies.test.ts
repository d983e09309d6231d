import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import { sampleCard, sampleEvent, sampleSetting, sampleTime } from '../../test/samples/studies.ts';
import { api } from '../wire/api.ts';

const stock = { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] };

let server: TestServer;
beforeEach(async () => {
  server = await testServer();
});
afterEach(async () => {
  expect(server.reported).toEqual([]);
  await server.close();
});

const start = (id = 's1') => server.ask(api.startStudy, { body: { id, stock } });
const whole = async (id = 's1') => (await server.ask(api.getStudy, { params: { id } })).study;
const params = { id: 's1' };

describe('a study', () => {
  it('begins with the sheet alone', async () => {
    const { study, revision } = await server.ask(api.startStudy, { body: { stock } });
    expect(study).toMatchObject({
      id: 'made-1',
      isExample: false,
      aim: 'fastest',
      machine: { maxPowerPct: 100 },
      promise: { outOf100: 97, surePct: 95 },
      cards: [],
    });
    expect(revision).toBe(1);
    expect(await whole('made-1')).toEqual(study);
  });

  it('begins once, however often it is sent', async () => {
    const first = await start();
    const again = await server.ask(api.startStudy, {
      body: { id: 's1', stock: { ...stock, nominalThicknessMm: 6 } },
    });
    expect(again).toEqual(first);
  });

  it('is listed with what was touched last at the top', async () => {
    await start('s1');
    await start('s2');
    await server.ask(api.addCard, { params, body: { card: sampleCard() } });
    const { studies } = await server.ask(api.listStudies);
    expect(studies.map(({ id, cardCodes }) => [id, cardCodes])).toEqual([
      ['s1', ['K7QX']],
      ['s2', []],
    ]);
  });

  it('changes only what was said, and forgets a habit when told to', async () => {
    await start();
    const habit = { powerPct: 30, speedMmPerS: 14, comesOut: 'nearly' as const };
    const changed = await server.ask(api.changeStudy, { params, body: { aim: 'gentlest', habit } });
    expect(changed.study).toMatchObject({ aim: 'gentlest', habit, stock });
    expect(changed.revision).toBe(2);
    const without = await server.ask(api.changeStudy, { params, body: { habit: null } });
    expect(without.study.habit).toBeUndefined();
    expect(without.study.aim).toBe('gentlest');
    expect(await whole()).toEqual(without.study);
  });

  it('lies on the bed from its beginning, and again when it is put there; touching another moves nothing', async () => {
    const onBed = async () => (await server.ask(api.home)).latest?.study.id;
    await start('s1');
    await start('s2');
    await server.ask(api.addCard, { params, body: { card: sampleCard() } });
    expect(await onBed()).toBe('s2');
    await server.ask(api.putOnBed, { params });
    expect(await onBed()).toBe('s1');
    expect(await server.refusal(api.putOnBed, { params: { id: 'none' } })).toEqual([
      404,
      'study-not-found',
    ]);
  });

  it('comes back as it was after it was removed, with all that was read and counted', async () => {
    await start();
    await server.ask(api.addCard, { params, body: { card: sampleCard() } });
    await server.ask(api.recordReadings, { params, body: { events: [sampleEvent('e1')] } });
    const body = { id: 't1', ...{ out: 9, hangs: 1, stays: 0, spoilt: 0 }, setting: sampleSetting };
    await server.ask(api.recordTally, { params, body: { ...body, partLengthMm: 60 } });
    const before = await whole();
    await server.ask(api.removeStudy, { params });
    expect(await server.ask(api.removeStudy, { params })).toEqual({ removed: true });
    expect(await server.ask(api.home)).toMatchObject({ hasWork: false, removed: [{ id: 's1' }] });
    const back = await server.ask(api.putBackStudy, { params });
    expect(back.study).toEqual(before);
    expect((await server.ask(api.putBackStudy, { params })).study).toEqual(before);
    expect((await server.ask(api.home)).removed).toBeUndefined();
    expect(await server.refusal(api.putBackStudy, { params: { id: 'none' } })).toEqual([
      404,
      'study-not-found',
    ]);
  });

  it('goes when it is removed', async () => {
    await start();
    expect(await server.ask(api.removeStudy, { params })).toEqual({ removed: true });
    expect(await server.refusal(api.getStudy, { params })).toEqual([404, 'study-not-found']);
    expect(await server.refusal(api.removeStudy, { params: { id: 'none' } })).toEqual([
      404,
      'study-not-found',
    ]);
  });

  it('is not begun on a refused material, nor changed to one', async () => {
    const vinyl = { ...stock, material: 'white vinyl' };
    expect(await server.refusal(api.startStudy, { body: { stock: vinyl } })).toEqual([
      422,
      'material-refused',
    ]);
    await start();
    expect(await server.refusal(api.changeStudy, { params, body: { stock: vinyl } })).toEqual([
      422,
      'material-refused',
    ]);
    expect((await whole()).stock).toEqual(stock);
    expect((await server.ask(api.listStudies)).studies).toHaveLength(1);
  });
});

describe('a card', () => {
  beforeEach(() => start());
  const add = (card = sampleCard(), id = 's1') =>
    server.ask(api.addCard, { params: { id }, body: { card } });

  it('is stored once, however often it is sent', async () => {
    const first = await add();
    expect(await add()).toEqual(first);
    expect((await whole()).cards).toEqual([sampleCard()]);
  });

  it('needs a code of its own in the whole workshop', async () => {
    await add();
    const other = { params, body: { card: sampleCard('K7QX', { sizeMm: 20 }) } };
    expect(await server.refusal(api.addCard, other)).toEqual([409, 'card-code-taken']);
    await start('s2');
    expect(
      await server.refusal(api.addCard, { params: { id: 's2' }, body: { card: sampleCard() } }),
    ).toEqual([409, 'card-code-taken']);
  });

  it('is designed on request, under a free code', async () => {
    const asked = { vary: 'speed', powerPct: 34, settingsAtMost: 5, cellsEach: 2 } as const;
    const { card, revision } = await server.ask(api.addCard, { params, body: { request: asked } });
    expect(card.rungs).toHaveLength(5);
    expect(card.rungs.every(({ setting }) => setting.powerPct === 34)).toBe(true);
    expect(card.cells).toHaveLength(10);
    expect(card.code).toMatch(/^M\d{3}$/);
    expect(revision).toBe(2);
    expect((await whole()).cards).toEqual([card]);
  });

  it('is cut from a board of its own unless the request says from which', async () => {
    const request = { vary: 'speed', powerPct: 34 } as const;
    const added = async (over: { readonly sheet?: string; readonly sameSheetAs?: string }) =>
      (await server.ask(api.addCard, { params, body: { request: { ...request, ...over } } })).card;
    const first = await added({});
    expect(first.sheet).toBeUndefined();
    expect((await added({ sheet: 'no. 4' })).sheet).toBe('no. 4');
    const again = await added({ sameSheetAs: first.code });
    expect(again.sheet).toBe(`card ${first.code}`);
    expect((await added({ sameSheetAs: again.code })).sheet).toBe(again.sheet);
    const stranger = { params, body: { request: { ...request, sameSheetAs: 'NONE' } } };
    expect(await server.refusal(api.addCard, stranger)).toEqual([404, 'card-not-found']);
  });

  it('is not designed when the wish cannot be met', async () => {
    const tooSmall = { params, body: { request: { sheetMm: [20, 20], sizeMm: 60 } } };
    expect(await server.refusal(api.addCard, tooSmall)).toEqual([422, 'card-bigger-than-sheet']);
    const corners = { params, body: { request: { vary: 'corners', shape: 'circle' } } };
    expect(await server.refusal(api.addCard, corners)).toEqual([422, 'card-corners-need-corners']);
    expect((await whole()).cards).toEqual([]);
  });

  it('may be described anew, but keeps the cells that were read', async () => {
    await add();
    await server.ask(api.recordReadings, { params, body: { events: [sampleEvent('e1')] } });
    const at = { id: 's1', code: 'K7QX' };
    const wider = sampleCard('K7QX', { widthMm: 120 });
    await server.ask(api.replaceCard, { params: at, body: { card: wider } });
    expect((await whole()).cards).toEqual([wider]);
    const without = sampleCard('K7QX', { cells: sampleCard().cells.slice(1) });
    expect(await server.refusal(api.replaceCard, { params: at, body: { card: without } })).toEqual([
      409,
      'read-cell-would-vanish',
    ]);
    expect(
      await server.refusal(api.replaceCard, { params: at, body: { card: sampleCard('AAAA') } }),
    ).toEqual([409, 'card-code-changed']);
  });

  it('that was designed stays as it was cut once it is read', async () => {
    const designed = sampleCard('K7QX', { origin: 'designed' });
    await add(designed);
    const at = { id: 's1', code: 'K7QX' };
    const larger = { ...designed, sizeMm: 20 };
    await server.ask(api.replaceCard, { params: at, body: { card: larger } });
    await server.ask(api.recordReadings, { params, body: { events: [sampleEvent('e1')] } });
    // Its note is nobody’s reading: it may be said of a card that is read, and goes out and comes in with it.
    const noted = { ...larger, note: 'cut beside the left rail' };
    await server.ask(api.replaceCard, { params: at, body: { card: noted } });
    const file = await server.ask(api.exportAll);
    await server.ask(api.replaceCard, { params: at, body: { card: larger } });
    await server.ask(api.importAll, { body: file });
    expect(file.studies[0]?.cards.some(({ note }) => note === noted.note)).toBe(true);
    expect(await server.refusal(api.replaceCard, { params: at, body: { card: designed } })).toEqual(
      [409, 'card-already-read'],
    );
    expect((await whole()).cards).toEqual([larger]);
  });

  it('goes with its readings', async () => {
    await add();
    await server.ask(api.recordReadings, { params, body: { events: [sampleEvent('e1')] } });
    const at = { id: 's1', code: 'K7QX' };
    await server.ask(api.removeCard, { params: at });
    expect(await whole()).toMatchObject({ cards: [], events: [] });
    expect(await server.refusal(api.removeCard, { params: at })).toEqual([404, 'card-not-found']);
    expect(
      await server.refusal(api.replaceCard, { params: at, body: { card: sampleCard() } }),
    ).toEqual([404, 'card-not-found']);
  });

  it('comes as a file for the machine', async () => {
    const scoring = { ...sampleSetting, powerPct: 12, speedMmPerS: 90 };
    // Its words need more room than those of the others.
    const { cells } = sampleCard();
    const roomier = cells.map((cell, i) => ({ ...cell, xMm: 20 + 30 * i, yMm: 22 }));
    await add(sampleCard('K7QX', { scoring, widthMm: 140, heightMm: 40, cells: roomier }));
    for (const kind of ['svg', 'dxf', 'gcode', 'pdf', 'json']) {
      const response = await server.send(api.cardFile, {
        params: { id: 's1', code: 'K7QX', kind },
      });
      expect(response.statusCode, kind).toBe(200);
      // DXF has no place for a title.
      if (kind !== 'dxf') expect(response.body).toContain('K7QX');
      expect(response.headers['content-disposition']).toBe(
        `attachment; filename="card-K7QX.${kind}"`,
      );
    }
    const refusal = (over: object) =>
      server.refusal(api.cardFile, { params: { id: 's1', code: 'K7QX', kind: 'svg', ...over } });
    expect(await refusal({ kind: 'exe' })).toEqual([400, 'file-value-not-allowed']);
    expect(await refusal({ code: 'NONE' })).toEqual([404, 'card-not-found']);
    expect(await refusal({ id: 'other' })).toEqual([404, 'study-not-found']);
  });
});

describe('readings', () => {
  beforeEach(async () => {
    await start();
    await server.ask(api.addCard, { params, body: { card: sampleCard() } });
  });
  const record = (...events: unknown[]) =>
    server.ask(api.recordReadings, { params, body: { events } });

  it('are stored once, in order, and an old one changes no revision', async () => {
    expect(await record(sampleEvent('b'), sampleEvent('a'))).toEqual({ stored: 2, revision: 3 });
    expect(await record(sampleEvent('a'))).toEqual({ stored: 0, revision: 3 });
    const undone = { id: 'c', cardCode: 'K7QX', at: sampleTime, kind: 'undone', eventId: 'a' };
    const asCut = {
      id: 'd',
      cardCode: 'K7QX',
      at: sampleTime,
      kind: 'as-cut',
      cell: 'B1',
      setting: sampleSetting,
    };
    expect(await record(undone, asCut)).toEqual({ stored: 2, revision: 4 });
    expect((await whole()).events.map(({ id }) => id)).toEqual(['b', 'a', 'c', 'd']);
  });

  it('are stored all or not at all', async () => {
    const refusal = (event: unknown) =>
      server.refusal(api.recordReadings, { params, body: { events: [sampleEvent('ok'), event] } });
    expect(await refusal(sampleEvent('x', { cell: 'Z9' }))).toEqual([422, 'cell-not-on-card']);
    expect(await refusal(sampleEvent('x', { cardCode: 'NONE' }))).toEqual([404, 'card-not-found']);
    expect(await refusal({ ...sampleEvent('x'), grade: 'fell' })).toEqual([
      400,
      'file-value-not-allowed',
    ]);
    expect((await whole()).events).toEqual([]);
  });
});
