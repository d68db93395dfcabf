import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { passesShown, rehearsalOf } from '../../src/core/plan/inHand.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { type SeatNow, seatNow, setWrench } from '../../src/core/plan/seat.ts';
import { parsePlanFile, printPlanFile } from '../../src/io/planFile.ts';
import { DEMO_PLANS } from '../../src/io/plans.ts';
import { en } from '../../src/words/en.ts';
import { presentCause, presentContact, presentQuestions } from '../../src/words/presentSeating.ts';
import { presentTorque } from '../../src/words/presentTorque.ts';
import { expect, settled, test } from '../support/browser.ts';
import { drilledAsPlanned } from '../support/drilled.ts';
import { openPanels, savedPlan, type } from '../support/place.ts';

// Source of the rules: axe-core 4 (WCAG 2.2 A and AA, and its best practices).
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** A sixfold neck at 11, drilled as planned; the wrench is scripted to reach its maximum of 35 half a millimetre above the plan: invented numbers. */
const [CASE] = DEMO_PLANS.filter(({ plan }) => plan.implant.name === 'tapered-straight-35x11').map(
  ({ plan }) =>
    setWrench(drilledAsPlanned(plan), {
      points: [
        { above: 6, torque: 4 },
        { above: 2, torque: 20 },
        { above: 0.5, torque: 35 },
        { above: 0, torque: 60 },
      ],
    }),
);

const press = async (page: Page, name: string | RegExp) => {
  await page.getByRole('button', { name, exact: typeof name === 'string' }).click();
  await settled(page);
};

async function open(page: Page, plan: Plan): Promise<void> {
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({
      name: 'plan.json',
      mimeType: 'application/json',
      buffer: Buffer.from(printPlanFile(plan)),
    });
  await page.locator('[data-seat-code="not-started"]').waitFor();
  await settled(page);
}

async function planOf(page: Page): Promise<Plan> {
  const read = parsePlanFile(await savedPlan(page));
  if (!read.ok) throw new Error('the saved plan cannot be read');
  return read.plan;
}

function nowOf(plan: Plan): SeatNow {
  const now = seatNow(plan);
  if (!now) throw new Error('nothing is drilled');
  return now;
}

const plain = (text: string | null): string => (text ?? '').replaceAll('\u00A0', ' ');

/** The page says of the stop what the core says of the saved plan. */
async function told(page: Page): Promise<SeatNow> {
  const now = nowOf(await planOf(page));
  for (const { key, answer, detail } of presentQuestions(now.setting, now.state)) {
    const text = plain(await page.locator(`[data-question="${key}"]`).textContent());
    expect(text).toContain(plain(answer));
    expect(text).toContain(plain(detail));
  }
  for (const { key, value } of presentContact(now.contact))
    expect(plain(await page.locator(`[data-contact-row="${key}"] dd`).textContent())).toBe(plain(value));
  expect(await page.locator('[data-estimate]').textContent()).toBe(presentTorque(now.estimate).range);
  return now;
}

test('before anything is drilled it says so and leads to the rehearsal', async ({ page }) => {
  await openPanels(page);
  await press(page, en['place.seat']);
  await press(page, en['seat.toRehearse']);
  await page.getByText(en['hand.order']).waitFor();
  expect(await page.getByRole('button', { name: en['place.rehearse'] }).getAttribute('aria-current')).toBe(
    'page',
  );
});

test('one press drills as planned: the implant can be set to the hole, and undo takes the drilling back', async ({
  page,
}) => {
  await openPanels(page);
  await press(page, en['place.seat']);
  await press(page, en['seat.drillAsPlanned']);
  await page.getByRole('button', { name: en['seat.begin'] }).waitFor();
  expect(passesShown(await planOf(page)).map(({ depth }) => depth)).toEqual(
    passesShown(drilledAsPlanned(DEMO_PLANS[0].plan)).map(({ depth }) => depth),
  );
  await press(page, en['seat.begin']);
  await told(page);
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await page.getByRole('button', { name: en['seat.drillAsPlanned'] }).waitFor();
  expect(passesShown(await planOf(page))).toEqual([]);
});

