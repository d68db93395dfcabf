import {
  type BudgetAt,
  budgetByDepth,
  type Coming,
  evenly,
  stepped,
  type Widening,
} from '../drilling/budget.ts';
import type { Drill, Kit } from '../drilling/kit.ts';
import { fittingNeck } from '../drilling/lastDrill.ts';
import { type Circles, circlesOf, VOID_ALLOWED } from '../drilling/outlook.ts';
import type { PassBody } from '../drilling/passBody.ts';
import { plannedBody } from '../drilling/plannedHole.ts';
import { envelopeOf } from '../implant/profile.ts';
import { totalLength } from '../implant/shape.ts';
import { type Drilling, drillingOf } from './drilling.ts';
import { kitOf, passBodies } from './inHand.ts';
import type { Plan } from './plan.ts';

/** The correction budget of the drill's pass made last; before any, of a pilot drill in the planned place. mm and degrees. */
export interface BudgetNow {
  /** Whether a pass has been made. */
  readonly drilled: boolean;
  /** Diameters of the pass, of the drill that comes next and of the last one. */
  readonly diameters: { readonly pass: number; readonly next: number; readonly last: number };
  /** Depth of the pass, and of the planned hole, below the bone entry. */
  readonly depth: number;
  readonly fullDepth: number;
  readonly circles: Circles;
  readonly rows: readonly BudgetAt[];
}

const STEP = 2;
const LEAST = 0.5;
/** How finely the union of tools and implant is looked at, mm. */
const FINE = 0.25;

/** Depths of the table, mm: every {@link STEP} down to near the planned full depth, and that. */
function depthsTo(full: number): number[] {
  const count = Math.max(0, Math.floor((full - LEAST) / STEP));
  return [...Array.from({ length: count }, (_, i) => STEP * (i + 1)), full];
}

/** Last drill and neck cutter together; null where no cutter is used. */
function neckWidening(plan: Plan, { chain }: Drilling, kit: Kit, last: Drill): Widening | null {
  const index = chain.neck && chain.neck.base > 0 ? fittingNeck(kit, plan.implant) : null;
  if (index === null || !chain.neck) return null;
  const neck = kit.necks[index].neckDiameter / 2;
  const { base } = chain.neck;
  return stepped(
    [0, base, base, chain.fullDepth],
    [chain.mouth / 2, neck, last.diameter / 2, last.diameter / 2],
  );
}

/** What the implant with the void that may stay beside it covers, together with the tools. */
function implantWidening(plan: Plan, { chain, site }: Drilling, tools: Widening): Widening {
  const envelope = envelopeOf(plan.implant);
  const radius = (depth: number): number => {
    const station = depth + site.shoulder;
    const covered =
      station > totalLength(plan.implant) ? 0 : envelope.radius(Math.max(0, station)) + VOID_ALLOWED;
    return Math.max(tools.radius(depth), covered);
  };
  const fine = Array.from({ length: Math.ceil(chain.fullDepth / FINE) }, (_, i) => FINE * (i + 1));
  return { radius, bends: [...tools.bends, ...fine] };
}

function comingOf(plan: Plan, drilling: Drilling, kit: Kit, next: Drill, last: Drill): Coming {
  const neck = neckWidening(plan, drilling, kit, last);
  const kitWide = evenly(last.diameter / 2);
  return {
    hand: evenly(next.diameter / 2),
    kit: kitWide,
    neck,
    implant: implantWidening(plan, drilling, neck ?? kitWide),
  };
}

/** The last pass of a drill: a neck cutter follows the hole and gives it no direction. */
const lastDrilled = (plan: Plan): PassBody | undefined =>
  passBodies(plan).findLast((body) => body.lowest < 0);

/** The pass that the budget is of, and the place of the drill that comes after it. */
function passOf(plan: Plan, { site, plan: order }: Drilling, kit: Kit): { body: PassBody; next: number } {
  const made = lastDrilled(plan);
  if (!made) {
    const stop = order.steps.find((step) => step.tool && step.depth > 0);
    return { body: plannedBody(site, kit.drills[0], stop?.depth ?? 0), next: 1 };
  }
  const wider = kit.drills.findIndex((drill) => drill.diameter > 2 * made.radius + 1e-9);
  return { body: made, next: wider < 0 ? kit.drills.length - 1 : wider };
}

/** The budget of a plan as it stands; null where there is no hole to be drilled. */
export function budgetNow(plan: Plan): BudgetNow | null {
  const drilling = drillingOf(plan);
  const index = drilling?.plan.last?.index;
  if (!drilling?.hole || index === undefined) return null;
  const kit = kitOf(plan);
  const { body, next } = passOf(plan, drilling, kit);
  const last = kit.drills[index];
  const after = kit.drills[Math.min(index, next)];
  const old = { radius: body.radius, depth: body.depth, point: -body.lowest };
  const { fullDepth } = drilling.chain;
  return {
    drilled: lastDrilled(plan) !== undefined,
    diameters: { pass: 2 * body.radius, next: after.diameter, last: last.diameter },
    depth: body.depth,
    fullDepth,
    circles: circlesOf(body, drilling.hole.drill),
    rows: budgetByDepth(old, comingOf(plan, drilling, kit, after, last), depthsTo(fullDepth)),
  };
}
