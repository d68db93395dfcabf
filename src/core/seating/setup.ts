import type { DrillSite } from '../drilling/drillSite.ts';
import { Hole } from '../drilling/hole.ts';
import type { Kit } from '../drilling/kit.ts';
import { isDrill, toolOf } from '../drilling/passBody.ts';
import type { Pass, WrenchScript } from '../drilling/rehearsal.ts';
import { takers } from '../drilling/takenUp.ts';
import { apicalCore, type ImplantShape } from '../implant/shape.ts';
import type { Placement } from '../measure/placement.ts';
import { biteLevel, placedAs, raised } from './bite.ts';
import { contactOf } from './contact.ts';
import { freeLevels, type Prepared } from './hindrance.ts';
import { playOf } from './play.ts';
import { poseAt, type SeatSetting, type SeatState } from './seat.ts';

/** The same hole without the passes that a wider one has taken up: quicker to ask. */
export function sparse(hole: Hole): Hole {
  const by = takers(hole.bodies);
  return new Hole(hole.bodies.filter((_, i) => by[i] === null));
}

/** What a list of passes has made for an implant: the deepest drill that lets the core of its apex in, and the deepest cut for the neck. */
export function preparedOf(kit: Kit, passes: readonly Pass[], shape: ImplantShape): Prepared {
  let hole = 0;
  let neck: Prepared['neck'] = null;
  for (const { tool: ref, depth } of passes) {
    const tool = toolOf(kit, ref);
    if (!tool) continue;
    if (!isDrill(tool)) {
      if (!neck || depth > neck.depth) neck = { cutter: tool, depth };
    } else if (tool.diameter >= 2 * apicalCore(shape) - 1e-9) hole = Math.max(hole, depth);
  }
  return { hole, neck };
}

/** More than this the hand does not lean an implant, whatever the hole allows, degrees: ours. */
const MOST_LEAN = 15;

export interface SeatChoice {
  readonly kit: Kit;
  readonly passes: readonly Pass[];
  readonly wrench: WrenchScript | null;
  readonly tolerance: number | null;
  readonly highest: number | null;
}

/**
 * What stands before the first act. `site`: of the implant on the axis it is to be screwed in along, at its planned level. Costs some tens of contacts;
 * `hole` is best {@link sparse}.
 */
export function seatSetting({ at, shoulder }: DrillSite, hole: Hole, choice: SeatChoice): SeatSetting {
  const { wrench, tolerance, highest, kit, passes } = choice;
  const bite = biteLevel(at, hole);
  const play = playOf(contactOf(raised(at, bite), hole)).tilt;
  const known = new Map<number, boolean>();
  const holds = (above: number): boolean => {
    const level = Math.round(above * 50) / 50;
    const seen = known.get(level) ?? playOf(contactOf(raised(at, level), hole)).code !== 'spins';
    known.set(level, seen);
    return seen;
  };
  return {
    shape: at.shape,
    tooth: at.anatomy.site.tooth,
    planned: at.pose,
    wrench,
    bite,
    tolerance,
    highest,
    free: freeLevels(at.shape, shoulder, preparedOf(kit, passes, at.shape)),
    play: Math.min(play, MOST_LEAN),
    holds,
  };
}

/** The implant as it stands in a state: for its contact and its readings. */
export const placedInState = (at: Placement, setting: SeatSetting, state: SeatState): Placement =>
  placedAs(at, poseAt(setting, state));
