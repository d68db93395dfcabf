import { inject } from 'vitest';
import { en } from '../../src/words/en.ts';
import { expect, listen, openBench, openPage, settled, test } from '../support/browser.ts';
import { openPanels } from '../support/place.ts';

interface Policies {
  trustedTypes?: { createPolicy: (name: string, rules: object) => unknown };
}

test('the built page draws under its policy, and nothing offends against it', async ({ page }) => {
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      console.error(`policy: ${event.violatedDirective} ${event.blockedURI}`);
    });
  });
  await openPage(page);
  const policy = await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content');
  // Source: the W3C's Content Security Policy Level 3 and Trusted Types, which name these directives.
  expect(policy).toContain("default-src 'self'");
  expect(policy).toContain("require-trusted-types-for 'script'");
  expect(policy).not.toMatch(/'unsafe-|https?:|\*/);
});

test('the policy is in force: no text becomes script, none becomes markup', async ({ page, complaints }) => {
  await openPanels(page);
  const refused = await page.evaluate(async () => {
    // What the driver itself evaluates is exempt until it gives way once.
    await new Promise(requestAnimationFrame);
    const attempts = [
      () => new Function('return 1')(),
      () => {
        document.createElement('div').innerHTML = '<b>x</b>';
      },
      () => new Worker('data:text/javascript,1'),
      () => (window as unknown as Policies).trustedTypes?.createPolicy('another', {}),
    ];
    return attempts.map((attempt) => {
      try {
        attempt();
        return 'done';
      } catch {
        return 'refused';
      }
    });
  });
  expect(refused).toEqual(['refused', 'refused', 'refused', 'refused']);
  expect(complaints.splice(0)).not.toEqual([]);
});

test('all fonts come with the page', async ({ page }) => {
  const hosts = new Set<string>();
  page.on('request', (request) => hosts.add(new URL(request.url()).origin));
  await openPanels(page);
  const loaded = await page.evaluate(async () => {
    const faces = [
      '500 15px Barlow',
      '600 16px "Barlow Semi Condensed"',
      'italic 600 16px "Source Serif 4 Variable"',
    ];
    const found = await Promise.all(faces.map((face) => document.fonts.load(face)));
    return found.map((fonts) => fonts.length);
  });
  expect(loaded).toEqual([1, 1, 1]);
  expect([...hosts]).toEqual([new URL(inject('page')).origin]);
});

test('a warning, an error and a fault of the page each fail a test', async ({ context }) => {
  const complaints: string[] = [];
  const page = await context.newPage();
  listen(page, complaints);
  await openPanels(page);
  expect(complaints).toEqual([]);
  const fault = page.waitForEvent('pageerror');
  await page.evaluate(() => {
    console.warn('a warning');
    console.error('an error');
    queueMicrotask(() => {
      throw new Error('a fault');
    });
  });
  await fault;
  expect(complaints).toEqual(['console: a warning', 'console: an error', 'fault: a fault']);
});

test('the page is mounted in strict mode', async ({ page }) => {
  await openBench(page, 'strict');
  // Source: React's manual, StrictMode: in development an effect runs, is undone and runs again.
  await expect.poll(() => page.locator('output').textContent()).toBe('2');
});

test('React has no complaint about the page in development', async ({ page }) => {
  await openBench(page, 'page');
  await settled(page);
  expect(await page.locator('canvas').count()).toBe(1);
});

for (const part of ['sentence', 'rail', 'stage', 'section', 'profile', 'readings']) {
  test(`${part}: a fault there leaves the rest alive and can be tried again`, async ({
    page,
    complaints,
  }) => {
    await openBench(page, `broken-${part}`);
    expect(complaints.splice(0).join()).toContain(`${part} is broken on purpose`);

    const alive = page.locator('[data-part]');
    expect(await alive.count()).toBe(5);
    for (const button of await alive.all()) await button.click();
    expect(await alive.allTextContents()).toEqual(['1', '1', '1', '1', '1']);

    const message = page.getByRole('alert');
    expect(await message.textContent()).toContain('Everything else goes on');
    await page.evaluate(() => document.documentElement.dispatchEvent(new Event('mend')));
    await message.getByRole('button', { name: en['panel.retry'] }).click();
    expect(await alive.count()).toBe(6);
    expect(await message.count()).toBe(0);
    expect((await alive.allTextContents()).sort()).toEqual(['0', '1', '1', '1', '1', '1']);
  });
}

test('without WebGL the page says so and the rest stands', async ({ page }) => {
  await openPanels(page);
  expect(await page.getByText(en['stage.noGraphics']).isVisible()).toBe(true);
  expect(await page.getByText(en['title.cautionText']).isVisible()).toBe(true);
});
