import { readFileSync } from 'node:fs';
import type { Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { SERVED_POLICY } from './policy.ts';

const ICONS = ['icon-180.png', 'icon-192.png', 'icon-512.png', 'icon-mask-512.png'] as const;

/** Writes the policy into the page and lays the icons beside it. */
function pageParts(): Plugin {
  return {
    name: 'page-parts',
    apply: 'build',
    generateBundle() {
      for (const name of ICONS) {
        const source = readFileSync(new URL(`../app/icons/${name}`, import.meta.url));
        this.emitFile({ type: 'asset', fileName: `icons/${name}`, source });
      }
    },
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: SERVED_POLICY },
        injectTo: 'head-prepend',
      },
      { tag: 'link', attrs: { rel: 'apple-touch-icon', href: './icons/icon-180.png' }, injectTo: 'head' },
    ],
  };
}

const png = (name: string, size: number) => ({
  src: `icons/${name}`,
  sizes: `${size}x${size}`,
  type: 'image/png',
});

/**
 * The page as it is served: under its policy, to be installed, and laid by whole on the first visit. The service worker is one file without `importScripts`, so
 * that it runs under the policy where a host sends that as a header; the page registers it itself (`src/app/serviceWorker.ts`).
 */
export const served = (): Plugin[] => [
  pageParts(),
  ...VitePWA({
    injectRegister: false,
    strategies: 'generateSW',
    manifest: {
      id: './',
      name: 'Ridgewright',
      short_name: 'Ridgewright',
      description: 'A rehearsal of one upper front implant on a model made from numbers.',
      lang: 'en',
      start_url: './',
      scope: './',
      display: 'standalone',
      background_color: '#F6F2E9',
      theme_color: '#F6F2E9',
      icons: [
        png('icon-192.png', 192),
        png('icon-512.png', 512),
        { ...png('icon-mask-512.png', 512), purpose: 'maskable' },
      ],
    },
    workbox: {
      inlineWorkboxRuntime: true,
      sourcemap: false,
      globPatterns: ['**/*.{html,js,css,woff2,svg,png,wasm}'],
      maximumFileSizeToCacheInBytes: 4 * 2 ** 20,
    },
  }),
];
