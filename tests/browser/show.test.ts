import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { Page } from 'playwright-core';
import { evaluate } from '../../src/core/plan/evaluate.ts';
import { DEMO_PLANS } from '../../src/io/plans.ts';
import {
  PATIENT_STEPS,
  type PatientStep,
  patientNumbers,
  patientStory,
} from '../../src/words/presentPatient.ts';
import { sayPatient } from '../../src/words/sayPatient.ts';
import { expect, openPage, test } from '../support/browser.ts';
import { withoutGraphics } from '../support/place.ts';

// Source of the rules: axe-core 4 (WCAG 2.2 A and AA, and its best practices).
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const { plan } = DEMO_PLANS[0];

/** Opens the patient's page on the first scenario, drawn lightly, at a tablet's size. */
async function openShow(page: Page, session: object = {}): Promise<void> {
  await page.setViewportSize({ width: 1024, height: 768 });
  await page.addInitScript(
    (kept) => {
      localStorage.setItem('ridgewright.session.1', kept);
    },
    JSON.stringify({ drawing: 'light', place: 'show', ...session }),
  );
  await openPage(page);
}

/** Waits until a step has unfolded and stands still. */
const shown = (page: Page, step: PatientStep) => page.locator(`.show-stage[data-shown="${step}"]`).waitFor();
const camera = (page: Page) => page.locator('.show-stage').getAttribute('data-camera');
const title = (page: Page) => page.locator('.patient-text h2').textContent();
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

/** What stands on the pages of a PDF, without blanks and hyphens. */
async function pagesOf(file: Buffer): Promise<string[]> {
  const pdf = await getDocument({ data: new Uint8Array(file), verbosity: 0 }).promise;
  const pages = await Promise.all(
    Array.from({ length: pdf.numPages }, async (_, i) => {
      const { items } = await (await pdf.getPage(i + 1)).getTextContent();
      const text = items.map((item) => ('str' in item ? item.str : '')).join('');
      return text.replace(/[\s\u00AD-]/g, '');
    }),
  );
  await pdf.destroy();
  return pages;
}

test('a finger turns the drawing, and taps unfold it step by step', async ({ browser }) => {
  const context = await browser.newContext({ hasTouch: true, reducedMotion: 'reduce' });
  const page = await context.newPage();
  await openShow(page);
  await shown(page, 'gap');
  const before = await camera(page);
  const touch = await context.newCDPSession(page);
  const at = (type: string, x: number, y: number) =>
    touch.send('Input.dispatchTouchEvent', {
      type: type as 'touchStart',
      touchPoints: type === 'touchEnd' ? [] : [{ x, y }],
    });
  await at('touchStart', 720, 420);
  // The drawing follows every move before the next: moves in one burst are a fling to the browser, which then takes the first tap to stop it.
  let seen = before;
  for (const x of [740, 780, 840]) {
    await at('touchMove', x, 430);
    await expect.poll(() => camera(page)).not.toBe(seen);
    seen = await camera(page);
  }
  await at('touchEnd', 840, 430);
  for (const step of PATIENT_STEPS.slice(1)) {
    const name = sayPatient('en', 'patient.next', { step: sayPatient('en', `patient.${step}.name`) });
    await button(page, name).tap();
    await shown(page, step);
    expect(await title(page)).toBe(sayPatient('en', `patient.${step}.title`));
  }
  await button(page, sayPatient('en', 'patient.again')).tap();
  await shown(page, 'gap');
  // A new step brings the drawing's own view back.
  expect(await camera(page)).toBe(before);
  // Source: WCAG 2.2, 2.5.5 (44 px).
  const small = await page
    .locator('.patient button')
    .evaluateAll((all) =>
      all
        .map((one) => ({ name: one.textContent, ...one.getBoundingClientRect().toJSON() }))
        .filter(({ width, height }) => Math.min(width, height) < 44),
    );
  expect(small).toEqual([]);
  await context.close();
});

