import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { viteSingleFile } from 'vite-plugin-singlefile';
import { licences } from './vite.licences.ts';

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
      html
        .replace(
          '/mark.svg',
          `data:image/svg+xml,${encodeURIComponent(readFileSync('src/web/public/mark.svg', 'utf8'))}`,
        )
        // One file has nothing beside it that a system could ask for.
        .replaceAll(/ *<link rel="(?:manifest|apple-touch-icon)"[^>]*>\n/g, ''),
  },
});

const outDir = 'build/alone';

/**
 * One file, whatever a library would put beside it, under a name that tells what it is. Its content policy lets nothing run but
 * what was built into it, and lets it ask nobody anything: `data:` and `blob:` are its own engine and threads.
 */
const oneFile = (): Plugin => ({
  name: 'one-file',
  closeBundle() {
    const html = readFileSync(`${outDir}/index.html`, 'utf8');
    const scripts = [...html.matchAll(/<script[^>]*>([\s\S]*?)<\/script>/g)].map(
      ([, text = '']) => {
        const hash = createHash('sha256').update(text).digest('base64');
        return `'sha256-${hash}'`;
      },
    );
    const policy = [
      "default-src 'none'",
      `script-src ${scripts.join(' ')} 'wasm-unsafe-eval' blob:`,
      'worker-src blob:',
      "style-src 'unsafe-inline'",
      'img-src data: blob:',
      'font-src data:',
      'connect-src data: blob:',
      "base-uri 'none'",
      "form-action 'none'",
    ].join('; ');
    const said = readFileSync(`${outDir}/licences.txt`, 'utf8').replaceAll('</', '<\\/');
    const page = html
      .replace(
        '<meta charset="utf-8" />',
        (charset) =>
          `${charset}\n    <meta http-equiv="Content-Security-Policy" content="${policy}" />`,
      )
      // What is no script is not run: the licences of all that the file carries, for whoever looks into it.
      .replace(
        '</body>',
        (end) => `  <script type="text/plain" id="licences">\n${said}</script>\n  ${end}`,
      );
    rmSync(outDir, { recursive: true });
    mkdirSync(outDir);
    writeFileSync(`${outDir}/throughcut.html`, page);
    // The served page offers it to whoever wants to take it along.
    mkdirSync('build/web', { recursive: true });
    writeFileSync('build/web/throughcut.html', page);
    writeFileSync('build/web/throughcut.html.gz', gzipSync(page));
  },
});

const bundled = new Set<string>();
const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as {
  readonly version: string;
};

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
  worker: { format: 'iife', plugins: () => [licences(bundled)] },
  plugins: [
    react(),
    aloneInPlaceOfServed(),
    viteSingleFile({ removeViteModuleLoader: true }),
    oneFile(),
  ],
});
