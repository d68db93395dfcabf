import { implantMesh } from '../core/implant/mesh.ts';
import type { ImplantShape } from '../core/implant/shape.ts';
import type { Plan } from '../core/plan/plan.ts';
import { solidOf } from './drill.ts';
import { type Belongs, type ModelResult, modelOf } from './model.ts';
import { type Kernel, withShelf } from './shelf.ts';

/** With its threads, or plain to the thread crests, which prints where a thread of half a millimetre does not. */
export type DummyKind = 'implant' | 'plain';

/** Columns round a dummy: within 0.001 mm of the round. */
const SEGMENTS = 128;
/** A foot to stand on: how far it stands out beyond the platform, how thick it is, and how far the dummy stands in it, mm. */
const FOOT = { beyond: 1, thick: 0.8, deep: 0.15 } as const;

/** The same shape without threads and flutes. */
export const plainShape = (shape: ImplantShape): ImplantShape => ({
  ...shape,
  thread: { ...shape.thread, depth: 0 },
  flutes: { count: 0, length: 0, depth: 0 },
});

/** How far the shape reaches coronal of its platform plane; 0: it stands on its platform, else it is given a foot. */
const coronalReach = ({ abutment, scallop }: ImplantShape): number =>
  Math.max(abutment?.height ?? 0, scallop);

/** The implant as a dummy, apex up, standing on its platform; on a foot to break off where abutment or scallop leave it nothing flat to stand on. */
export function dummyModel(kernel: Kernel, { implant, site }: Plan, kind: DummyKind): ModelResult {
  const shape = kind === 'plain' ? plainShape(implant) : implant;
  const reach = coronalReach(shape);
  return withShelf((shelf) => {
    const names = new Map<number, Belongs>();
    const body = shelf.keep(
      shelf.keep(solidOf(kernel, implantMesh(shape, { segments: SEGMENTS }).body)).asOriginal(),
    );
    names.set(body.originalID(), 'implant');
    let solid = shelf.keep(body.rotate([180, 0, 0]));
    if (reach > 0) {
      const radius = shape.platformDiameter / 2 + FOOT.beyond;
      const disc = shelf.keep(kernel.Manifold.cylinder(FOOT.thick, radius, radius, SEGMENTS));
      names.set(disc.originalID(), 'foot');
      const foot = shelf.keep(disc.translate([0, 0, FOOT.deep - FOOT.thick - reach]));
      solid = shelf.keep(solid.add(foot));
    }
    return modelOf({ kind, tooth: site.tooth, solid, names });
  });
}
