import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const SCRIPT = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Axe {
  run: (within: string) => Promise<{
    violations: { id: string; nodes: { target: unknown[]; failureSummary?: string }[] }[];
  }>;
}

/** Brings axe-core 4 (WCAG 2.2 A and AA, and its best practices) into a page before it is opened, past its policy. */
export const withAxe = (page: Pick<Page, 'addInitScript'>): Promise<unknown> =>
  page.addInitScript({ content: SCRIPT });

/** What axe finds on the page as it stands, or within a part of it, one line each. */
export const axeFindings = (page: Page, within = 'html'): Promise<string[]> =>
  page.evaluate(async (part) => {
    const { axe } = window as unknown as { axe: Axe };
    const { violations } = await axe.run(part);
    return violations.flatMap(({ id, nodes }) =>
      nodes.map(({ target, failureSummary }) => `${id}: ${target.join(' ')} ${failureSummary}`),
    );
  }, within);
