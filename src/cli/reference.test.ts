import { mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { describe, expect, it, vi } from 'vitest';

import { runReference } from './reference.ts';

const run = async (
  ...files: readonly (string | object)[]
): Promise<{ readonly status: number; readonly lines: readonly unknown[] }> => {
  const folder = await mkdtemp(join(tmpdir(), 'throughcut-reference-'));
  const paths = files.map((_, i) => join(folder, `${String(i)}.json`));
  for (const [i, content] of files.entries()) {
    await writeFile(
      paths[i] ?? '',
      typeof content === 'string' ? content : JSON.stringify(content),
    );
  }
  const lines: unknown[] = [];
  const status = await runReference(paths, (line) => lines.push(JSON.parse(line)));
  return { status, lines };
};

const median = { name: 'median', input: { function: 'normalCdf', args: [0] } };
const tails = { id: 't19_distributions', cases: [median] };

describe('the reference command', () => {
  it('passes a case that comes out as expected, and says 0', async () => {
    const right = { ...median, expected: { value: 0.5 }, tolerance: { relative: 1e-12 } };
    const { status, lines } = await run({ ...tails, cases: [right] });
    expect(lines).toEqual([
      { id: 't19_distributions', name: 'median', got: { value: 0.5 }, pass: true },
      { summary: { cases: 1, passed: 1 } },
    ]);
    expect(status).toBe(0);
  });

  it('fails a case that does not, says so on the other channel, and says 1', async () => {
    const stderr = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
    const wrong = { ...median, expected: { value: 0.6 }, tolerance: 0.01 };
    const { status, lines } = await run({ ...tails, cases: [wrong] });
    expect(lines[0]).toEqual({ id: tails.id, name: 'median', got: { value: 0.5 }, pass: false });
    expect(stderr.mock.calls.join('')).toContain('median: value is 0.5, expected 0.6');
    expect(status).toBe(1);
    stderr.mockRestore();
  });

  it('answers whole and judges nothing where nothing is expected', async () => {
    const { status, lines } = await run(tails);
    expect(lines[0]).toEqual({ id: tails.id, name: 'median', got: { value: 0.5 }, pass: null });
    expect(lines[1]).toEqual({ summary: { cases: 1, passed: 0 } });
    expect(status).toBe(0);
  });

  it('names what it has no function for: an id, a kind, a function', async () => {
    const { status, lines } = await run(
      { id: 'x99_else', cases: [median] },
      { id: 't07_binomial', cases: [{ name: 'new', input: { kind: 'beyond' } }] },
      { ...tails, cases: [{ name: 'zeta', input: { function: 'zeta', args: [2] } }] },
    );
    expect(lines).toEqual([
      { id: 'x99_else', name: 'median', unknown: true },
      { id: 't07_binomial', name: 'new', unknown: true },
      { id: 't19_distributions', name: 'zeta', unknown: true },
      { summary: { cases: 3, passed: 0 } },
    ]);
    expect(status).toBe(0);
  });

  it.each([
    ['no JSON', 'reference-file-not-json'],
    [{ cases: [] }, 'reference-file-of-other-form'],
  ])('refuses a bad file with a remedy and says 2', async (file, code) => {
    const { status, lines } = await run(tails, file);
    expect(lines).toEqual([
      {
        error: {
          code,
          message: expect.any(String) as unknown,
          remedy: expect.any(String) as unknown,
        },
      },
    ]);
    expect(status).toBe(2);
  });

  it('refuses no file and a missing file', async () => {
    const lines: string[] = [];
    expect(await runReference([], (line) => lines.push(line))).toBe(2);
    expect(await runReference(['/nowhere/at/all.json'], (line) => lines.push(line))).toBe(2);
    expect(lines.map((line) => JSON.parse(line) as unknown)).toMatchObject([
      { error: { code: 'reference-no-file' } },
      { error: { code: 'reference-file-not-found' } },
    ]);
  });

  it('names a case whose input is not of its kind’s form, answers the others, and says 2', async () => {
    const odd = { name: 'odd', input: { function: 'normalCdf', args: ['x'] } };
    const { status, lines } = await run({ ...tails, cases: [odd, median] });
    expect(lines[0]).toMatchObject({ name: 'odd', got: null, pass: false });
    expect(lines[1]).toMatchObject({ name: 'median', got: { value: 0.5 } });
    expect(status).toBe(2);
  });
});
