import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import { sampleCard, sampleEvent, sampleMachine, sampleStudy } from '../../test/samples/studies.ts';
import { done } from '../core/problem.ts';
import { compareApi as api } from '../wire/compareApi.ts';

let server: TestServer;
beforeEach(async () => {
  server = await testServer();
  const codes = ['OLD1', 'NEW1'];
  const study = sampleStudy('s1', {
    cards: codes.map((code) => sampleCard(code, { sheet: 'A-1', batch: 'May' })),
    events: codes.flatMap((code) =>
      ['A1', 'A2', 'B1', 'B2'].map((cell) =>
        sampleEvent(`${code}${cell}`, {
          cardCode: code,
          cell,
          grade: code === 'NEW1' || cell.startsWith('A') ? 'out' : 'stays',
        }),
      ),
    ),
  });
  await server.ports.store.change(async (session) => {
    await session.insertMachine(sampleMachine());
    await session.insertStudy(study, study.createdAt);
    return done(true);
  });
});
afterEach(async () => {
  expect(server.reported).toEqual([]);
  await server.close();
});

const body = {
  differs: 'lens',
  one: [{ studyId: 's1', card: 'OLD1' }],
  other: [{ studyId: 's1', card: 'NEW1' }],
};

describe('two conditions over the server', () => {
  it('are compared from stored cards, in words', async () => {
    const { said, gainPct, sheets, exact, settling } = await server.ask(api.compareConditions, {
      body,
    });
    expect(said.sentence).toMatch(/^With the other lens you may cut \d+\u202f% faster/);
    expect(gainPct.middle).toBeGreaterThan(0);
    expect(sheets).toBe('common');
    expect(exact).toMatchObject({ kind: 'paired', pairs: 4, onlyOtherOut: 2, p: 0.5 });
    expect(settling.settings.length).toBeGreaterThan(2);
  });

  it('are refused where a study or a side is missing', async () => {
    const other = [{ studyId: 'nobody', card: 'NEW1' }];
    expect(await server.refusal(api.compareConditions, { body: { ...body, other } })).toEqual([
      404,
      'study-not-found',
    ]);
    const unread = [{ studyId: 's1', card: 'NONE' }];
    expect(
      await server.refusal(api.compareConditions, { body: { ...body, other: unread } }),
    ).toEqual([422, 'compare-side-unread']);
  });

  it('are compared from a file, by the names that it gives', async () => {
    const page = readFileSync(join(import.meta.dirname, '../../docs/formats/compare.md'), 'utf8');
    const file: unknown = JSON.parse(/```json\n([^`]+)```/.exec(page)?.[1] ?? '');
    const { said } = await server.ask(api.calcCompare, { body: file });
    expect(said.sentence).toContain('With the new lens');
    expect(await server.refusal(api.calcCompare, { body: { version: 2 } })).toEqual([
      400,
      'file-version-unknown',
    ]);
  });
});
