import react from '@vitejs/plugin-react';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';

/** What the built page may load and run. The build writes it into the page; the dev server does not. */
const POLICY = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "connect-src 'self'",
  "worker-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types ridgewright',
].join('; ');

function contentSecurityPolicy(): Plugin {
  return {
    name: 'content-security-policy',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY },
        injectTo: 'head-prepend',
      },
    ],
  };
}

export default defineConfig({
  root: process.env.VITEST ? '.' : 'src',
  base: './',
  publicDir: false,
  plugins: [react(), contentSecurityPolicy()],
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
    projects: [
      {
        test: {
          name: 'core',
          environment: 'node',
          include: ['tests/{house,core,cli,oracle,words,io}/**/*.test.{ts,tsx}'],
          // Two files at a time on the two cores that the checks are sized for.
          maxWorkers: 2,
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