test('turned in by fingers and by the wrench it stops at the maximum and says why', async ({
  context,
  page,
}) => {
  await context.addInitScript({ content: AXE });
  await openPanels(page);
  await press(page, en['place.seat']);
  await open(page, CASE);
  await type(page, en['seat.markToName'], '20');
  await press(page, en['seat.begin']);
  expect((await told(page)).state.roll).toBe(20);

  await press(page, /^a whole turn/);
  await press(page, /^a part-turn/);
  // A turn and a sixth on a thread of 0.8 mm: the level by hand.
  const fingers = await told(page);
  expect(fingers.setting.bite - fingers.state.above).toBeCloseTo((0.8 * 7) / 6, 9);
  await type(page, en['rail.tiltFpName'], String(Math.round(fingers.state.tilt.faciopalatal + 1)));
  await settled(page);
  expect(rehearsalOf(await planOf(page)).seating.at(-1)?.kind).toBe('steer');

  await press(page, en['seat.by.wrench']);
  await press(page, new RegExp(`^${en['seat.toBest']}`));
  const stopped = await told(page);
  // The script reaches 35 at half a millimetre.
  expect(stopped.state.above).toBeCloseTo(0.5, 9);
  const { cause } = stopped.state;
  if (!cause) throw new Error('it was not stopped');
  expect(plain(await page.locator('[data-seat-code="stop-back-out"]').textContent())).toContain(
    plain(presentCause(cause)),
  );
  expect(await page.getByRole('button', { name: /^a whole turn/ }).isDisabled()).toBe(true);
  const found = await page.evaluate(async () => {
    const { axe } = window as unknown as {
      axe: { run: () => Promise<{ violations: { id: string; nodes: { target: unknown[] }[] }[] }> };
    };
    const { violations } = await axe.run();
    return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`));
  });
  expect(found).toEqual([]);

  await page.locator('[data-seat-code="stop-back-out"] ~ button').first().click();
  await settled(page);
  expect((await told(page)).state.phase).toBe('backed-out');
});

test('a neck left uncut is named, and its cutter taken in the hand', async ({ page }) => {
  const [flared] = DEMO_PLANS.filter(({ plan }) => plan.implant.name === 'tapered-flared-30x11');
  // At 35 four tenths of a millimetre above the plan: the neck, 0.6 mm below the bone there, has met bone before.
  const script = {
    points: [
      { above: 6, torque: 4 },
      { above: 0.4, torque: 35 },
    ],
  };
  await openPanels(page);
  await press(page, en['place.seat']);
  await open(page, setWrench(drilledAsPlanned(flared.plan, false), script));
  await press(page, en['seat.begin']);
  await press(page, /^a whole turn/);
  await press(page, en['seat.by.wrench']);
  await press(page, new RegExp(`^${en['seat.toBestRound']}`));
  const { state } = await told(page);
  expect(state.cause?.reason).toBe('neck-uncut');
  await page.getByRole('button', { name: /^Back out and cut the neck deeper/ }).click();
  await page.getByText(en['hand.order']).waitFor();
  const mended = await planOf(page);
  expect(rehearsalOf(mended).hand?.tool).toEqual({ kind: 'neck', index: 0 });
  expect(nowOf(mended).state.phase).toBe('backed-out');
});

test('the teacher scripts the wrench, and drops the script', async ({ page }) => {
  await openPanels(page);
  await press(page, en['place.seat']);
  await open(page, setWrench(CASE, null));
  await page.locator('.seat-script summary').click();
  await press(page, en['seat.scriptMake']);
  await type(page, en['seat.scriptTorqueName'].replace('{point}', '3'), '31');
  await settled(page);
  const points = rehearsalOf(await planOf(page)).wrench?.points ?? [];
  expect(points).toHaveLength(4);
  expect(points[2].torque).toBe(31);
  expect(points[3].above).toBe(0);
  await press(page, en['seat.scriptDrop']);
  expect(rehearsalOf(await planOf(page)).wrench).toBeNull();
});
