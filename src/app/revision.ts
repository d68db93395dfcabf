import type { LiveStore } from '../state/live.ts';

export interface DrawnLedger {
  /** This part of the page now shows that revision. */
  drawn: (part: Part, revision: number) => void;
  /** This part shows nothing and need not be waited for. */
  absent: (part: Part) => void;
}

type Part = 'panels' | 'stage';

/**
 * Writes on the page's root element which revision is the newest (`data-revision`) and which one all parts
 * show (`data-drawn`). Equal numbers mean that everything on screen is up to date; whoever drives the page
 * waits for that, never for time.
 */
export function exposeRevision(root: HTMLElement, live: LiveStore): DrawnLedger {
  const shown = new Map<Part, number>([
    ['panels', -1],
    ['stage', -1],
  ]);
  const write = () => {
    root.dataset.drawn = `${Math.min(...shown.values())}`;
  };
  const announce = () => {
    root.dataset.revision = `${live.getState().revision}`;
  };
  announce();
  live.subscribe(announce);
  return {
    drawn: (part, revision) => {
      shown.set(part, revision);
      write();
    },
    absent: (part) => {
      shown.delete(part);
      write();
    },
  };
}
