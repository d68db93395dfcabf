import { kitOf, rehearsalOf } from '../core/plan/inHand.ts';
import { type Messenger, type SolidWish, solidClient } from '../worker/client.ts';
import type { SolidAnswer } from '../worker/messages.ts';
import type { PlanStores } from './stores.ts';

/**
 * Keeps the drilled ridge in step with the passes: asks the modeller for a solid when they have changed, outside gestures, and puts what comes back into the live
 * state. `wake` starts the modeller when the first solid is wanted. Returns what ends it.
 */
export function followPasses({ document, live }: PlanStores, wake: () => Messenger): () => void {
  let ask: ((wish: SolidWish) => void) | null = null;
  let asked: SolidWish | null = null;
  const give = (answer: SolidAnswer) => {
    if (!asked || !answer.ok) return;
    const { positions, normals, triangles, removed } = answer;
    const { site, passes } = asked;
    live.set({ drilled: { site, passes, mesh: { positions, normals, triangles }, removed } });
  };
  const follow = () => {
    const { plan, gesture } = document.getState();
    const { passes } = rehearsalOf(plan);
    const kit = kitOf(plan);
    const known = asked?.passes === passes && asked.site === plan.site && asked.kit === kit;
    if (gesture || known) return;
    if (passes.length === 0) {
      asked = null;
      live.set({ drilled: null });
      return;
    }
    asked = { site: plan.site, kit, passes };
    ask ??= solidClient(wake(), give);
    ask(asked);
  };
  follow();
  return document.subscribe(follow);
}
