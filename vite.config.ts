import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';

/** Below this a packet holds it as it is. */
const worthItBytes = 1024;
const compressible = /\.(js|css|html|svg|json)$/;

/**
 * Lists every part of the page in `parts.json`, so that the page can fetch them before they are needed; and writes a `.br`
 * and a `.gz` beside whatever shrinks, so that the server need not compress anything while it serves.
 */
const readyToServe = (): Plugin => {
  let folder = '';
  return {
    name: 'ready-to-serve',
    apply: 'build',
    configResolved({ build, root }) {
      folder = resolve(root, build.outDir);
    },
    closeBundle() {
      const parts = readdirSync(join(folder, 'assets')).map((name) => `/assets/${name}`);
      writeFileSync(join(folder, 'parts.json'), JSON.stringify(parts));
      for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
        const path = join(folder, name);
        if (!compressible.test(name) || statSync(path).size < worthItBytes) continue;
        const bytes = readFileSync(path);
        const params = { [constants.BROTLI_PARAM_QUALITY]: 10 };
        writeFileSync(`${path}.br`, brotliCompressSync(bytes, { params }));
        writeFileSync(`${path}.gz`, gzipSync(bytes, { level: 9 }));
      }
    },
  };
};

const packageOf = (id: string): string | undefined =>
  /^.*\/node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(id.replaceAll('\\', '/'))?.[0];

/** Writes `licences.txt` beside the page: every library and typeface in it or in its threads, with its licence in full. */
const licences = (bundled: Set<string>): Plugin => ({
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

const bundled = new Set<string>();

export default defineConfig({
  root: 'src/web',
  cacheDir: '../../node_modules/.vite',
  build: {
    outDir: '../../build/web',
    emptyOutDir: true,
    target: 'es2023',
    // Every browser of the target can do it by itself.
    modulePreload: { polyfill: false },
    rolldownOptions: {
      // Whoever comes through the door of the words takes what is asked for, and leaves the rest to other parts.
      treeshake: { moduleSideEffects: [{ test: /\/src\/words\//, sideEffects: false }] },
      // The first view comes in one piece: on a slow line every further request costs more than its bytes.
      output: { codeSplitting: { groups: [{ name: 'first', tags: ['$initial'] }] } },
    },
  },
  worker: { format: 'es', plugins: () => [licences(bundled)] },
  plugins: [react(), licences(bundled), readyToServe()],
  server: { proxy: { '/api': 'http://127.0.0.1:4870' } },
});
