import type { Plan } from '../core/plan/plan.ts';
import { holdAlone } from '../io/keep/holdAlone.ts';
import { browserShelf } from '../io/keep/shelf.ts';
import { parsePlanFile, printPlanFile } from '../io/planFile.ts';
import type { StoredPlan } from '../io/plans.ts';
import type { DocumentStore } from '../state/document.ts';
import { type Keeping, keepDocument } from '../state/kept.ts';

export interface Recovered {
  /** The plan that was kept last on this machine, or null. */
  readonly plan: Plan | null;
  /** Goes on keeping from there. */
  readonly follow: (document: DocumentStore<Plan>) => Keeping;
}

/** What lies on this machine, and this tab's right to write over it. Never throws: where nothing can be stored, nothing lies there. */
export async function recover(own: readonly StoredPlan[]): Promise<Recovered> {
  const shelf = browserShelf();
  const [hold, { slot, damaged }] = await Promise.all([holdAlone('ridgewright.plan'), shelf.read()]);
  const read = slot && parsePlanFile(slot.text);
  // What only a newer program can read is put aside for it.
  if (slot && !read?.ok) await shelf.remember(slot.text, Date.now());
  const texts = new Set(own.map(({ plan }) => printPlanFile(plan)));
  return {
    plan: read?.ok ? read.plan : null,
    follow: (document) =>
      keepDocument(document, {
        shelf,
        revision: slot?.revision ?? 0,
        damaged,
        hold,
        now: Date.now,
        isOwn: (plan) => texts.has(printPlanFile(plan)),
      }),
  };
}

/** Writes on the root element how keeping stands (`data-keep`) and the newest state that is kept (`data-kept`): whoever drives the page waits for these. */
export function exposeKeeping(root: HTMLElement, keeping: Keeping): void {
  const write = () => {
    const { status, revision } = keeping.getState();
    root.dataset.keep = status;
    root.dataset.kept = `${revision}`;
  };
  write();
  keeping.subscribe(write);
}