test('keys go from step to step, and turn the drawing where it has the focus', async ({ page }) => {
  await openShow(page);
  await shown(page, 'gap');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('PageDown');
  await shown(page, 'implant');
  await page.keyboard.press('ArrowLeft');
  await shown(page, 'bone');
  const before = await camera(page);
  await page.locator('.show-stage').focus();
  await page.keyboard.press('ArrowRight');
  await expect.poll(() => camera(page)).not.toBe(before);
  expect(await title(page)).toBe(sayPatient('en', 'patient.bone.title'));
  // The first step has none before it, the last none after it.
  for (let i = 0; i < 4; i++) await page.keyboard.press('PageUp');
  await shown(page, 'gap');
  for (let i = 0; i < 9; i++) await page.keyboard.press('PageDown');
  await shown(page, 'choices');
});

// That it moves on the way is shown without a browser (`show-unfolding`): here one slow picture may take the whole time of the motion.
test('what has unfolded rests and draws nothing', async ({ browser }) => {
  const context = await browser.newContext({ reducedMotion: 'no-preference' });
  const page = await context.newPage();
  await openShow(page);
  await shown(page, 'gap');
  await page.locator('.show-stage').evaluate((stage) => {
    const seen: string[] = [];
    Object.assign(window, { seen });
    new MutationObserver(() => seen.push(stage.getAttribute('data-shown') ?? '')).observe(stage, {
      attributeFilter: ['data-shown'],
    });
  });
  await button(
    page,
    sayPatient('en', 'patient.next', { step: sayPatient('en', 'patient.bone.name') }),
  ).click();
  await shown(page, 'bone');
  const frames = await page.evaluate(async () => {
    const { seen } = window as unknown as { seen: string[] };
    // The words that appear with the step may ask for one frame more.
    let before = seen.length;
    for (let i = 0, still = 0; i < 200 && still < 5; i++) {
      await new Promise(requestAnimationFrame);
      still = seen.length === before ? still + 1 : 0;
      before = seen.length;
    }
    for (let i = 0; i < 20; i++) await new Promise(requestAnimationFrame);
    return { drawn: seen.length, idle: seen.length - before };
  });
  expect(frames.drawn).toBeGreaterThan(0);
  expect(frames.idle).toBe(0);
  await context.close();
});

test('every language says it, marks itself as a draft, and is remembered', async ({ page }) => {
  await withoutGraphics(page);
  await openShow(page);
  for (const language of ['de', 'es', 'en'] as const) {
    await button(page, sayPatient(language, `patient.language.${language}`)).click();
    expect(await page.locator('.patient').getAttribute('lang')).toBe(language);
    expect(await title(page)).toBe(sayPatient(language, 'patient.gap.title'));
    const draft = page.locator('.patient-language .patient-draft');
    expect(await draft.count()).toBe(language === 'en' ? 0 : 1);
    if (language !== 'en') {
      expect(await draft.textContent()).toContain(sayPatient(language, 'patient.draft'));
      expect(await draft.textContent()).toContain(sayPatient('en', 'patient.draft'));
    }
    expect(await page.locator('.patient-foot').textContent()).toContain(
      sayPatient(language, 'patient.caution'),
    );
  }
  await button(page, sayPatient('es', 'patient.language.es')).click();
  const kept = await page.evaluate(() => localStorage.getItem('ridgewright.session.1'));
  expect(JSON.parse(kept ?? '{}')).toMatchObject({ language: 'es', place: 'show' });
});

