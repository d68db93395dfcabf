import type { Browser } from 'playwright-core';
import { en } from '../../src/words/en.ts';
import { expect, settled, test } from '../support/browser.ts';
import { DEFICIENCIES, difference, GREY, IDENTITY, lab, labPixels, seen } from '../support/colour.ts';
import { decode, type Pixels, type Rgb } from '../support/pixels.ts';
import { openPanels } from '../support/place.ts';

const MARKS = ['within', 'near', 'beyond'] as const;
const PAIRS = [
  ['within', 'near'],
  ['near', 'beyond'],
  ['within', 'beyond'],
] as const;
type Pictures = Record<(typeof MARKS)[number], Pixels>;

/** Side of the square round a glyph, CSS px, and pixels to each. */
const BOX = 18;
const DENSE = 4;
/** Least mean difference over the square, CIE 1976; about 2 can just be seen side by side. */
const LEAST = 10;
/** In grey: least share of the square whose lightness differs by more than `STEP` of L*. */
const LEAST_SHARE = 0.08;
const STEP = 20;

/** The three glyphs as the wall profile's legend shows them. */
async function glyphs(browser: Browser): Promise<Pictures> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    deviceScaleFactor: DENSE,
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  await openPanels(page);
  await settled(page);
  const legend = page.getByRole('img', { name: en['drawing.profileLabel'].split('.')[0] });
  const picture = async (mark: string) => {
    const middle = await legend
      .locator(`.glyph-${mark}`)
      .first()
      .evaluate((one) => {
        const at = (one as SVGGraphicsElement).getScreenCTM();
        return { x: at?.e ?? Number.NaN, y: at?.f ?? Number.NaN };
      });
    const clip = { x: middle.x - BOX / 2, y: middle.y - BOX / 2, width: BOX, height: BOX };
    return decode(browser, await page.screenshot({ clip }));
  };
  const pictures = {
    within: await picture('within'),
    near: await picture('near'),
    beyond: await picture('beyond'),
  };
  await context.close();
  return pictures;
}

const mean = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0) / list.length;

const apart = (a: readonly Rgb[], b: readonly Rgb[]): number =>
  mean(a.map((one, i) => difference(one, b[i])));

test('the colour arithmetic is the published one', () => {
  // Source: sRGB's red in CIE L*a*b* under D65, as commonly tabled (from memory): 53.24, 80.09, 67.20.
  const red = lab(seen(IDENTITY, [255, 0, 0]));
  for (const [i, v] of [53.24, 80.09, 67.2].entries()) expect(Math.abs(red[i] - v)).toBeLessThan(0.05);
  // Every row of each matrix sums to 1: greys stay grey, and as light as they were.
  for (const matrix of [...Object.values(DEFICIENCIES), GREY]) {
    for (const v of [0, 60, 128, 200, 255]) {
      const grey: Rgb = [v, v, v];
      expect(difference(lab(seen(matrix, grey)), lab(seen(IDENTITY, grey)))).toBeLessThan(0.01);
    }
  }
});

test('marks told by hue alone would be caught', () => {
  // Colours that one kind of cone tells apart: clear to most eyes, under the least difference without that cone.
  const flat = (matrix: Parameters<typeof seen>[0], [a, b]: readonly [Rgb, Rgb]) =>
    difference(lab(seen(matrix, a)), lab(seen(matrix, b)));
  const rust = [
    [190, 110, 60],
    [130, 130, 60],
  ] as const;
  const teal = [
    [0, 120, 140],
    [30, 120, 90],
  ] as const;
  for (const pair of [rust, teal]) expect(flat(IDENTITY, pair)).toBeGreaterThan(3 * LEAST);
  expect(flat(DEFICIENCIES.protanopia, rust)).toBeLessThan(LEAST);
  expect(flat(DEFICIENCIES.deuteranopia, rust)).toBeLessThan(LEAST);
  expect(flat(DEFICIENCIES.tritanopia, teal)).toBeLessThan(LEAST);
  for (const pair of [rust, teal]) expect(flat(GREY, pair)).toBeLessThan(STEP);
});

test('the three states are told apart without any one kind of cone, and in grey', async ({ browser }) => {
  const pictures = await glyphs(browser);
  for (const mark of MARKS) {
    expect([pictures[mark].width, pictures[mark].height]).toEqual([BOX * DENSE, BOX * DENSE]);
  }
  const figures: string[] = [];
  for (const [kind, matrix] of Object.entries(DEFICIENCIES)) {
    for (const [one, other] of PAIRS) {
      const value = apart(labPixels(pictures[one], matrix), labPixels(pictures[other], matrix));
      figures.push(`${kind} ${one}–${other} ${value.toFixed(1)}`);
      expect(value, `${one} and ${other}: ${kind}`).toBeGreaterThanOrEqual(LEAST);
    }
  }
  for (const [one, other] of PAIRS) {
    const [a, b] = [labPixels(pictures[one], GREY), labPixels(pictures[other], GREY)];
    const share = mean(a.map(([l], i) => (Math.abs(l - b[i][0]) > STEP ? 1 : 0)));
    figures.push(`grey ${one}–${other} ${(100 * share).toFixed(0)} %`);
    expect(share, `${one} and ${other}: grey`).toBeGreaterThanOrEqual(LEAST_SHARE);
  }
  console.info(figures.join('; '));
});
