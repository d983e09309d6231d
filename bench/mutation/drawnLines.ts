import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { SeededRandom } from '../../src/num/seededRandom.ts';

/** Lines of a room's source that may be mutated: code, no import, no comment. */
const linesOf = async (root: string, room: string): Promise<readonly string[]> => {
  const folder = join('src', room);
  const files = (await readdir(join(root, folder), { recursive: true }))
    .filter((path) => path.endsWith('.ts') && !path.endsWith('.test.ts'))
    .sort();
  const lines: string[] = [];
  for (const path of files) {
    const file = join(folder, path);
    const text = await readFile(join(root, file), 'utf8');
    text.split('\n').forEach((line, i) => {
      if (/^\s*([*/}\])]|import\b|export (type|interface)\b|readonly\b|$)/.test(line)) return;
      lines.push(`${file}:${String(i + 1)}:0-${String(i + 1)}:${String(line.length)}`);
    });
  }
  return lines;
};

/** So many lines of a room, drawn, each as the range that holds it. */
export const drawnLines = async (
  root: string,
  room: string,
  { count, random }: { readonly count: number; readonly random: SeededRandom },
): Promise<readonly string[]> => random.shuffle(await linesOf(root, room)).slice(0, count);
