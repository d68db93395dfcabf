import { kitOf, passesShown, rehearsalOf } from '../core/plan/inHand.ts';
import type { Plan } from '../core/plan/plan.ts';
import { drillClient, type Messenger } from '../worker/client.ts';
import type { DrillAnswer } from '../worker/messages.ts';
import type { PlanStores } from './stores.ts';

/** What the drilled ridge and the report hang on: the hand is not among it. */
const causesOf = (plan: Plan) => {
  const { spare, flap } = rehearsalOf(plan);
  return [
    plan.site,
    plan.implant,
    plan.pose,
    plan.fixing,
    plan.crestMargin,
    plan.limits,
    kitOf(plan),
    passesShown(plan),
    spare,
    flap,
  ] as const;
};

const same = (a: readonly unknown[], b: readonly unknown[]): boolean => a.every((part, i) => part === b[i]);

/**
 * Keeps the drilled ridge and its report in step with the passes: asks for them when something has changed, outside gestures, and puts what comes back into the
 * live state. `wake` starts the worker when it is first wanted. Returns what ends it.
 */
export function followPasses({ document, live }: PlanStores, wake: () => Messenger): () => void {
  let ask: ((plan: Plan) => void) | null = null;
  let asked: Plan | null = null;
  const give = (answer: DrillAnswer) => {
    if (!asked) return;
    if (answer.kind === 'report') live.set({ report: answer.report });
    if (answer.kind !== 'solid') return;
    const { positions, normals, triangles } = answer;
    const mesh = { positions, normals, triangles };
    live.set({ drilled: { site: asked.site, passes: passesShown(asked), mesh } });
  };
  const follow = () => {
    const { plan, gesture } = document.getState();
    const stepping = rehearsalOf(plan).shown !== null;
    if ((gesture && !stepping) || (asked && same(causesOf(asked), causesOf(plan)))) return;
    live.set({ report: null });
    if (passesShown(plan).length === 0) {
      asked = null;
      live.set({ drilled: null });
      return;
    }
    asked = plan;
    ask ??= drillClient(wake(), give);
    ask(plan);
  };
  follow();
  return document.subscribe(follow);
}
