import { platformOf } from '../core/geometry/pose.ts';
import { add, type Vec3 } from '../core/geometry/vec.ts';
import { advance, type Pivot, shift, tiltTo, turn } from '../core/plan/edits.ts';
import type { Plan } from '../core/plan/plan.ts';
import { evaluationOf } from '../state/evaluation.ts';
import type { Hand } from '../state/session.ts';
import { sayAdvance, sayShift, sayTilt, sayTurn } from '../words/sayEdit.ts';
import type { Lens } from './lens.ts';

/** What a key does to a plan, from wherever it is; `say` names `times` of it. */
export interface Nudge {
  readonly change: (plan: Plan, times: number) => Plan;
  readonly say: (times: number) => string;
}

/** Steps of a press: plain, fine (Shift), coarse (Ctrl or Cmd); mm and degrees. */
const STEP = {
  mm: { plain: 0.1, fine: 0.01, coarse: 0.5 },
  deg: { plain: 1, fine: 0.1, coarse: 5 },
} as const;
export type Size = 'plain' | 'fine' | 'coarse';

/** In the standard views facial runs across the picture; only where mesial does so much more clearly does it take that place. */
const PREFERRED = 1.4;

/** Which way the arrows move on the picture: the mesial and facial share of a press to the right, and of one upward. */
export function arrowWays(plan: Plan, lens: Lens): Record<'right' | 'up', readonly [m: number, f: number]> {
  const { toJaw } = evaluationOf(plan).anatomy;
  const here = platformOf(plan.pose);
  const at = (p: Vec3) => lens.at(toJaw(p));
  const from = at(here);
  const seen = (way: Vec3) => {
    const to = at(add(here, way));
    return { right: to.x - from.x, up: from.y - to.y };
  };
  const [m, f] = [seen([1, 0, 0]), seen([0, 1, 0])];
  const facialAcross = Math.abs(f.right) + Math.abs(m.up);
  const mesialAcross = Math.abs(m.right) + Math.abs(f.up);
  const sign = (v: number): number => (v < 0 ? -1 : 1);
  return facialAcross * PREFERRED >= mesialAcross
    ? { right: [0, sign(f.right)], up: [sign(m.up), 0] }
    : { right: [sign(m.right), 0], up: [0, sign(f.up)] };
}

const tilted = (plan: Plan, m: number, f: number, pivot: Pivot): Plan => {
  const { mesiodistal, faciopalatal } = plan.pose.tilt;
  return tiltTo(plan, { mesiodistal: mesiodistal + m, faciopalatal: faciopalatal + f }, pivot);
};

const ARROWS: Readonly<Record<string, readonly ['right' | 'up', 1 | -1]>> = {
  ArrowRight: ['right', 1],
  ArrowLeft: ['right', -1],
  ArrowUp: ['up', 1],
  ArrowDown: ['up', -1],
};

/** The nudge of a key on the stage, or null. Arrows move what they seem to move on the picture. */
export function nudgeOf(
  key: string,
  size: Size,
  hand: Hand,
  pivot: Pivot,
  plan: Plan,
  lens: Lens,
): Nudge | null {
  const [mm, deg] = [STEP.mm[size], STEP.deg[size]];
  const arrow = ARROWS[key];
  if (arrow) {
    const [m, f] = arrowWays(plan, lens)[arrow[0]].map((share) => share * arrow[1]);
    return hand === 'shift'
      ? {
          change: (at, n) => shift(at, m * mm * n, f * mm * n),
          say: (n) => sayShift(m * mm * n, f * mm * n),
        }
      : {
          change: (at, n) => tilted(at, m * deg * n, f * deg * n, pivot),
          say: (n) => sayTilt(m * deg * n, f * deg * n),
        };
  }
  const depth = { PageDown: mm, PageUp: -mm }[key];
  if (depth !== undefined) {
    return { change: (at, n) => advance(at, depth * n), say: (n) => sayAdvance(depth * n) };
  }
  const by = { ']': deg, '[': -deg }[key];
  return by === undefined ? null : { change: (at, n) => turn(at, by * n), say: (n) => sayTurn(by * n) };
}
