import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { runExplain } from './explain.ts';

let folder: string;
const printed: string[] = [];
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-explain-'));
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

const grades = ['out', 'out', 'out', 'hangs', 'stays', 'stays'];
const study = {
  version: 1,
  stock: { material: 'plywood', thicknessMm: 3 },
  ask: { powerPct: 30 },
  cells: [11, 13, 15, 17, 19, 21].flatMap((speedMmPerS, i) => [
    { powerPct: 30, speedMmPerS, grade: grades[i] },
    { powerPct: 30, speedMmPerS, grade: grades[i] },
  ]),
};

const run = async (given: object): Promise<{ code: number; json: Record<string, unknown> }> => {
  const file = join(folder, 'study.json');
  writeFileSync(file, JSON.stringify(given));
  const code = await runExplain({ study: file, out: join(folder, 'why', 'page.pdf') });
  return { code, json: JSON.parse(printed.join('')) as Record<string, unknown> };
};

describe('the command that says why', () => {
  it('writes the page and prints figures and sentences', async () => {
    const { code, json } = await run(study);
    expect(code).toBe(0);
    expect(readFileSync(join(folder, 'why', 'page.pdf'), 'latin1').startsWith('%PDF-')).toBe(true);
    expect(json).toMatchObject({ version: 1, speed: { powerPct: 30 } });
    const said = JSON.stringify(json['sentences']);
    expect(said).toMatch(/Most rests on the 2 shapes at \d+.mm\/s/);
    expect(said).not.toMatch(/undefined|NaN|null/);
  });

  it('writes a page where there is no answer, and says why there is none', async () => {
    const { code, json } = await run({ ...study, cells: study.cells.slice(0, 4) });
    expect(code).toBe(0);
    expect(json).toMatchObject({
      speed: null,
      sentences: null,
      answer: { recommended: null, reason: { code: 'all-came-out' } },
    });
  });

  it('refuses a study that cannot be read', async () => {
    const { code, json } = await run({ version: 1 });
    expect(code).toBe(2);
    expect(json).toMatchObject({ error: { code: 'file-value-missing' } });
  });
});
