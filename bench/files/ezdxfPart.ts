import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { z } from 'zod';
import type { Point } from '../../src/core/path/point.ts';
import type { Figure, NightPart } from '../night/nightPart.ts';
import { furthestApartMm, independentReaders } from './agreement.ts';
import { inventCards } from './inventCards.ts';
import { writeAll } from './writeAll.ts';

/** Readers in another language, where this computer has them: `pip install ezdxf`. */
export const ezdxfPart: NightPart = {
  name: 'ezdxf',
  about: 'DXF of many cards, read and audited by ezdxf in Python and held against the SVG',
  run: () => examineByEzdxf(60, 1),
};

const agreeMm = 0.02;
const printed = z.object({
  errors: z.number(),
  lines: z.array(z.array(z.tuple([z.number(), z.number()]))),
});

/** Whether python3 finds ezdxf. */
export const hasEzdxf = (): boolean => {
  try {
    execFileSync('python3', ['-c', 'import ezdxf'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
};

/** One figure alone, without a bound, where ezdxf is not installed. */
export function* examineByEzdxf(count: number, seed: number): Generator<Figure> {
  if (!hasEzdxf()) {
    yield { what: 'files read: none, ezdxf is not installed (pip install ezdxf)', value: 0 };
    return;
  }
  const cards = inventCards(count, seed).map((card) => ({ card, written: writeAll(card) }));
  const folder = mkdtempSync(join(tmpdir(), 'throughcut-dxf-'));
  try {
    const names = cards.map(({ written }, i) => {
      const name = join(folder, `${String(i)}.dxf`);
      writeFileSync(name, written.dxf ?? '');
      return name;
    });
    const script = join(import.meta.dirname, '../../../bench/files/readDxf.py');
    const read = execFileSync('python3', [script, ...names], { maxBuffer: 1e9 })
      .toString()
      .trim()
      .split('\n')
      .map((line) => printed.parse(JSON.parse(line)));
    const apart = cards.map(({ written }, i) =>
      furthestApartMm(
        independentReaders.svg(written.svg ?? ''),
        (read[i]?.lines ?? []).map((line) => line.map(([x, y]): Point => [x, y])),
      ),
    );
    yield { what: 'files read', value: read.length, atLeast: count };
    yield {
      what: 'errors that its audit finds',
      value: read.reduce((sum, { errors }) => sum + errors, 0),
      atMost: 0,
    };
    yield {
      what: 'furthest that a corner lies from the SVG',
      value: Math.max(...apart),
      unit: 'mm',
      atMost: agreeMm,
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
