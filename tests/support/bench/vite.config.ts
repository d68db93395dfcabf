import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** The bench: parts of the page alone, and the page itself, built for development. */
export default defineConfig({
  root: 'tests/support/bench',
  base: './',
  publicDir: false,
  plugins: [react()],
  build: {
    outDir: '../../../node_modules/.cache/bench',
    emptyOutDir: true,
    minify: false,
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 10_000,
  },
});
