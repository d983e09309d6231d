import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import { parseCardFile } from '../formats/cardFile.ts';
import { cardFileKinds } from '../formats/machineFiles.ts';
import { api } from '../wire/api.ts';
import { runCard } from './card.ts';
import { printer } from './printer.ts';

const machine = {
  maxPowerPct: 80,
  speedRangeMmPerS: [1, 100],
  ratedCurrentMa: 18,
  tubePoints: [
    { powerPct: 10, currentMa: 4 },
    { powerPct: 40, currentMa: 14 },
    { powerPct: 80, currentMa: 26 },
  ],
} as const;
const request = {
  version: 1,
  study: {
    version: 1,
    machine,
    stock: { material: 'birch plywood', thicknessMm: 3 },
  },
  vary: 'speed',
  powerPct: 34,
  settingsAtMost: 5,
  cellsEach: 2,
  sheetMm: [150, 120],
  seed: 3,
};

let folder: string;
let server: TestServer;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-one-file-'));
  server = await testServer({ printer });
  // A page says when it was made.
  vi.useFakeTimers({ toFake: ['Date'], now: Date.parse('2031-04-05T06:07:08.000Z') });
  vi.spyOn(process.stdout, 'write').mockImplementation(() => true);
});
afterEach(async () => {
  vi.useRealTimers();
  vi.restoreAllMocks();
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('one card', () => {
  it.each([
    ['as it is usual', {}],
    ['with a shape that flatters', { shape: 'circle' }],
    ['mixed in cutting', { order: 'free' }],
    ['that drives the tube', { powerPct: 60, overdrive: true }],
  ])('is the same bytes from the command and from the server: %s', async (_, change) => {
    const file = join(folder, 'request.json');
    writeFileSync(file, JSON.stringify({ ...request, ...change }));
    expect(await runCard({ request: file, out: folder })).toBe(0);
    const card = parseCardFile(readFileSync(join(folder, 'card.json'), 'utf8'));
    if (!card.ok) throw new Error(card.problem.code);
    const stock = { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] };
    await server.ask(api.startStudy, { body: { id: 's1', stock } });
    await server.ask(api.changeStudy, { params: { id: 's1' }, body: { machine } });
    await server.ask(api.addCard, { params: { id: 's1' }, body: { card: card.value } });
    for (const kind of cardFileKinds) {
      const params = { id: 's1', code: card.value.code, kind };
      const sent = await server.send(api.cardFile, { params });
      expect(sent.statusCode, kind).toBe(200);
      const written = readFileSync(join(folder, `card.${kind}`));
      expect(Buffer.compare(sent.rawPayload, written), kind).toBe(0);
    }
  });
});
