import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { countsFile } from '../formats/countsFile.ts';
import type { ScoredSheet } from '../core/score/sheetsToScore.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-score-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const sheet = (over: Partial<ScoredSheet>): ScoredSheet => ({
  ...{ material: 'Anna’s birch plywood', thicknessMm: 3.04, machine: 'Old Bess' },
  ...{ promisedOutOf100: 97, foretoldOutOf100: 98.4, parts: 30, out: 30 },
  ...over,
});

const score = () => {
  const run = spawnSync('npm', ['run', '-s', 'throughcut', '--', 'score', folder], {
    encoding: 'utf8',
  });
  return { status: run.status, said: JSON.parse(run.stdout) as Record<string, unknown> };
};

describe('score', () => {
  it('puts the files of several workshops together, each with machines of its own', () => {
    const one = countsFile(Array.from({ length: 12 }, () => sheet({})));
    const other = countsFile(Array.from({ length: 12 }, () => sheet({ out: 24 })));
    writeFileSync(join(folder, 'a.json'), JSON.stringify(one));
    writeFileSync(join(folder, 'b.json'), JSON.stringify(other));
    const { status, said } = score();
    expect(status).toBe(0);
    expect(said).toMatchObject({ version: 1, files: 2, sheets: 24, parts: 720 });
    const verdicts = (said['groups'] as { name: string; promises: { verdict: string }[] }[]).map(
      ({ name, promises }) => [name, promises[0]?.verdict],
    );
    expect(verdicts).toContainEqual(['b: machine 1', 'broken']);
    expect(JSON.stringify(said['says'])).toMatch(/is not kept/);
  });

  it('says that there is nothing to say of an empty folder, and refuses what is no such file', () => {
    expect(score().said).toMatchObject({ sheets: 0, groups: [] });
    writeFileSync(
      join(folder, 'c.json'),
      '{"kind":"throughcut-counts","version":1,"sheets":[{"parts":3}]}',
    );
    expect(score().status).toBe(2);
  });
});

describe('counts without names', () => {
  it('hold the class of the material and a number for the machine, and nothing that names anybody', () => {
    const text = JSON.stringify(countsFile([sheet({})]));
    expect(text).not.toMatch(/Anna|Bess/);
    expect(JSON.parse(text)).toEqual({
      kind: 'throughcut-counts',
      version: 1,
      sheets: [
        {
          ...{ material: 'plywood', thicknessMm: 3, machine: 'machine 1' },
          ...{ promisedOutOf100: 97, foretoldOutOf100: 98.4, parts: 30, out: 30 },
        },
      ],
    });
  });
});
