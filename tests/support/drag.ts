import type { Page } from 'playwright-core';

/** Moves of the scripted drag. */
export const MOVES = 200;
/** How far it goes, px along the handle's bar. */
const WAY = 40;

interface Point {
  x: number;
  y: number;
}

interface Timed {
  moveTimes?: number[];
}

/** Where the handle is held, and the direction of its bar, away from the knob at the axis. */
export interface Grip {
  at: Point;
  way: Point;
}

/** The grip of the facial shift handle, px of the page. */
export async function gripOf(page: Page): Promise<Grip> {
  const middle = async (id: string): Promise<Point> => {
    const box = await page.locator(`[data-handle="${id}"]`).boundingBox();
    if (!box) throw new Error(`the handle ${id} is not on the page`);
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  };
  const [knob, at] = [await middle('shift'), await middle('shift-f')];
  const length = Math.hypot(at.x - knob.x, at.y - knob.y);
  return { at, way: { x: (at.x - knob.x) / length, y: (at.y - knob.y) / length } };
}

/**
 * The moves `from` to `to` of the drag, one a frame of the browser's; the first of all takes the handle. The
 * time that each keeps the script busy, until everything it set off has run, is added to `moveTimes` on the window, ms.
 */
export async function carry(page: Page, { at, way }: Grip, from: number, to: number): Promise<void> {
  if (from === 0) {
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
  }
  const points = Array.from({ length: to - from }, (_, i) => {
    const by = (WAY * (from + i + 1)) / MOVES;
    return { clientX: at.x + by * way.x, clientY: at.y + by * way.y };
  });
  await page.evaluate(async (all) => {
    const timed = window as unknown as Timed;
    timed.moveTimes ??= [];
    const stage = document.querySelector('.stage-ink');
    for (const point of all) {
      await new Promise(requestAnimationFrame);
      const began = performance.now();
      stage?.dispatchEvent(new PointerEvent('pointermove', { ...point, bubbles: true, buttons: 1 }));
      await Promise.resolve();
      timed.moveTimes.push(performance.now() - began);
    }
  }, points);
}

/** Lets the handle go at the end of its way. */
export async function letGo(page: Page, { at, way }: Grip): Promise<void> {
  await page.mouse.move(at.x + WAY * way.x, at.y + WAY * way.y);
  await page.mouse.up();
}

/** Script time of the moves so far, ms each. */
export const moveTimes = (page: Page): Promise<number[]> =>
  page.evaluate(() => (window as unknown as Timed).moveTimes ?? []);
