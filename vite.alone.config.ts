import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { viteSingleFile } from 'vite-plugin-singlefile';

/** The same page, begun in another way: it reaches a workshop within itself, and its threads are in the same file. */
const aloneInPlaceOfServed = (): Plugin => ({
  name: 'alone-in-place-of-served',
  enforce: 'pre',
  resolveId(source, importer) {
    if (source === '/main.tsx') return resolve('src/alone/page/main.tsx');
    const asked = importer === undefined ? source : resolve(importer, '..', source);
    return asked === resolve('src/web/state/startWorker.ts')
      ? resolve('src/alone/page/startWorker.ts')
      : undefined;
  },
  transformIndexHtml: {
    order: 'pre',
    handler: (html) =>
      html.replace(
        '/mark.svg',
        `data:image/svg+xml,${encodeURIComponent(readFileSync('src/web/public/mark.svg', 'utf8'))}`,
      ),
  },
});

const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { readonly version: string };

export default defineConfig({
  root: 'src/web',
  publicDir: false,
  cacheDir: '../../node_modules/.vite-alone',
  define: { __VERSION__: JSON.stringify(version) },
  build: {
    outDir: '../../build/alone',
    emptyOutDir: true,
    target: 'es2023',
    modulePreload: { polyfill: false },
    assetsInlineLimit: Number.MAX_SAFE_INTEGER,
    chunkSizeWarningLimit: 20_000,
  },
  worker: { format: 'iife' },
  plugins: [react(), aloneInPlaceOfServed(), viteSingleFile({ removeViteModuleLoader: true })],
});
