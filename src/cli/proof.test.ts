import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, describe, expect, it } from 'vitest';

const program = join(import.meta.dirname, '../../build/src/cli/main.js');
const folder = mkdtempSync(join(tmpdir(), 'throughcut-proof-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Printed {
  readonly setting: { readonly speedMmPerS: number; readonly powerPct: number };
  readonly drawing: { readonly parts: number; readonly cutMm: number };
  readonly motion: string;
  readonly seconds: number;
  readonly places: { readonly slowed: number };
  readonly promise: { readonly sentences: readonly string[] } | null;
  readonly groups: readonly { readonly name: string }[];
  readonly reason?: { readonly code: string };
  readonly error?: { readonly code: string };
}

const run = async (args: readonly string[]): Promise<{ code: number; printed: Printed }> => {
  const { stdout, code } = await promisify(execFile)(process.execPath, [program, 'proof', ...args])
    .then((done) => ({ stdout: done.stdout, code: 0 }))
    .catch((error: unknown) => error as { stdout: string; code: number });
  return { code, printed: JSON.parse(stdout) as Printed };
};

const write = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

const drawing = write(
  'frame.svg',
  `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" viewBox="0 0 200 100" fill="none">
    <rect x="20" y="20" width="20" height="20" stroke="#f00"/>
    <rect x="10" y="10" width="40" height="40" stroke="#f00"/>
    <path d="M60 10 L90 10 L75 36 Z" stroke="#f00"/>
    <path d="M100 50 L190 50" stroke="#00f"/>
  </svg>`,
);
const cell = (speedMmPerS: number, grade: string) => ({ powerPct: 30, speedMmPerS, grade });
const study = write(
  'study.json',
  JSON.stringify({
    version: 1,
    stock: { material: 'birch plywood', thicknessMm: 3 },
    cells: [
      ...[10, 12, 14, 15, 16].flatMap((v) => [cell(v, 'out'), cell(v, 'out')]),
      ...[19, 20, 22].flatMap((v) => [cell(v, 'hangs'), cell(v, 'stays')]),
    ],
    ask: { powerPct: 30 },
  }),
);

describe('throughcut proof', () => {
  it('carries one step surer than recommended to a drawing, in figures and sentences', async () => {
    const { code, printed } = await run([drawing, '--study', study]);
    expect(code).toBe(0);
    expect(printed.drawing.parts).toBe(2);
    // Squares of 20 and 40 mm, a triangle of 30, 29.9… and a line of 90.
    expect(printed.drawing.cutMm).toBeCloseTo(80 + 160 + 30 + 2 * Math.hypot(15, 26) + 90, 3);
    expect(printed.setting.powerPct).toBe(30);
    expect(printed.setting.speedMmPerS).toBeLessThan(16);
    expect(printed.motion).toBe('assumed');
    expect(printed.seconds).toBeGreaterThan(printed.drawing.cutMm / printed.setting.speedMmPerS);
    expect(printed.places.slowed).toBe(4 + 4 + 3 + 2);
    expect(printed.promise?.sentences[0]).toMatch(
      /^Of 2 parts none should need a knife because of the setting /,
    );
  });

  it.each(['corner', 'min'])(
    'takes a setting in words, with “%s” for corner power, and leaves out what is not cut',
    async (corner) => {
      const words = ['--setting', `12.5 mm/s 31% ${corner} 20% x2`, '--leave-out', '#0000ff'];
      const { printed } = await run([drawing, '--study', study, ...words]);
      const setting = { speedMmPerS: 12.5, powerPct: 31, minPowerPct: 20, passes: 2 };
      expect(printed.setting).toEqual(setting);
      expect(printed.drawing.cutMm).toBeLessThan(400);
    },
  );

  it('refuses a setting that it cannot read, and a study that has none, by name', async () => {
    const odd = await run([drawing, '--study', study, '--setting', 'fast']);
    expect([odd.code, odd.printed.error?.code]).toEqual([2, 'command-misused']);
    const blank = write(
      'blank.json',
      JSON.stringify({ version: 1, stock: { material: 'plywood', thicknessMm: 3 } }),
    );
    const none = await run([drawing, '--study', blank]);
    expect([none.code, none.printed.error?.code]).toEqual([2, 'proof-no-setting']);
    const given = await run([drawing, '--study', blank, '--setting', '14 mm/s 30%']);
    expect([given.code, given.printed.promise]).toEqual([0, null]);
    expect(given.printed.reason?.code).toBe('nothing-read-yet');
  });
});
