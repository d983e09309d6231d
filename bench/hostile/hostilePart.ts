import { existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Figure, NightPart } from '../night/nightPart.ts';
import { runCommand } from '../server/program.ts';
import { hostileFiles, type HostileFile } from './hostileFiles.ts';

/** Files made to tie up whoever reads them, at every command that takes one. */
export const hostilePart: NightPart = {
  name: 'hostile',
  about:
    'files of up to 20 MB made to tie up whoever reads them, checked, timed and proved: an answer or a refusal in words, within 20 s and 500 MB',
  run: () => bringHostile(hostileFiles),
};

const mostS = 20;
const mostMb = 500;
const mostFileMb = 20;

/** Where nothing stops it, a command is stopped after so long by the clock: it has failed by then. */
const killAfterMs = 300_000;

/** Every file at every command, and what each came to. */
export async function* bringHostile(files: readonly HostileFile[]): AsyncGenerator<Figure> {
  const folder = mkdtempSync(join(tmpdir(), 'throughcut-hostile-'));
  try {
    const study = join(folder, 'study.json');
    writeFileSync(study, JSON.stringify(plain));
    const came: Came[] = [];
    let largestMb = 0;
    for (const { what, kind, text } of files) {
      const file = join(folder, `hostile.${kind}`);
      writeFileSync(file, text());
      largestMb = Math.max(largestMb, statSync(file).size / 1e6);
      const doors: readonly (readonly string[])[] = [
        ['check', file],
        ['time', file],
        ['proof', file, '--study', study, '--setting', '12 mm/s 34%'],
      ];
      for (const words of doors)
        came.push({ what: `${words[0] ?? ''}: ${what}`, ...(await bring(words, folder)) });
    }
    const told = (over: (one: Came) => boolean): readonly string[] =>
      came
        .filter(over)
        .map(({ what, s, mb, said }) => `${what}: ${s.toFixed(1)} s, ${mb.toFixed(0)} MB, ${said}`);
    yield { what: 'hostile files', value: files.length };
    yield { what: 'largest of them', value: largestMb, unit: 'MB', atMost: mostFileMb };
    yield { what: 'files brought to a command', value: came.length, atLeast: 3 * files.length };
    const wordless = told(({ isInWords }) => !isInWords);
    yield {
      what: 'that got neither answer nor words',
      value: wordless.length,
      atMost: 0,
      cases: wordless,
    };
    yield {
      what: 'longest, of the processor',
      value: Math.max(...came.map(({ s }) => s)),
      unit: 's',
      atMost: mostS,
      cases: told(({ s }) => !(s <= mostS)),
    };
    yield {
      what: 'most memory',
      value: Math.max(...came.map(({ mb }) => mb)),
      unit: 'MB',
      atMost: mostMb,
      cases: told(({ mb }) => !(mb <= mostMb)),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

interface Came {
  readonly what: string;
  /** Of the processor: what else the computer does meanwhile counts for nothing. */
  readonly s: number;
  readonly mb: number;
  readonly isInWords: boolean;
  readonly said: string;
}

/** Has the program itself note, when it ends, how much memory it had at most and how long it computed. */
const notesUse = (at: string): NodeJS.ProcessEnv => ({
  NODE_OPTIONS: `--import=data:text/javascript,${encodeURIComponent(
    `import { writeFileSync } from 'node:fs';
     import { isMainThread } from 'node:worker_threads';
     if (isMainThread) process.on('exit', () => {
       const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();
       writeFileSync(${JSON.stringify(at)}, JSON.stringify([(userCPUTime + systemCPUTime) / 1e6, maxRSS / 1000]));
     });`,
  )}`,
});

const bring = async (words: readonly string[], folder: string): Promise<Omit<Came, 'what'>> => {
  const noted = join(folder, 'use');
  rmSync(noted, { force: true });
  const { code, out, err } = await runCommand(words, join(folder, 'data'), {
    environment: notesUse(noted),
    killAfterMs,
  });
  const use = existsSync(noted) ? (JSON.parse(readFileSync(noted, 'utf8')) as unknown) : [];
  const [s = NaN, mb = NaN] = Array.isArray(use) ? use.map(Number) : [];
  const answer = answered(out);
  return {
    s,
    mb,
    isInWords: err === '' && answer !== undefined && (code === 2) === (answer.error !== undefined),
    said: answer?.error?.code ?? (answer === undefined ? err.slice(0, 200) : 'an answer'),
  };
};

const answered = (
  out: string,
): { readonly error?: { readonly code: string; readonly message: string } } | undefined => {
  try {
    return JSON.parse(out) as { readonly error?: { code: string; message: string } };
  } catch {
    return undefined;
  }
};

const plain = {
  version: 1,
  // A ramp whose start is known is the hard case: powers in corners are tried one by one.
  machine: { maxPowerPct: 100, speedRangeMmPerS: [1, 100], powerRampStartMmPerS: 5 },
  stock: { material: 'plywood', thicknessMm: 3 },
  cells: [
    { powerPct: 34, speedMmPerS: 12, grade: 'out' },
    { powerPct: 34, speedMmPerS: 15, grade: 'out' },
    { powerPct: 34, speedMmPerS: 20, grade: 'hangs' },
    { powerPct: 34, speedMmPerS: 25, grade: 'stays' },
  ],
};
