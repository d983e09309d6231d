import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { AskingPorts } from '../app/ports/ports.ts';
import { parseCutStudy } from '../formats/studyFile.ts';
import { withStoreToRead } from './withStore.ts';

const before = process.env['THROUGHCUT_DATA'];
let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-with-store-'));
  process.env['THROUGHCUT_DATA'] = folder;
});
afterEach(() => {
  if (before === undefined) delete process.env['THROUGHCUT_DATA'];
  else process.env['THROUGHCUT_DATA'] = before;
  rmSync(folder, { recursive: true, force: true });
});

const answered = async ({ model }: AskingPorts): Promise<string> => {
  const cells = [10, 14, 20, 28].map((speedMmPerS) => ({
    powerPct: 40,
    speedMmPerS,
    grade: speedMmPerS < 18 ? 'out' : 'stays',
  }));
  const study = parseCutStudy({
    version: 1,
    machine: { maxPowerPct: 80, speedRangeMmPerS: [1, 200] },
    stock: { material: 'plywood', thicknessMm: 3 },
    cells,
  });
  if (!study.ok) return study.problem.code;
  const answer = await model.ask('answerCutStudy', study.value);
  return answer.ok ? 'answered' : answer.problem.code;
};

describe('a command’s work with the store', () => {
  it('has its sums made, whatever they take, where nothing bounds them', async () => {
    expect(await withStoreToRead(answered)).toBe('answered');
  });

  it('is refused what it asks for when the time that all may take has gone, and goes on', async () => {
    // What is under way by then may still end; no thread starts in a thousandth of a second.
    const [, second, third] = await withStoreToRead(
      async (ports) => [await answered(ports), await answered(ports), await answered(ports)],
      1,
    );
    expect([second, third]).toEqual(['sum-not-wanted', 'sum-not-wanted']);
  });

  it('hears that the time has gone', async () => {
    const isOverAfter = (patienceMs?: number): Promise<boolean> =>
      withStoreToRead(async (ports, isOver) => {
        await answered(ports);
        return isOver();
      }, patienceMs);
    expect(await isOverAfter(1)).toBe(true);
    expect(await isOverAfter()).toBe(false);
  });
});
