import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';
import { served } from './src/build/served.ts';
import SlowFirst from './tests/support/slowFirst.ts';

export default defineConfig({
  root: process.env.VITEST ? '.' : 'src',
  base: './',
  publicDir: false,
  plugins: [react(), process.env.VITEST ? [] : served()],
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    // A file inlined as a data: address would be refused by the policy above.
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 1400,
    reportCompressedSize: true,
  },
  test: {
    reporters: ['default', './tests/support/reporter.ts'],
    sequence: { sequencer: SlowFirst },
    projects: [
      {
        test: {
          name: 'core',
          environment: 'node',
          include: ['tests/{house,core,cli,oracle,words,io}/**/*.test.{ts,tsx}'],
          // Two files at a time on the two cores that the checks are sized for, each worker reading what they import once: no test
          // puts anything in the place of a module or of a global.
          maxWorkers: 2,
          isolate: false,
          testTimeout: 600_000,
          sequence: { groupOrder: 0 },
        },
      },
      {
        test: {
          name: 'browser',
          environment: 'node',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/support/browser-setup.ts'],
          fileParallelism: false,
          maxWorkers: 1,
          isolate: false,
          testTimeout: 60_000,
          hookTimeout: 60_000,
          sequence: { groupOrder: 1 },
        },
      },
      {
        test: {
          name: 'long',
          environment: 'node',
          include: ['tests/long/**/*.test.ts'],
          testTimeout: 3_600_000,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
