import type { Manifold } from 'manifold-3d';
import type { Anatomy } from '../core/anatomy/anatomy.ts';
import { siteInJaw } from '../core/anatomy/jawFrame.ts';
import { FINE_TOOTH, shownTeeth } from '../core/anatomy/section.ts';
import type { PlacedTooth } from '../core/anatomy/teeth.ts';
import { placedToothMeshes } from '../core/anatomy/toothMeshes.ts';
import type { PassBody } from '../core/drilling/passBody.ts';
import type { Placed } from '../core/geometry/carry.ts';
import { dot } from '../core/geometry/vec.ts';
import { drillingOf } from '../core/plan/drilling.ts';
import { solidsOf } from '../core/plan/evaluate.ts';
import { passBodies } from '../core/plan/inHand.ts';
import type { Plan } from '../core/plan/plan.ts';
import { boneSolid } from './bone.ts';
import { passSolid, solidOf } from './drill.ts';
import { type Belongs, type ModelResult, modelOf, type NoModel } from './model.ts';
import { type Kernel, Shelf, withShelf } from './shelf.ts';

/** The base is cut so far coronal of the floor's plane, mm: a cut in the very plane of the ridge's foot would leave edges that lie on one another. */
export const BASE = 0.05;
/** How far the root of a further tooth reaches into the bone, mm. */
export const STUB = 2.5;

/** A practice model is the ridge with its neighbours. */
export type PracticeKind = 'ridge' | 'drilled' | 'planned';

/** What is drilled out of a practice model, or why there is nothing to drill. */
function bodiesOf(plan: Plan, kind: PracticeKind): readonly PassBody[] | NoModel {
  if (kind === 'ridge') return [];
  if (kind === 'drilled') {
    const made = passBodies(plan);
    return made.length > 0 ? made : { code: 'no-passes' };
  }
  const hole = drillingOf(plan)?.hole;
  if (!hole) return { code: 'no-hole' };
  return hole.neck ? [hole.drill, hole.neck] : [hole.drill];
}

const matrixOf = ({ ex, ey, ez, origin }: Placed) =>
  [...ex, 0, ...ey, 0, ...ez, 0, ...origin, 1] as Parameters<Manifold['transform']>[0];

/** Puts solids together on a shelf, and remembers which surface came from what. */
class Assembly {
  readonly names = new Map<number, Belongs>();

  constructor(
    private readonly kernel: Kernel,
    private readonly shelf: Shelf,
  ) {}

  named(solid: Manifold, name: Belongs): Manifold {
    const own = this.shelf.keep(this.shelf.keep(solid).asOriginal());
    this.names.set(own.originalID(), name);
    return own;
  }

  joined = (parts: readonly Manifold[]): Manifold => this.shelf.keep(this.kernel.Manifold.union([...parts]));

  less = (whole: Manifold, parts: readonly Manifold[]): Manifold =>
    this.shelf.keep(this.kernel.Manifold.difference([whole, ...parts]));

  /** Crown and root of a drawn tooth. Nothing is measured to a further tooth's root: as much of it as holds its crown is enough, and none comes through the bone. */
  tooth(anatomy: Anatomy, tooth: PlacedTooth) {
    const { mesial, distal } = anatomy.teeth;
    const name = `tooth-${tooth.code}` as const;
    const { crown, root } = placedToothMeshes(tooth, FINE_TOOTH);
    const whole = this.shelf.keep(solidOf(this.kernel, root));
    const { a, origin, numbers } = tooth;
    const stub = () => whole.trimByPlane([...a], dot(a, origin) - numbers.cejAboveBone - STUB);
    return {
      crown: this.named(solidOf(this.kernel, crown), name),
      root: this.named(tooth === mesial || tooth === distal ? whole : stub(), name),
    };
  }
}

/** What all practice models of a site begin with: bone with the roots in it, and the crowns. */
interface Undrilled {
  readonly kernel: Kernel;
  readonly anatomy: Anatomy;
  readonly shelf: Shelf;
  readonly jaw: Manifold;
  readonly crowns: readonly Manifold[];
  readonly names: ReadonlyMap<number, Belongs>;
}

function makeUndrilled(kernel: Kernel, anatomy: Anatomy): Undrilled {
  const shelf = new Shelf();
  const assembly = new Assembly(kernel, shelf);
  const teeth = shownTeeth(anatomy).map((tooth) => assembly.tooth(anatomy, tooth));
  const bone = assembly.named(boneSolid(kernel, shelf, anatomy), 'bone');
  const jaw = assembly.joined([bone, ...teeth.map(({ root }) => root)]);
  return { kernel, anatomy, shelf, jaw, crowns: teeth.map(({ crown }) => crown), names: assembly.names };
}

let latest: Undrilled | null = null;

/** The same for all models of the site that was asked for last; another site takes its place. */
function undrilled(kernel: Kernel, anatomy: Anatomy): Undrilled {
  if (latest?.kernel === kernel && latest.anatomy === anatomy) return latest;
  latest?.shelf.free();
  latest = null;
  latest = makeUndrilled(kernel, anatomy);
  return latest;
}

/**
 * The ridge with the neighbours that are drawn, as one body to print, standing on the floor's plane, crowns up (rules S1 to S14; no gum). What is drilled is drilled
 * out of bone and roots alone; the crowns are put on afterwards, so that a tool's way in from above leaves them whole. Cost: about a second for the first of a site.
 */
export function practiceModel(kernel: Kernel, plan: Plan, kind: PracticeKind): ModelResult {
  const bodies = bodiesOf(plan, kind);
  if ('code' in bodies) return { ok: false, why: bodies };
  const anatomy = solidsOf(plan.site);
  const { jaw, crowns, names } = undrilled(kernel, anatomy);
  return withShelf((shelf) => {
    const assembly = new Assembly(kernel, shelf);
    const holes = bodies.map((body) => assembly.named(passSolid(kernel, body), 'hole'));
    const drilled = holes.length > 0 ? assembly.less(jaw, holes) : jaw;
    const whole = assembly.joined([drilled, ...crowns]);
    const based = shelf.keep(whole.trimByPlane([0, 0, 1], anatomy.ridge.floor + BASE));
    const upright = shelf.keep(based.transform(matrixOf(siteInJaw(anatomy))));
    const surfaces = new Map([...names, ...assembly.names]);
    return modelOf({ kind, tooth: plan.site.tooth, solid: upright, names: surfaces });
  });
}
