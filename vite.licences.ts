import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

const packageOf = (id: string): string | undefined =>
  /^.*\/node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(id.replaceAll('\\', '/'))?.[0];

/** Writes `licences.txt` beside the page: every library and typeface in it or in its threads, with its licence in full. */
export const licences = (bundled: Set<string>): Plugin => ({
  name: 'licences',
  apply: 'build',
  generateBundle() {
    for (const id of this.getModuleIds()) {
      const folder = packageOf(id);
      if (folder !== undefined) bundled.add(folder);
    }
    const namesByText = new Map<string, string[]>();
    for (const folder of [...bundled].sort()) {
      const { name, version, license } = JSON.parse(
        readFileSync(join(folder, 'package.json'), 'utf8'),
      ) as Readonly<Record<string, string>>;
      const file = readdirSync(folder).find((one) => /^(licen[cs]e|copying)/i.test(one));
      const text = file === undefined ? '' : readFileSync(join(folder, file), 'utf8').trim();
      namesByText.set(text, [...(namesByText.get(text) ?? []), `${name} ${version} (${license})`]);
    }
    const texts = [...namesByText].map(([text, names]) => `${names.join('\n')}\n\n${text}\n`);
    const own = readFileSync('NOTICES.md', 'utf8');
    const source = [own, ...texts].join(`\n${'-'.repeat(80)}\n\n`);
    this.emitFile({ type: 'asset', fileName: 'licences.txt', source });
  },
});
