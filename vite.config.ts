import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: 'src/web',
  cacheDir: '../../node_modules/.vite',
  build: { outDir: '../../build/web', emptyOutDir: true, target: 'es2023' },
  worker: { format: 'es' },
  plugins: [react()],
  server: { proxy: { '/api': 'http://127.0.0.1:4870' } },
});
