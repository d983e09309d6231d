import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  sampleBedTest,
  sampleEntry,
  sampleFocusTest,
  sampleKerfTest,
  sampleMarkTest,
  sampleMachine,
  sampleMetering,
  savedStudy,
  sampleStudy,
  sampleTime,
} from '../samples/studies.ts';
import { runProgram } from './program.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-cli-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const run = (words: string, input?: string) =>
  runProgram(words.split(' '), {
    environment: { THROUGHCUT_DATA: join(folder, 'data'), INIT_CWD: folder },
    ...(input === undefined ? {} : { input }),
  });
const json = async (words: string, input?: string): Promise<unknown> => {
  const { code, out, err } = await run(words, input);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  return JSON.parse(out) as unknown;
};
const refusal = async (words: string, input?: string): Promise<string> => {
  const { code, out } = await run(words, input);
  expect(code).toBe(2);
  const { error } = JSON.parse(out) as { error: Record<'code' | 'message' | 'remedy', string> };
  expect(error.message).not.toBe('');
  expect(error.remedy).not.toBe('');
  return error.code;
};

const study = {
  version: 1,
  stock: { material: 'plywood', thicknessMm: 3 },
  cells: [12, 14, 16, 18, 20, 22].map((speedMmPerS) => ({
    powerPct: 34,
    speedMmPerS,
    grade: speedMmPerS <= 16 ? 'out' : 'stays',
  })),
  ask: { powerPct: 34 },
};

describe('calc', () => {
  it('plans an order sheet by sheet', async () => {
    const plan = { parts: 300, partsPerSheet: 30, partLengthMm: 180 };
    const first = await json('calc plan', JSON.stringify({ ...study, plan }));
    expect(first).toMatchObject({
      version: 1,
      next: { act: 'sheet' },
      reason: { code: 'plan-first-sheet' },
    });
    const ended = await json(
      'calc plan',
      JSON.stringify({ ...study, plan: { ...plan, done: 300 } }),
    );
    expect(ended).toMatchObject({ next: { act: 'done' } });
    expect(await refusal('calc plan', JSON.stringify(study))).toBe('plan-not-said');
  });

  it('fits a study piped in', async () => {
    expect(await json('calc fit', JSON.stringify(study))).toMatchObject({
      version: 1,
      posterior: { lnV50At: { powerPct: 34 } },
      recommended: { powerPct: 34, passes: 1, outOf100: 97, surePct: 95 },
      convergence: { ok: true },
    });
  });

  it('gives the reason where there is no setting, and exit 0', async () => {
    const { recommended, reason } = (await json(
      'calc fit',
      JSON.stringify({ ...study, cells: [] }),
    )) as { recommended: null; reason: { code: string; message: string } };
    expect(recommended).toBeNull();
    expect(reason.code).toBe('nothing-read-yet');
  });

  it('compares two conditions', async () => {
    const at = (speedMmPerS: number, grade: string) => ({ powerPct: 34, speedMmPerS, grade });
    const two = {
      version: 1,
      differs: 'mirrors',
      stock: study.stock,
      one: { cells: [at(15, 'out'), at(17, 'stays'), at(19, 'stays')] },
      other: { cells: [at(15, 'out'), at(17, 'out'), at(19, 'stays')] },
    };
    const { said } = (await json('calc compare', JSON.stringify(two))) as {
      said: { sentence: string };
    };
    expect(said.sentence).toMatch(/^With the cleaned mirrors/);
  });

  it('proposes the next card within the wishes', async () => {
    const wish = { ...study, cellsWanted: 6, settingsAtMost: 3 };
    const next = (await json('calc nextcard', JSON.stringify(wish))) as {
      cells: unknown[];
      settings: number;
    };
    expect(next.cells.length).toBeLessThanOrEqual(6);
    expect(next.settings).toBeLessThanOrEqual(3);
  });

  it('says the same twice, to the last byte', async () => {
    const first = await run('calc fit', JSON.stringify(study));
    const second = await run('calc fit', JSON.stringify(study));
    expect(second.out).toBe(first.out);
  });

  it.each([
    ['', 'stdin-empty'],
    ['{"version":1', 'file-not-json'],
    ['{"version":3}', 'file-version-unknown'],
    [
      JSON.stringify({ ...study, cells: [{ powerPct: 500, speedMmPerS: 3 }] }),
      'file-value-too-big',
    ],
  ])('refuses %j', async (input, code) => {
    expect(await refusal('calc fit', input)).toBe(code);
  });
});

describe('commands that are not', () => {
  it.each(['nonsense', 'calc', 'calc guess', 'backup', 'import --form x'])(
    'refuse: %s',
    async (words) => {
      expect(await refusal(words)).toBe('command-misused');
    },
  );

  it('help where help is asked for', async () => {
    const { code, out } = await run('--help');
    expect(code).toBe(0);
    for (const command of ['serve', 'calc', 'reference', 'backup', 'restore', 'export', 'import'])
      expect(out).toContain(command);
  });
});

describe('carrying a workshop about', () => {
  const file = {
    kind: 'throughcut-export',
    version: 3,
    exportedAt: sampleTime,
    machines: [sampleMachine()],
    studies: [savedStudy(sampleStudy('s1'))],
    book: [sampleEntry('b1')],
    tallies: [],
    meterings: [sampleMetering('m1')],
    focusTests: [sampleFocusTest('f1')],
    bedTests: [sampleBedTest('c1')],
    kerfTests: [sampleKerfTest('k1')],
    markTests: [sampleMarkTest('e1')],
  };

  it('goes in, shows in the book, and comes out the same', async () => {
    writeFileSync(join(folder, 'in.json'), JSON.stringify(file));
    expect(await json('import --from in.json')).toMatchObject({ added: { studies: 1 } });
    expect(await json('book list birch 3 mm')).toMatchObject({
      entries: [{ entry: { id: 'b1' } }],
    });
    expect(await json('book list acrylic')).toMatchObject({ entries: [] });
    await json('export --to out.json');
    const out = JSON.parse(readFileSync(join(folder, 'out.json'), 'utf8')) as object;
    expect({ ...out, exportedAt: sampleTime }).toEqual(file);
    expect((await run('export --csv')).out).toMatch(/^code,kept_at,[^]*BK42/);
  });

  it('is backed up and put back', async () => {
    writeFileSync(join(folder, 'in.json'), JSON.stringify(file));
    await json('import --from in.json');
    await json('backup --to safe.sqlite');
    writeFileSync(
      join(folder, 'more.json'),
      JSON.stringify({ ...file, studies: [savedStudy(sampleStudy('s2'))] }),
    );
    await json('import --from more.json');
    await json('restore --from safe.sqlite');
    expect(await json('export')).toMatchObject({
      studies: [{ id: 's1' }],
      meterings: [{ id: 'm1' }],
      focusTests: [{ id: 'f1' }],
      bedTests: [{ id: 'c1' }],
    });
  });

  it('refuses files that are not there or not ours', async () => {
    expect(await refusal('import --from gone.json')).toBe('file-not-found');
    expect(await refusal('restore --from gone.sqlite')).toBe('store-not-there');
    expect(await refusal('backup --to safe.sqlite')).toBe('store-not-there');
    writeFileSync(join(folder, 'in.json'), JSON.stringify({ ...file, version: 9 }));
    expect(await refusal('import --from in.json')).toBe('file-version-unknown');
    expect(await json('book list')).toMatchObject({ entries: [] });
  });
});
