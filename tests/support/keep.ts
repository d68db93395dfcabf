import type { Page } from 'playwright-core';
import { inject } from 'vitest';
import type { Plan } from '../../src/core/plan/plan.ts';
import { parsePlanFile } from '../../src/io/planFile.ts';
import { settled } from './browser.ts';
import { savedPlan, withoutGraphics } from './place.ts';

/** Waits until the page says so of the plan on the table. */
export async function keptAs(page: Page, status: string): Promise<void> {
  await page.waitForFunction((wanted) => document.documentElement.dataset.keep === wanted, status);
}

/** Opens the page without its stage, with that after `#`, and waits until all of it is drawn. */
export async function openPanelsAt(page: Page, hash = ''): Promise<void> {
  await withoutGraphics(page);
  await page.goto(`${inject('page')}${hash}`);
  await settled(page);
}

export async function reloaded(page: Page): Promise<void> {
  await page.reload();
  await settled(page);
}

/** The plan on the table, as the page's own button saves it. */
export async function planOn(page: Page): Promise<Plan> {
  const read = parsePlanFile(await savedPlan(page));
  if (!read.ok) throw new Error('the saved plan cannot be read');
  return read.plan;
}

/** From now on, while `window.full` is true, the browser's database has no room: it refuses every write as browsers do. */
export const withLittleRoom = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...write: Parameters<typeof put>) {
      // Source: the W3C's Indexed Database API 3.0, which names this error for a write that finds no room.
      if ((window as { full?: boolean }).full) throw new DOMException('no room', 'QuotaExceededError');
      return put.apply(this, write);
    };
  });

export const setFull = (page: Page, full: boolean): Promise<unknown> =>
  page.evaluate((on) => {
    (window as { full?: boolean }).full = on;
  }, full);

/** Makes the newest state on the machine one that was not written to its end. */
export const tearNewest = (page: Page): Promise<unknown> =>
  page.evaluate(
    () =>
      new Promise<void>((done, fail) => {
        const opening = indexedDB.open('ridgewright');
        opening.onerror = () => fail(opening.error);
        opening.onsuccess = () => {
          const work = opening.result.transaction('slots', 'readwrite');
          const store = work.objectStore('slots');
          const all = store.getAll();
          all.onsuccess = () => {
            const [newest] = all.result.sort((a, b) => b.revision - a.revision);
            store.put({ ...newest, text: newest.text.slice(0, 100) }, newest.revision % 2);
          };
          work.oncomplete = () => {
            opening.result.close();
            done();
          };
        };
      }),
  );

/** Drags a file over the page, and lets it go there. */
export async function dropFile(page: Page, name: string, text: string): Promise<void> {
  const carried = await page.evaluateHandle(
    ([file, content]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([content], file, { type: 'application/json' }));
      return transfer;
    },
    [name, text] as const,
  );
  const over = page.locator('.sheet');
  await over.dispatchEvent('dragenter', { dataTransfer: carried });
  await page.locator('.drop-hint').waitFor();
  await over.dispatchEvent('dragover', { dataTransfer: carried });
  await over.dispatchEvent('drop', { dataTransfer: carried });
}
