import type { ToolRef } from '../drilling/kit.ts';
import { fittingNeck } from '../drilling/lastDrill.ts';
import type { Hindrance } from '../seating/hindrance.ts';
import { drillingOf } from './drilling.ts';
import { kitOf, passesShown } from './inHand.ts';
import type { Plan } from './plan.ts';
import { takeTool } from './rehearse.ts';
import { backOut } from './seat.ts';

const drill = (index: number): ToolRef => ({ kind: 'drill', index });

/** Index of the widest drill that has made a pass; −1: none. */
const widestMade = (plan: Plan): number => {
  const { drills } = kitOf(plan);
  return passesShown(plan).reduce(
    (widest, { tool: { kind, index } }) =>
      kind === 'drill' && (widest < 0 || drills[index].diameter > drills[widest].diameter) ? index : widest,
    -1,
  );
};

/**
 * The tool that takes away what has stopped the implant at its maximum: the neck cutter that fits (or the last that was used), the last drill for a hole too short, the
 * next wider one for hard bone while it is narrower than the implant. Null: the kit has none.
 */
export function mendingTool(plan: Plan, reason: Hindrance): ToolRef | null {
  const kit = kitOf(plan);
  const made = widestMade(plan);
  if (reason === 'hole-short') {
    const planned = drillingOf(plan)?.plan.last?.index ?? -1;
    return made < 0 && planned < 0 ? null : drill(Math.max(made, planned));
  }
  if (reason === 'neck-uncut') {
    const used = passesShown(plan).findLast(({ tool }) => tool.kind === 'neck')?.tool;
    const fits = fittingNeck(kit, plan.implant);
    return used ?? (fits === null ? null : { kind: 'neck', index: fits });
  }
  const wider = kit.drills[made + 1];
  return wider && wider.diameter < plan.implant.implantedDiameter ? drill(made + 1) : null;
}

/** Backs out and takes a tool in the hand: what was seated so far has been seated in the hole as it was. */
export const backOutAndTake = (plan: Plan, tool: ToolRef): Plan => takeTool(backOut(plan), tool);
