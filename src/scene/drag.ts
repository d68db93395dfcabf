import type { Vec3 } from '../core/geometry/vec.ts';
import type { Pivot } from '../core/plan/edits.ts';
import type { Plan } from '../core/plan/plan.ts';
import type { Point } from '../marks/path.ts';
import { evaluationOf } from '../state/evaluation.ts';
import type { PlanStores } from '../state/stores.ts';
import { HANDLE, type HandleId, tiltReach } from './handles.ts';
import type { Lens } from './lens.ts';
import { solveAmounts } from './solve.ts';

/** One drag of a handle, from the press to the release; one undo step. */
export interface Drag {
  readonly id: HandleId;
  /** The hand is here now, px of the picture. */
  readonly move: (hand: Point) => void;
  readonly end: () => void;
  readonly cancel: () => void;
}

/** To whole steps; `step` is 10 to a power, and dividing by its inverse leaves no arithmetic noise in the last digit. */
const rounded = (value: number, step: number): number => {
  const inverse = Math.round(1 / step);
  return inverse >= 1 ? Math.round(value * inverse) / inverse + 0 : Math.round(value / step) * step + 0;
};

/** Begins a drag. The lens stays as it is at the press: the camera does not move while a hand holds a handle. */
export function beginDrag(
  { document, session, live }: PlanStores,
  id: HandleId,
  lens: Lens,
  hand: Point,
): Drag {
  const handle = HANDLE[id];
  const start: Plan = document.getState().plan;
  const pivot: Pivot = session.getState().pivot;
  const reach = tiltReach(start, pivot);
  const { toJaw } = evaluationOf(start).anatomy;
  const shown = (plan: Plan): Point => lens.at(toJaw(handle.grip(plan, pivot, reach) as Vec3));
  const held = shown(start);
  const off = { x: hand.x - held.x, y: hand.y - held.y };
  let amounts: number[] = handle.freedoms === 1 ? [0] : [0, 0];
  let shownAmounts = amounts;
  document.beginGesture(handle.say([0, 0]));
  live.set({ dragging: id, hover: id });

  const finish = (close: () => void) => {
    close();
    live.set({ dragging: null });
  };
  return {
    id,
    move: (now) => {
      const wanted = { x: now.x - off.x, y: now.y - off.y };
      amounts = solveAmounts((x) => shown(handle.apply(start, x, pivot)), amounts, wanted, handle.try);
      const next = amounts.map((v) => rounded(v, handle.step));
      if (next.every((v, k) => v === shownAmounts[k])) return;
      shownAmounts = next;
      document.updateGesture((from) => handle.apply(from, next, pivot));
    },
    end: () => finish(() => document.endGesture(handle.say(shownAmounts))),
    cancel: () => finish(() => document.cancelGesture()),
  };
}
