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
 * The moves `from` to `to` of the drag, one a frame of the browser's; the first of all takes the handle. The time that the
 * pointer's path is busy with each, until everything it set off at once has run, is added to `moveTimes` on the window, ms. What
 * the next frame does with it is not in it: {@link scriptTime} counts all.
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

/** Time of the pointer's path for the moves so far, ms each. */
export const moveTimes = (page: Page): Promise<number[]> =>
  page.evaluate(() => (window as unknown as Timed).moveTimes ?? []);

/** A reader of all the time that the page's main thread has run script so far, ms: every task, the frames' callbacks and their rendering of panels and stage included. */
export async function scriptTime(page: Page): Promise<() => Promise<number>> {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  return async () => {
    const { metrics } = await session.send('Performance.getMetrics');
    return 1000 * (metrics.find(({ name }) => name === 'ScriptDuration')?.value ?? Number.NaN);
  };
}

/** Moves of the scripted dash. */
export const DASHES = 40;

/** The whole way in so many moves and the release, all between two frames. */
export async function dash(page: Page, { at, way }: Grip): Promise<void> {
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  const points = Array.from({ length: DASHES }, (_, i) => ({
    clientX: at.x + (WAY * (i + 1) * way.x) / DASHES,
    clientY: at.y + (WAY * (i + 1) * way.y) / DASHES,
  }));
  await page.evaluate((all) => {
    const stage = document.querySelector('.stage-ink');
    const send = (type: string, point: { clientX: number; clientY: number }) =>
      stage?.dispatchEvent(new PointerEvent(type, { ...point, bubbles: true, buttons: 1 }));
    for (const point of all) send('pointermove', point);
    send('pointerup', all[all.length - 1]);
  }, points);
  await page.mouse.up();
}
