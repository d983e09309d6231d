import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { licences } from './vite.licences.ts';

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
