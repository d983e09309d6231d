import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runServer, type RunningServer } from './server.ts';

let server: RunningServer;
let files: string;
beforeAll(async () => {
  server = await runServer();
  const { id } = (
    (await send('/api/studies', {
      stock: { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] },
    })) as { study: { id: string } }
  ).study;
  const { card } = (await send(`/api/studies/${id}/cards`, { request: { powerPct: 34 } })) as {
    card: { code: string };
  };
  files = `${server.base}/api/studies/${id}/cards/${card.code}`;
});
afterAll(() => server.remove());

const send = async (path: string, body: unknown): Promise<unknown> => {
  const reply = await fetch(`${server.base}${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  return reply.json();
};

describe('the files of a card that the server designed', () => {
  it.each([
    ['svg', 'image/svg+xml', /^<\?xml[^]*<\/svg>\s*$/],
    ['dxf', 'image/vnd.dxf', /^\s*0\s+SECTION[^]*EOF\s*$/],
    ['gcode', 'text/x-gcode', /G21[^]*M2/],
    ['json', 'application/json', /"cuttingOrder"/],
    ['pdf', 'application/pdf', /^%PDF-/],
  ])('%s comes as what it is', async (kind, type, looks) => {
    const reply = await fetch(`${files}/card.${kind}`);
    expect(reply.status).toBe(200);
    expect(reply.headers.get('content-type')).toMatch(type);
    expect(await reply.text()).toMatch(looks);
  });

  it('is all there is', async () => {
    expect((await fetch(`${files}/card.exe`)).status).toBe(400);
  });
});
