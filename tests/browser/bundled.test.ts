import { chromium } from 'playwright-core';
import { inject } from 'vitest';
import { en } from '../../src/words/en.ts';
import { expect, listen, openPage, test } from '../support/browser.ts';
import { launchChromium } from '../support/chromium.ts';

// The browser that comes along by npm exists for Linux on x64 only; elsewhere a system's browser is asked for.
const exists = process.platform === 'linux' && process.arch === 'x64';

test.runIf(exists)(
  'the browser that comes along by npm starts, draws WebGL 2 and shows the page',
  async () => {
    const server = await launchChromium(true);
    try {
      const browser = await chromium.connect(server.wsEndpoint());
      const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
      const complaints: string[] = [];
      listen(page, complaints);
      await openPage(page);
      expect(page.url()).toBe(inject('page'));
      // Without a single font of its own the browser would give text no size.
      expect(await page.getByText(en['title.cautionText']).isVisible()).toBe(true);
      const pixel = await page.evaluate(() => {
        const gl = document.createElement('canvas').getContext('webgl2');
        gl?.clearColor(1, 0.2, 0, 1);
        gl?.clear(gl.COLOR_BUFFER_BIT);
        const bytes = new Uint8Array(4);
        gl?.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, bytes);
        return [...bytes];
      });
      expect(pixel).toEqual([255, 51, 0, 255]);
      expect(complaints).toEqual([]);
    } finally {
      await server.close();
    }
  },
);
