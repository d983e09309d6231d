import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { launchBrowser } from '../launchBrowser.ts';
import { serve } from '../server/program.ts';
import { tapThrough, type Tapped } from './tapThrough.ts';

const median = (of: (tap: Tapped) => number, taps: readonly Tapped[]): number =>
  taps.map(of).sort((a, b) => a - b)[taps.length >> 1] ?? Number.NaN;

/** Lines of a report on how long a tap takes on the page of a phone: to its paint and to the answer. */
export async function* tapsReport(): AsyncGenerator<string> {
  const data = mkdtempSync(join(tmpdir(), 'bench-'));
  const server = await serve(data);
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage({ viewport: { width: 390, height: 844 } });
    const taps = await tapThrough(page, server.base);
    for (const [what, of, targetMs] of [
      ['a tap on a phone-sized page, to its paint', (tap: Tapped) => tap.paintMs, 50],
      ['the same, to the answer', (tap: Tapped) => tap.answerMs, 100],
    ] as const) {
      const slowest = Math.max(...taps.map(of));
      yield (
        `${what.padEnd(50)} ${median(of, taps).toFixed(1).padStart(8)} ms   ` +
        `(target ${String(targetMs)} ms; slowest of ${String(taps.length)}: ${slowest.toFixed(0)})`
      );
    }
  } finally {
    await browser.close();
    await server.kill();
    rmSync(data, { recursive: true, force: true });
  }
}
