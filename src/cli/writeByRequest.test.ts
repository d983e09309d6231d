import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, extname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { z } from 'zod';
import { exampleRequest, filesRequests } from '../../test/samples/pagesBeside.ts';
import { readToolpath } from '../formats/readToolpath.ts';
import { filesByRequest, type FilesRequest } from '../served/files/filesByRequest.ts';
import { writeByRequest } from './writeByRequest.ts';

let folder: string;
const printed: string[] = [];
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-ramp-'));
  printed.length = 0;
  vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    printed.push(String(text));
    return true;
  });
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

const runOf = async (name: FilesRequest, over: object = {}) => {
  const request = join(folder, 'request.json');
  writeFileSync(request, JSON.stringify({ ...exampleRequest(name), ...over }));
  const { fromFile } = filesByRequest[name];
  const code = await writeByRequest(fromFile, { request, out: join(folder, 'out') });
  return { code, json: JSON.parse(printed.join('')) as unknown };
};
const run = (over: object = {}) => runOf('ramp', over);
const file = (kind: string): string =>
  readFileSync(join(folder, 'out', `focus-ramp.${kind}`), 'utf8');

describe.each(filesRequests)('%s --request --out', (name) => {
  it('takes the documented example, and writes every kind under one name, each for the machine readable', async () => {
    const { code, json } = await runOf(name);
    expect(code).toBe(0);
    const { files, cautions } = z
      .object({ files: z.array(z.string()), cautions: z.array(z.string()) })
      .parse(json);
    expect(readdirSync(join(folder, 'out')).sort()).toEqual(
      files.map((made) => basename(made)).sort(),
    );
    expect(new Set(files.map((made) => basename(made).split('.')[0])).size).toBe(1);
    expect(files.map((made) => extname(made)).sort()).toEqual(['.dxf', '.gcode', '.pdf', '.svg']);
    for (const made of files.filter((path) => !path.endsWith('.pdf'))) {
      const text = readFileSync(made, 'utf8');
      expect(readToolpath(text).ok, made).toBe(true);
      if (made.endsWith('.svg')) for (const caution of cautions) expect(text).toContain(caution);
    }
  });

  it('writes nothing of a key that it does not know', async () => {
    expect(await runOf(name, { sede: 1 })).toMatchObject({
      code: 2,
      json: { error: { code: 'file-key-unknown' } },
    });
    expect(readdirSync(folder)).toEqual(['request.json']);
  });
});

describe('the command that writes a focus ramp', () => {
  it('takes the documented example, and writes every kind with its cautions', async () => {
    const { code, json } = await run();
    expect(code).toBe(0);
    expect(json).toMatchObject({
      version: 1,
      lines: [{ letter: 'A' }, { letter: 'B' }, { letter: 'C' }],
    });
    expect(file('svg')).toContain('A ramp must clear the head over its whole travel');
    expect(file('pdf').startsWith('%PDF-')).toBe(true);
    for (const kind of ['svg', 'dxf', 'gcode']) {
      const path = readToolpath(file(kind));
      expect(path.ok).toBe(true);
    }
  });

  it('draws every line uphill from the low end, in whatever file', async () => {
    await run();
    for (const kind of ['svg', 'dxf', 'gcode']) {
      const path = readToolpath(file(kind));
      if (!path.ok) throw new Error(path.problem.code);
      const long = path.value.lines.flatMap(({ points }) => {
        const [from, to] = [points[0]?.[0] ?? NaN, points.at(-1)?.[0] ?? NaN];
        return Math.abs(to - from) > 60 ? [{ from, to }] : [];
      });
      expect(long, kind).toHaveLength(3);
      for (const { from, to } of long) expect(to, kind).toBeGreaterThan(from);
    }
  });

  it('refuses a block that would meet the nozzle, and a refused material, and writes nothing', async () => {
    const high = await run({ ramp: { lengthMm: 120, blockMm: 9.1, nozzleGapMm: 12 } });
    expect(high).toMatchObject({ code: 2, json: { error: { code: 'ramp-meets-nozzle' } } });
    printed.length = 0;
    expect(await run({ material: 'vinyl' })).toMatchObject({
      code: 2,
      json: { error: { code: 'material-refused' } },
    });
    printed.length = 0;
    expect(await run({ strip: 1 })).toMatchObject({
      code: 2,
      json: { error: { code: 'file-key-unknown' } },
    });
    expect(() => file('svg')).toThrow();
  });
});
