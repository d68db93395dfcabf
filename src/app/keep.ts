import type { Plan } from '../core/plan/plan.ts';
import { holdAlone } from '../io/keep/holdAlone.ts';
import { browserShelf } from '../io/keep/shelf.ts';
import type { DocumentStore } from '../state/document.ts';
import { type Keeping, keepDocument } from '../state/kept.ts';

export interface Recovered {
  /** The plan that was kept last on this machine, or null. */
  readonly plan: Plan | null;
  /** Goes on keeping from there. */
  readonly follow: (document: DocumentStore<Plan>) => Keeping;
}

/** A kept text as a plan; null: no plan of this program, or what reads plans could not be loaded. */
async function planOf(text: string): Promise<Plan | null> {
  try {
    const { parsePlanFile } = await import('../io/planFile.ts');
    const read = parsePlanFile(text);
    return read.ok ? read.plan : null;
  } catch {
    return null;
  }
}

const isOwn = async (plan: Plan): Promise<boolean> => {
  try {
    return (await import('../io/plans.ts')).comesWithProgram(plan);
  } catch {
    return false;
  }
};

/** What lies on this machine, and this tab's right to write over it. Never throws: where nothing can be stored, nothing lies there. */
export async function recover(): Promise<Recovered> {
  const shelf = browserShelf();
  const [hold, { slot, damaged }] = await Promise.all([holdAlone('ridgewright.plan'), shelf.read()]);
  const plan = slot && (await planOf(slot.text));
  // What cannot be read now, perhaps by a newer program only, is put aside.
  if (slot && !plan) await shelf.remember(slot.text, Date.now());
  return {
    plan,
    follow: (document) =>
      keepDocument(document, {
        shelf,
        revision: slot?.revision ?? 0,
        damaged,
        hold,
        now: Date.now,
        isOwn,
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
