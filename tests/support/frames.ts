import type { Page } from 'playwright-core';

interface Counted {
  count: { drawn: number };
}

/** Counts, from before the page's first script, every call by which the graphics processor is made to draw. */
export const countFrames = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    const gl = WebGL2RenderingContext.prototype;
    const count = { drawn: 0 };
    Object.assign(window, { count });
    for (const name of ['drawElements', 'drawArrays', 'clear'] as const) {
      const draw = gl[name] as (...args: number[]) => void;
      Object.assign(gl, {
        [name](this: WebGL2RenderingContext, ...args: number[]) {
          count.drawn += 1;
          draw.apply(this, args);
        },
      });
    }
  });

export const drawnCalls = (page: Page): Promise<number> =>
  page.evaluate(() => (window as unknown as Counted).count.drawn);

/** Lets the browser have so many frames of its own. */
export const frames = (page: Page, all: number): Promise<void> =>
  page.evaluate(async (n) => {
    for (let i = 0; i < n; i++) await new Promise(requestAnimationFrame);
  }, all);
