import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readCardOf } from '../../test/samples/earlier.ts';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import { sampleStudy, sampleTime, selfDescribedStudy } from '../../test/samples/studies.ts';
import { api } from '../wire/api.ts';
import { apiOfFiles } from '../wire/apiOfFiles.ts';

let server: TestServer;
beforeEach(async () => {
  server = await testServer();
});
afterEach(() => server.close());

describe('the page of reasons', () => {
  it('comes as a PDF about the speed that the study is answered with', async () => {
    const { card, events } = readCardOf('NOW1', 5);
    const study = sampleStudy('now', { cards: [card], events });
    await server.ask(api.importAll, {
      body: {
        kind: 'throughcut-export',
        version: 1,
        exportedAt: sampleTime,
        studies: [selfDescribedStudy(study)],
        book: [],
        tallies: [],
      },
    });
    const params = { id: 'now' };
    const { recommended } = await server.ask(api.answerStudy, { params });
    const reply = await server.send(apiOfFiles.reasoningFile, { params });
    expect(reply.statusCode).toBe(200);
    expect(reply.headers['content-type']).toContain('application/pdf');
    expect(reply.body).toBe(`%PDF of ${String(recommended?.speedMmPerS)}`);
  });

  it('is refused for a study that is not there', async () => {
    expect(await server.refusal(apiOfFiles.reasoningFile, { params: { id: 'nobody' } })).toEqual([
      404,
      'study-not-found',
    ]);
  });
});
