import type { Page } from 'playwright-core';
import { entryOf } from '../../src/core/geometry/pose.ts';
import { shoulderLevel } from '../../src/core/plan/edits.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { parsePlanFile } from '../../src/io/planFile.ts';
import { DEMO_PLANS } from '../../src/io/plans.ts';
import { en } from '../../src/words/en.ts';
import { expect, settled, test } from '../support/browser.ts';
import { type Hand, handSeen, keyboard, pointer, tree, watchHand } from '../support/hands.ts';
import { digits, openPanels, savedPlan } from '../support/place.ts';

const OPENED = DEMO_PLANS[1].plan;
const READING = 'facial-wall-3mm';

/** The plan on the table, saved by this hand and read back from the file. */
async function saved(page: Page, hand: Hand): Promise<Plan> {
  const read = parsePlanFile(await savedPlan(page, () => hand.press(page, en['plans.save'])));
  if (!read.ok) throw new Error('the saved plan cannot be read');
  return read.plan;
}

/** The page as it is read out: all of its roles, names and texts. */
const readOut = (page: Page): Promise<string> => page.locator('body').ariaSnapshot();

async function openPlan(page: Page, hand: Hand): Promise<void> {
  await hand.press(page, en['plans.open']);
  await page.getByRole('button', { name: OPENED.title }).waitFor();
  await hand.press(page, OPENED.title);
  await settled(page);
  expect(await saved(page, hand)).toEqual(OPENED);
}

async function placeEntry(page: Page, hand: Hand): Promise<void> {
  const before = await saved(page, hand);
  await hand.step(page, en['rail.shiftFName'], -3);
  await hand.step(page, en['rail.shiftMName'], 2);
  await settled(page);
  const { pose } = await saved(page, hand);
  const [m, f] = entryOf(before.pose);
  // The field shows hundredths, and steps from what it shows.
  expect(entryOf(pose)[0]).toBeCloseTo(m + 0.2, 1);
  expect(entryOf(pose)[1]).toBeCloseTo(f - 0.3, 1);
  expect(pose.tilt).toEqual(before.pose.tilt);
}

async function tiltIt(page: Page, hand: Hand): Promise<void> {
  const before = await saved(page, hand);
  await hand.step(page, en['rail.tiltFpName'], -2);
  await settled(page);
  const { pose } = await saved(page, hand);
  expect(pose.tilt.faciopalatal).toBeCloseTo(before.pose.tilt.faciopalatal - 2, 1);
  expect(pose.tilt.mesiodistal).toBe(before.pose.tilt.mesiodistal);
}

async function seatIt(page: Page, hand: Hand): Promise<void> {
  const before = await saved(page, hand);
  await hand.step(page, en['rail.shoulderName'], -4);
  await settled(page);
  const { pose } = await saved(page, hand);
  expect(shoulderLevel(pose)).toBeCloseTo(shoulderLevel(before.pose) - 0.4, 1);
  expect(pose.tilt).toEqual(before.pose.tilt);
}

async function keepAndCompare(page: Page, hand: Hand): Promise<void> {
  await hand.press(page, en['compare.keep']);
  const kept = await saved(page, hand);
  await hand.step(page, en['rail.shiftFName'], 5);
  await settled(page);
  // A pure shift of half a millimetre moves platform and apex alike and turns nothing (rule F6).
  const apart = page.getByRole('group', { name: en['rail.compare'] }).getByRole('definition');
  expect((await apart.allTextContents()).slice(0, 2)).toEqual(['0.5\u00A0mm', '0.5\u00A0mm']);
  await hand.press(page, en['compare.swap']);
  await settled(page);
  expect((await saved(page, hand)).pose).toEqual(kept.pose);
}

async function readExplanation(page: Page, hand: Hand): Promise<void> {
  const name = en[`reading.${READING}`];
  expect(await readOut(page)).not.toContain(en[`about.${READING}`]);
  await hand.press(page, name);
  expect(await readOut(page)).toContain(en[`about.${READING}`]);
  await hand.press(page, name);
  expect(await readOut(page)).not.toContain(en[`about.${READING}`]);
}

async function undoIt(page: Page, hand: Hand): Promise<void> {
  const before = { plan: await saved(page, hand), digits: await digits(page) };
  await hand.step(page, en['rail.tiltMdName'], 1);
  await settled(page);
  expect(await digits(page)).not.toEqual(before.digits);
  await hand.press(page, /^Undo/);
  await settled(page);
  expect({ plan: await saved(page, hand), digits: await digits(page) }).toEqual(before);
}

const TASKS = {
  'open a plan': openPlan,
  'place the entry': placeEntry,
  tilt: tiltIt,
  'seat depth': seatIt,
  'keep and compare': keepAndCompare,
  'read an explanation': readExplanation,
  undo: undoIt,
} as const;

const HANDS = {
  'by the keyboard alone': keyboard,
  'by single presses alone': pointer,
  'through the accessibility tree alone': tree,
} as const;

test.for(Object.entries(HANDS))('every task is done %s', { timeout: 180_000 }, async ([, hand], { page }) => {
  await watchHand(page);
  await openPanels(page);
  for (const [task, doIt] of Object.entries(TASKS)) {
    await doIt(page, hand);
    const seen = await handSeen(page);
    const forbidden = hand.never.filter((name) => seen[name] !== undefined);
    expect(forbidden, `used to ${task}`).toEqual([]);
  }
  // The watch itself is awake: this hand was seen at work.
  expect(Object.keys(await handSeen(page)).length).toBeGreaterThan(0);
});
