import type { Page } from 'playwright-core';

/** What a hand can do to the page, however it does it: everything is named as it is read out. */
export interface Hand {
  /** What is never used. Names of events that a person's device makes. */
  readonly never: readonly string[];
  press: (page: Page, name: string | RegExp) => Promise<void>;
  /** Changes a number by so many of its steps, up or down. */
  step: (page: Page, name: string, times: number) => Promise<void>;
}

type Role = 'button' | 'spinbutton';

const named = (page: Page, role: Role, name: string | RegExp) => page.getByRole(role, { name, exact: true });

/** More stops than the page has. */
const STOPS = 150;

/** Goes to a control by the Tab key, and by arrows inside the table, of which the Tab key reaches one row. */
async function reach(page: Page, role: Role, name: string | RegExp): Promise<void> {
  const wanted = named(page, role, name);
  const place = () =>
    wanted.evaluate((one) => {
      const focused = document.activeElement;
      const table = one.closest('table');
      if (one === focused) return 'there';
      return table !== null && table === focused?.closest('table') ? 'in its table' : 'elsewhere';
    });
  for (let i = 0; i < STOPS; i++) {
    const at = await place();
    if (at === 'there') return;
    await page.keyboard.press(at === 'in its table' ? 'ArrowDown' : 'Tab');
  }
  throw new Error(`the keyboard does not reach ${name}`);
}

/** Tab, arrows and Enter. */
export const keyboard: Hand = {
  never: ['pointerdown', 'mousedown', 'touchstart'],
  press: async (page, name) => {
    await reach(page, 'button', name);
    await page.keyboard.press('Enter');
  },
  step: async (page, name, times) => {
    await reach(page, 'spinbutton', name);
    for (let i = 0; i < Math.abs(times); i++) await page.keyboard.press(times > 0 ? 'ArrowUp' : 'ArrowDown');
  },
};

/** Single presses of a pointer, each where it is, and no key. */
export const pointer: Hand = {
  never: ['keydown', 'dblclick', 'dragstart', 'pointer dragged', 'wheel'],
  press: (page, name) => named(page, 'button', name).click(),
  step: async (page, name, times) => {
    const way = named(page, 'button', `${name}: ${times > 0 ? 'more' : 'less'}`);
    for (let i = 0; i < Math.abs(times); i++) await way.click();
  },
};

/** How a screen reader lists a control: its role and its name in quotation marks. */
async function listed(page: Page, role: Role, name: string | RegExp): Promise<void> {
  const tree = await page.locator('body').ariaSnapshot();
  const line = new RegExp(`^\\s*- '?${role} "([^"]*)"`);
  const names = tree.split('\n').flatMap((one) => line.exec(one)?.[1] ?? []);
  const found = names.filter((one) => (typeof name === 'string' ? one === name : name.test(one)));
  if (found.length !== 1) throw new Error(`${found.length} of ${role} “${name}” in the accessibility tree`);
}

/** Through the accessibility tree alone: found by role and name, and acted on by what the role promises. */
export const tree: Hand = {
  never: ['pointerdown', 'mousedown', 'touchstart'],
  press: async (page, name) => {
    await listed(page, 'button', name);
    await named(page, 'button', name).press('Enter');
  },
  step: async (page, name, times) => {
    await listed(page, 'spinbutton', name);
    const key = times > 0 ? 'ArrowUp' : 'ArrowDown';
    for (let i = 0; i < Math.abs(times); i++) await named(page, 'spinbutton', name).press(key);
  },
};

/** Counts, from before the page's first script, the events by which a hand gives itself away. */
export const watchHand = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    const seen: Record<string, number> = {};
    Object.assign(window, { handSeen: seen });
    const count = (name: string) => {
      seen[name] = (seen[name] ?? 0) + 1;
    };
    const watched = ['pointerdown', 'mousedown', 'touchstart', 'keydown', 'dblclick', 'dragstart', 'wheel'];
    for (const name of watched) window.addEventListener(name, () => count(name), true);
    window.addEventListener('pointermove', ({ buttons }) => buttons !== 0 && count('pointer dragged'), true);
  });

export const handSeen = (page: Page): Promise<Record<string, number>> =>
  page.evaluate(() => (window as unknown as { handSeen: Record<string, number> }).handSeen);
