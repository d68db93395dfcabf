import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { oneFile } from './portable.ts';

/** `npm run portable`: the page as one HTML file for a memory stick, in `dist-portable`. Opened from a file a browser runs no module and starts no worker. */
export default defineConfig({
  root: 'src',
  base: '/',
  publicDir: false,
  plugins: [react(), oneFile()],
  build: {
    outDir: '../dist-portable',
    emptyOutDir: true,
    assetsInlineLimit: Number.MAX_SAFE_INTEGER,
    cssCodeSplit: false,
    modulePreload: false,
    chunkSizeWarningLimit: 4000,
    rolldownOptions: {
      input: 'src/ridgewright.html',
      output: { format: 'iife', codeSplitting: false },
      // What loads parts of a page asks where it stands; here nothing is loaded.
      checks: { emptyImportMeta: false },
    },
  },
});
