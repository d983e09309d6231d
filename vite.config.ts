import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';
import react from '@vitejs/plugin-react';
import sharp from 'sharp';
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
      // Nothing was written: what went wrong is said by whoever found it.
      if (!existsSync(join(folder, 'assets'))) return;
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

/** The colour of the board in the mark. */
const markGround = '#d9b98a';

/** The mark as pictures, for whoever puts the page on a screen as a program: not every system draws an SVG there. */
const markAsPictures = (): Plugin => ({
  name: 'mark-as-pictures',
  apply: 'build',
  async generateBundle() {
    const mark = readFileSync('src/web/public/mark.svg');
    const drawn = (sizePx: number) => sharp(mark, { density: 72 * (sizePx / 32) }).resize(sizePx);
    const pictures = {
      'mark-192.png': drawn(192),
      'mark-512.png': drawn(512),
      // To its edges, since a system cuts its own shape out of it.
      'mark-512-filled.png': drawn(512).flatten({ background: markGround }),
    };
    for (const [fileName, picture] of Object.entries(pictures))
      this.emitFile({ type: 'asset', fileName, source: await picture.png().toBuffer() });
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
      output: {
        codeSplitting: { groups: [{ name: 'first', tags: ['$initial'] }] },
        // Without names: the first view carries those of all parts that may follow.
        chunkFileNames: ({ name }) =>
          name === 'rolldown-runtime' ? 'assets/[name]-[hash].js' : 'assets/p[hash].js',
      },
    },
  },
  worker: { format: 'es', plugins: () => [licences(bundled)] },
  plugins: [react(), markAsPictures(), licences(bundled), readyToServe()],
  server: { proxy: { '/api': 'http://127.0.0.1:4870' } },
});
