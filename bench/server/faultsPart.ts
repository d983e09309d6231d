import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Figure, NightPart } from '../night/nightPart.ts';
import { faults } from './faults/faults.ts';

/** What can go wrong around the program, brought about one after the other. */
export const faultsPart: NightPart = {
  name: 'faults',
  about:
    'disks that are full, places and names that cannot be, clocks set back, files that are too big: each has its code, a sentence and a remedy, and nothing is lost',
  run: bringAbout,
};

/** Every fault, and whether it was answered as is promised. */
export async function* bringAbout(): AsyncGenerator<Figure> {
  const wrong: string[] = [];
  let [tried, notHere] = [0, 0];
  for (const { what, wrongIn } of faults) {
    const folder = mkdtempSync(join(tmpdir(), 'throughcut-fault-'));
    try {
      const found = await wrongIn(folder);
      if (found === 'not here') notHere += 1;
      else {
        tried += 1;
        wrong.push(...found.map((one) => `${what}: ${one}`));
      }
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }
  yield { what: 'faults brought about', value: tried, atLeast: faults.length - notHere };
  yield { what: 'faults that this system cannot bring about', value: notHere };
  yield { what: 'answered otherwise than promised', value: wrong.length, atMost: 0, cases: wrong };
}
