import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import { sampleCard, sampleEvent } from '../../test/samples/studies.ts';
import { api, liveEvent } from '../wire/api.ts';

let server: TestServer;
let address: string;
beforeEach(async () => {
  server = await testServer();
  address = await server.app.listen({ host: '127.0.0.1', port: 0 });
});
afterEach(() => server.close());

const stock = { material: 'plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] };

/** Hears until so many events have come. */
const hear = async (count: number, during: () => Promise<unknown>) => {
  const hangUp = new AbortController();
  const reply = await fetch(`${address}/api/live`, { signal: hangUp.signal });
  expect(reply.headers.get('content-type')).toBe('text/event-stream');
  expect(reply.headers.get('x-content-type-options')).toBe('nosniff');
  const reader = reply.body?.pipeThrough(new TextDecoderStream()).getReader();
  let text = '';
  await during();
  while ((text.match(/^data: /gm) ?? []).length < count) {
    const part = await reader?.read();
    if (part === undefined || part.done) break;
    text += part.value;
  }
  hangUp.abort();
  return [...text.matchAll(/^data: (.*)$/gm)].map(([, data]) =>
    liveEvent.parse(JSON.parse(data ?? '')),
  );
};

describe('the stream of changes', () => {
  it('tells of each study that was changed, with its revision, and of nothing refused', async () => {
    const params = { id: 's1' };
    const heard = await hear(5, async () => {
      await server.ask(api.startStudy, { body: { ...params, stock } });
      await server.ask(api.addCard, { params, body: { card: sampleCard() } });
      const events = [sampleEvent('e1')];
      await server.ask(api.recordReadings, { params, body: { events } });
      await server.ask(api.recordReadings, { params, body: { events } });
      await server.refusal(api.addCard, {
        params,
        body: { card: sampleCard('K7QX', { sizeMm: 9 }) },
      });
      await server.ask(api.removeStudy, { params });
    });
    expect(heard).toEqual([
      // The workshop's first machine.
      {},
      { studyId: 's1', revision: 1 },
      { studyId: 's1', revision: 2 },
      { studyId: 's1', revision: 3 },
      { studyId: 's1' },
    ]);
  });

  it('says to look again when the example goes', async () => {
    await server.ask(api.openExample);
    expect(await hear(1, () => server.ask(api.removeExample))).toEqual([{}]);
  });
});