test('no figure stands on the page until one asks; then it is that of the readings', async ({ page }) => {
  // The words in the drawing are of the catalogue, in which a test looks for figures.
  await withoutGraphics(page);
  await openShow(page, { language: 'de' });
  const seen = () =>
    page.evaluate(() => {
      const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      let all = '';
      while (texts.nextNode()) {
        if (texts.currentNode.parentElement?.checkVisibility()) all += ` ${texts.currentNode.textContent}`;
      }
      return all;
    });
  for (const step of PATIENT_STEPS) {
    expect(await title(page)).toBe(sayPatient('de', `patient.${step}.title`));
    const text = await seen();
    expect(text).toContain(sayPatient('de', 'patient.caution'));
    expect(text).not.toMatch(/\d/);
    await page.keyboard.press('ArrowRight');
  }
  await button(page, sayPatient('de', 'patient.numbers.show')).click();
  const rows = await page
    .locator('.patient [data-number]')
    .evaluateAll((all) =>
      all.map((row) => [row.getAttribute('data-number'), row.querySelector('dd')?.textContent]),
    );
  const numbers = patientNumbers(evaluate(plan).readings, 'de');
  expect(rows).toEqual(numbers.map(({ id, quantity }) => [id, quantity]));
  expect(rows.flat().join(' ')).toMatch(/\d,\d/);
  await page.keyboard.press('ArrowRight');
  expect(await seen()).not.toMatch(/\d/);
});

test('axe finds nothing at the fullest steps, and with the numbers', async ({ context, page }) => {
  await context.addInitScript({ content: AXE });
  await openShow(page, { language: 'es' });
  const findings = () =>
    page.evaluate(async () => {
      const { axe } = window as unknown as {
        axe: { run: () => Promise<{ violations: { id: string; nodes: { target: unknown[] }[] }[] }> };
      };
      const { violations } = await axe.run();
      return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`));
    });
  for (const step of ['healing', 'choices'] as const) {
    await button(page, sayPatient('es', `patient.${step}.name`)).click();
    await shown(page, step);
    expect(await findings()).toEqual([]);
  }
  await button(page, sayPatient('es', 'patient.numbers.show')).click();
  await shown(page, 'implant');
  expect(await findings()).toEqual([]);
});

test('two pages to take home, with pictures of this plan and the words', async ({ page }) => {
  await openShow(page);
  await shown(page, 'gap');
  // German runs longest: it has to fit the shorter paper.
  const papers = [
    ['en', 'A4'],
    ['de', 'Letter'],
  ] as const;
  for (const [language, format] of papers) {
    await button(page, sayPatient(language, `patient.language.${language}`)).click();
    const pages = await pagesOf(await page.pdf({ format }));
    expect(pages.length).toBe(2);
    const words = [
      sayPatient(language, 'patient.print.title'),
      sayPatient(language, `patient.tooth.${plan.site.tooth}`),
      ...PATIENT_STEPS.flatMap((step) => patientStory(step, plan.site, language)),
      sayPatient(language, 'patient.ask.wrong'),
      sayPatient(language, 'patient.print.own'),
      sayPatient(language, 'patient.caution'),
      sayPatient(language, 'patient.cautionFull'),
    ];
    for (const text of words) expect(pages.join('')).toContain(text.replace(/[\s-]/g, ''));
  }
  const pictures = await page.locator('.show-picture[data-picture] canvas').evaluateAll((all) =>
    (all as HTMLCanvasElement[]).map((canvas) => {
      const { data } = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height) ?? {
        data: [],
      };
      let inked = 0;
      let sum = 0;
      for (let i = 3; i < data.length; i += 4) {
        if (data[i] > 0) inked++;
        sum += data[i - 3] + data[i - 2] + data[i - 1];
      }
      return { inked: inked / (data.length / 4), sum };
    }),
  );
  expect(pictures.length).toBe(PATIENT_STEPS.length - 1);
  for (const { inked } of pictures) expect(inked).toBeGreaterThan(0.3);
  // No two steps look alike.
  expect(new Set(pictures.map(({ sum }) => sum)).size).toBe(pictures.length);
}, 120_000);

test('without 3D the words tell the same', async ({ page }) => {
  await withoutGraphics(page);
  await openShow(page);
  expect(await page.locator('.patient').textContent()).toContain(sayPatient('en', 'patient.noGraphics'));
  await page.keyboard.press('ArrowRight');
  expect(await title(page)).toBe(sayPatient('en', 'patient.bone.title'));
});
