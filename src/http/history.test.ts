import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readCardOf } from '../../test/samples/earlier.ts';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import {
  sampleMachine,
  sampleStudy,
  sampleTally,
  sampleTime,
  savedStudy,
} from '../../test/samples/studies.ts';
import { historyWishOf } from '../core/study/historyWish.ts';
import type { Study } from '../core/study/study.ts';
import { materialRemarks } from '../core/stock/acceptMaterial.ts';
import { toCutStudy } from '../core/study/toCutStudy.ts';
import { fitAnswerFile, nextCardFile } from '../formats/answerFile.ts';
import { modelCalls } from '../web/worker/modelCalls.ts';
import { api } from '../wire/api.ts';
import { standingOfSheet } from '../core/standing/standingOfSheet.ts';
import { standingInWords } from '../words/standingInWords.ts';
import { problemInWords } from '../words/words.ts';

let server: TestServer;
beforeEach(async () => {
  server = await testServer();
});
afterEach(async () => {
  expect(server.reported).toEqual([]);
  await server.close();
});

const stock = { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [3.1, 3.2] };
/** A study with one card, read, as an export brings it. */
const readStudy = (id: string, code: string, seed: number, over: Partial<Study> = {}): Study => {
  const { card, events } = readCardOf(code, seed, { batch: 'spring' });
  return sampleStudy(id, { stock, cards: [card], events, ...over });
};
const present = readStudy('now', 'NOW1', 5, { aim: 'gentlest' });
const bring = (...studies: readonly Study[]) =>
  server.ask(api.importAll, {
    body: {
      kind: 'throughcut-export',
      version: 3,
      exportedAt: sampleTime,
      machines: [sampleMachine()],
      studies: studies.map(savedStudy),
      book: [],
      tallies: [],
    },
  });
const workshop = () =>
  bring(
    present,
    readStudy('a', 'AAA1', 1, { tallies: [sampleTally('t1')] }),
    readStudy('b', 'BBB1', 2, { stock: { ...stock, material: '3 mm birch ply' } }),
    readStudy('c', 'CCC1', 3, { stock: { ...stock, material: 'MDF' } }),
  );

/** What a page asks, made of the study as it stands there. */
const asked = (study: Study) => {
  const { isExample, ...wish } = historyWishOf(study);
  return { query: { ...wish, of: isExample ? 'example' : 'workshop' } };
};

describe('what earlier sheets taught', () => {
  it('comes with the material’s name, stored or not', async () => {
    await workshop();
    const { sheets } = await server.ask(api.gatherHistory, asked(present));
    expect(sheets.map(({ of, batch }) => [of, batch]).sort()).toEqual([
      ['cards', 'a/spring'],
      ['cards', 'b/spring'],
      ['order', 'a/'],
    ]);
    const draft = { ...present, id: 'not-stored-yet' };
    const forDraft = await server.ask(api.gatherHistory, asked(draft));
    expect(forDraft.sheets.map(({ batch }) => batch)).toContain('now/spring');
  });

  it.each([
    [{ material: '' }, 'file-text-empty'],
    [{ thicknessMm: 'thin' }, 'file-value-wrong-type'],
    [{ of: 'everything' }, 'file-value-not-allowed'],
    [{ except: 'no such id!' }, 'file-value-refused'],
  ])('is refused for a misshapen wish %#', async (over, code) => {
    const query = { ...asked(present).query, ...over };
    expect(await server.refusal(api.gatherHistory, { query })).toEqual([400, code]);
  });

  it('is described for programs', async () => {
    const { body } = await server.app.inject({
      url: '/api/openapi.json',
      headers: { host: '127.0.0.1' },
    });
    expect(JSON.parse(body)).toMatchObject({
      paths: { '/api/history': { get: { operationId: 'gatherHistory' } } },
    });
  });
});

describe('the page and the server', () => {
  beforeEach(workshop);
  const params = { id: 'now' };
  const earlierOnPage = async () => (await server.ask(api.gatherHistory, asked(present))).sheets;

  it('give the same answer, with the study’s aim and with what earlier sheets taught', async () => {
    const earlier = await earlierOnPage();
    const study = toCutStudy(present);
    const { leansOn, ...answer } = modelCalls.fit({ study, aim: present.aim, earlier });
    const onServer = await server.ask(api.answerStudy, { params });
    expect(leansOn).toEqual({ cells: 24, sheets: 2, parts: 200, orders: 1 });
    const warnings = [...materialRemarks(present.stock), ...answer.warnings];
    const standing = standingInWords(standingOfSheet(present, answer, undefined));
    expect(onServer).toEqual({
      ...fitAnswerFile({ ...answer, warnings }, problemInWords, standing),
      leansOn,
    });
    const alone = await server.ask(api.answerStudy, {
      params,
      query: { earlierSheets: 'without' },
    });
    expect(alone.leansOn.cells).toBe(0);
    expect(alone.posterior.sigma.sd).toBeGreaterThan(1.2 * onServer.posterior.sigma.sd);
  });

  it('propose the same next card', async () => {
    const wish = { cellsWanted: 8, settingsAtMost: 4 };
    const earlier = await earlierOnPage();
    const study = toCutStudy(present);
    const onPage = modelCalls.nextCard({ study, earlier, ...wish });
    const onServer = await server.ask(api.proposeNextCard, { params, query: wish });
    const warnings = materialRemarks(study.stock);
    expect(onServer).toEqual(nextCardFile({ ...onPage, warnings }, problemInWords));
  });

  it('keep in the book what was shown, with earlier sheets or without', async () => {
    for (const earlierSheets of ['with', 'without'] as const) {
      const query = { earlierSheets };
      const { recommended } = await server.ask(api.answerStudy, { params, query });
      if (recommended === null) throw new Error('no setting');
      const { powerPct, speedMmPerS, passes } = recommended;
      await server.ask(api.changeStudy, { params, body: { ask: { powerPct } } });
      const shown = await server.ask(api.answerStudy, { params, query });
      const setting = { powerPct, speedMmPerS, passes };
      const body = { studyId: 'now', setting, earlierSheets };
      const { entry } = await server.ask(api.keepSetting, { body });
      expect(shown.recommended?.speedMmPerS).toBe(speedMmPerS);
      expect(entry.surePct).toBeCloseTo(shown.recommended?.sureAtSpeedPct ?? NaN, 9);
      await server.ask(api.changeStudy, { params, body: { ask: {} } });
    }
  });

  it('design a new sheet’s first card about where the earlier ones came out', async () => {
    const bare = sampleStudy('fresh', { stock: { ...stock, material: 'birch plywood' } });
    await bring(bare);
    const elsewhere = sampleStudy('else', { stock: { ...stock, material: 'bamboo' } });
    await bring(elsewhere);
    const request = { vary: 'speed', powerPct: 30, settingsAtMost: 6 } as const;
    const spreadOf = async (id: string): Promise<number> => {
      const { card } = await server.ask(api.addCard, { params: { id }, body: { request } });
      const speeds = card.rungs.map(({ setting }) => setting.speedMmPerS);
      return Math.max(...speeds) / Math.min(...speeds);
    };
    expect(await spreadOf('fresh')).toBeLessThan(0.8 * (await spreadOf('else')));
  });
});
