import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { filesByRequest } from '../src/served/files/filesByRequest.ts';

const root = join(import.meta.dirname, '..');
const read = (file: string): string => readFileSync(join(root, file), 'utf8');
const readme = read('README.md');

describe('the README', () => {
  it('starts and tests with one line each', () => {
    const blocks = [...readme.matchAll(/```sh\n([^]*?)```/g)].map(([, block]) => block);
    expect(blocks.slice(0, 2)).toEqual(['npm ci && npm start\n', 'npm test\n']);
  });

  it('names every command of the program, and no other', () => {
    const section = readme.split(/^## /m).find((part) => part.startsWith('On the command line'));
    const named = [...(section ?? '').matchAll(/^\| `([a-z]+)[^`]*`/gm)].map(([, word]) => word);
    const program = read('src/cli/program.ts');
    const offered = [...program.matchAll(/program\s*\.command\('([a-z]+)'\)/g)].map(
      ([, word]) => word,
    );
    expect(program).toContain('of filesRequests)');
    const all = [...offered, ...Object.keys(filesByRequest)];
    expect(new Set(named)).toEqual(new Set(all));
  });

  it.each(['README.md', 'docs/principles.md', 'docs/formats/README.md', 'CHANGELOG.md'])(
    'and %s point at files that are there',
    (file) => {
      const links = [...read(file).matchAll(/\]\((?!https?:)([^)#]+)[^)]*\)/g)].map(([, to]) => to);
      const gone = links.filter((to) => !existsSync(join(root, dirname(file), to ?? '')));
      expect(gone).toEqual([]);
    },
  );

  it('shows every picture that is kept for it, none of them heavy', () => {
    const pictures = readdirSync(join(root, 'docs/pictures'));
    expect(pictures.length).toBeGreaterThan(0);
    for (const picture of pictures) {
      expect(readme).toContain(`docs/pictures/${picture}`);
      expect(statSync(join(root, 'docs/pictures', picture)).size, picture).toBeLessThan(150_000);
    }
  });

  it('names the port and the folder that the program uses', () => {
    expect(readme).toContain('127.0.0.1:4870');
    expect(read('src/cli/serve.ts')).toContain('const usualPort = 4870');
  });
});
