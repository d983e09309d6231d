import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { readToolpath } from '../formats/readToolpath.ts';
import { runRamp } from './ramp.ts';

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

/** The example of the page on the format. */
const example: unknown = JSON.parse(
  /```json\n([^`]+)```/.exec(
    readFileSync(join(import.meta.dirname, '../../docs/formats/ramp-request.md'), 'utf8'),
  )?.[1] ?? '',
);

const run = async (over: object = {}): Promise<{ code: number; json: unknown }> => {
  const request = join(folder, 'request.json');
  writeFileSync(request, JSON.stringify({ ...(example as object), ...over }));
  const code = await runRamp({ request, out: join(folder, 'out') });
  return { code, json: JSON.parse(printed.join('')) };
};
const file = (kind: string): string =>
  readFileSync(join(folder, 'out', `focus-ramp.${kind}`), 'utf8');

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
