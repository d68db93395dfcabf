import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { en } from '../../src/words/en.ts';
import { expect, settled, test } from '../support/browser.ts';
import { openPanels, openPlace } from '../support/place.ts';

// Source of the rules: axe-core 4 (WCAG 2.2 A and AA, and its best practices).
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Axe {
  run: () => Promise<{
    violations: { id: string; nodes: { target: unknown[]; failureSummary?: string }[] }[];
  }>;
}

/** What axe finds on the page as it stands, one line each. */
async function findings(page: Page): Promise<string[]> {
  return page.evaluate(async () => {
    const { axe } = window as unknown as { axe: Axe };
    const { violations } = await axe.run();
    return violations.flatMap(({ id, nodes }) =>
      nodes.map(({ target, failureSummary }) => `${id}: ${target.join(' ')} ${failureSummary}`),
    );
  });
}

const SIZES = [
  [1440, 900],
  [1024, 768],
  [390, 844],
] as const;

test.for(SIZES)('axe finds nothing at %i × %i', async ([width, height], { browser }) => {
  const context = await browser.newContext({ viewport: { width, height }, reducedMotion: 'reduce' });
  // Put in by the driver before the page's own scripts, past its policy.
  await context.addInitScript({ content: AXE });
  const page = await context.newPage();
  await openPanels(page);
  expect(await findings(page)).toEqual([]);
  await page.locator('[data-reading="root-mesial"] button').click();
  await settled(page);
  expect(await findings(page)).toEqual([]);
  await page.getByRole('button', { name: en['plans.open'], exact: true }).click();
  await page.locator('[data-plan]').first().waitFor();
  expect(await findings(page)).toEqual([]);
  await page.getByRole('button', { name: en['link.open'], exact: true }).click();
  await page.locator('.share-code > svg').waitFor();
  expect(await findings(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: en['place.site'], exact: true }).click();
  await page.locator('[data-site-field="gap"]').waitFor();
  expect(await findings(page)).toEqual([]);
  await context.close();
});

test('axe finds nothing with the stage drawn', async ({ context, page }) => {
  await context.addInitScript({ content: AXE });
  await openPlace(page);
  expect(await findings(page)).toEqual([]);
});

test.for([
  [false, 24],
  [true, 44],
] as const)(
  'everything that can be pressed is large enough (touch: %s)',
  async ([hasTouch, least], { browser }) => {
    const context = await browser.newContext({
      viewport: { width: 1024, height: 768 },
      hasTouch,
      isMobile: hasTouch,
      reducedMotion: 'reduce',
    });
    const page = await context.newPage();
    await openPlace(page);
    await page.getByRole('button', { name: en['plans.open'], exact: true }).click();
    await page.locator('[data-plan]').first().waitFor();
    // Source: WCAG 2.2, 2.5.8 (24 px) and 2.5.5 (44 px). A row's press reaches over the whole row.
    const small = await page.locator('button, select, input:not([hidden])').evaluateAll(
      (all, [edge]) =>
        all
          .filter((one) => one.checkVisibility() && !one.closest('[data-stage-overlay]'))
          .map((one) => {
            const box = (one.closest('tr') ?? one.closest('.field-box') ?? one).getBoundingClientRect();
            return {
              name: one.getAttribute('aria-label') ?? one.textContent,
              width: box.width,
              height: box.height,
            };
          })
          .filter(({ width, height }) => Math.min(width, height) < edge - 0.01),
      [least],
    );
    expect(small).toEqual([]);
    await context.close();
  },
);

test('focus is always seen: an outline in ink on whatever has it', async ({ page }) => {
  await openPanels(page);
  const seen = new Set<string>();
  for (let i = 0; i < 30; i++) {
    await page.keyboard.press('Tab');
    const found = await page.evaluate(() => {
      const one = document.activeElement;
      if (!one || one === document.body) return null;
      const chain = [one, one.closest('.field-box'), one.closest('tr')].filter((e) => e !== null);
      const outlined = chain.some((e) => {
        const { outlineStyle, outlineWidth } = getComputedStyle(e);
        return outlineStyle === 'solid' && Number.parseFloat(outlineWidth) >= 2;
      });
      return { name: one.getAttribute('aria-label') ?? one.textContent ?? '', outlined };
    });
    if (!found) break;
    expect(found).toEqual({ name: found.name, outlined: true });
    seen.add(found.name);
  }
  expect(seen.size).toBeGreaterThan(12);
});
