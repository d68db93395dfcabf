/**
 * Second opinions on the crown group: three-mesh-bvh for the exit of the axis, on finer meshes than the core's; manifold-3d for what is ground off an abutment, from
 * distances by three-mesh-bvh. Random poses, seeds fixed.
 */
import { describe, expect, it } from 'vitest';
import { plannedCrownInPlace, toothInPlace } from '../../src/core/anatomy/toothMeshes.ts';
import { broughtInto, type Placed, turnedInto } from '../../src/core/geometry/carry.ts';
import type { TriangleMesh } from '../../src/core/geometry/mesh.ts';
import { add, along, distance, type Vec3 } from '../../src/core/geometry/vec.ts';
import { Placement } from '../../src/core/measure/placement.ts';
import { defaultSite } from '../../src/core/plan/defaults.ts';
import { solidsOf } from '../../src/core/plan/evaluate.ts';
import { planAlongCrown } from '../../src/core/plan/newPlan.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { crownClearance, guidanceOf } from '../../src/core/restoration/guidance.ts';
import { plannedCrownOf } from '../../src/core/restoration/plannedCrown.ts';
import { restore } from '../../src/core/restoration/restoration.ts';
import { Traced } from '../support/rays.ts';
import { checkReductions, poses, shape } from '../support/reductionCheck.ts';

const placed = (plan: Plan) => new Placement(solidsOf(plan.site), plan.implant, plan.pose, plan.crestMargin);

describe('exit of the axis', () => {
  it.each([
    [11, { columns: 240, rings: 144 }, 0.01],
    [12, { columns: 240, rings: 144 }, 0.01],
    [13, { columns: 240, rings: 144 }, 0.01],
    // A premolar's exit is carried on to its form but down on the wall, whose facets are up to 0.04 off.
    [14, { columns: 160, rings: 96 }, 0.05],
  ] as const)(
    '%d: where rays come out of a finer mesh (three-mesh-bvh), to 0.01 mm beside it (a premolar’s 0.05)',
    (tooth, fine, most) => {
      const anatomy = solidsOf(
        planAlongCrown(defaultSite(tooth), shape('tapered-straight-35x11'), 'screw-gum', '').site,
      );
      const { mesh, frame } = plannedCrownInPlace(anatomy, fine);
      const traced = new Traced(mesh);
      const off: number[] = [];
      const beside: number[] = [];
      for (const plan of poses(tooth, 'tapered-straight-35x11', 50, 1.2, 10)) {
        const at = placed(plan);
        const { access } = restore({
          placement: at,
          crown: plannedCrownOf(at.anatomy),
          fixing: 'screw-gum',
          limits: {},
        });
        // From far apical of the crown every second crossing comes out.
        const start = along(at.platform, at.a, -40);
        const hits = traced.hits(broughtInto(frame, start), turnedInto(frame, at.a)).map((d) => d - 40);
        const out = hits.find((d, i) => i % 2 === 1 && d > 0);
        if (hits.length % 2 === 1) continue;
        if (out === undefined) expect(access).toBeNull();
        else {
          off.push(access ? distance(access.exit, along(at.platform, at.a, out)) : Infinity);
          beside.push(access ? traced.distance(broughtInto(frame, access.exit)) : Infinity);
        }
      }
      off.sort((a, b) => a - b);
      beside.sort((a, b) => a - b);
      console.info(
        `exit ${tooth}: beside the surface ${beside[beside.length >> 1]}, worst ${beside.at(-1)}; ${off.length} poses, median ${off[off.length >> 1]}, worst ${off.at(-1)} mm`,
      );
      expect(off.length).toBeGreaterThan(35);
      expect(beside[beside.length >> 1]).toBeLessThan(0.002);
      expect(beside.at(-1)).toBeLessThan(most);
      // Along the axis it is more where the axis grazes the wall: half of the poses keep the bound there too.
      expect(off[Math.floor(0.5 * off.length)]).toBeLessThan(most);
    },
    120_000,
  );
});

describe('the lower incisors on their way forward', () => {
  const anatomy = solidsOf(defaultSite(12));
  const { moves, edges, round } = guidanceOf(anatomy);

  /** Least distance of the moved edges' surfaces to a crown; negative inside. */
  const least = ({ mesh, frame }: { mesh: TriangleMesh; frame: Placed }, move: Vec3): number => {
    const traced = new Traced(mesh);
    return Math.min(
      ...edges.map((p) => {
        const q = broughtInto(frame, add(p, move));
        return (traced.holds(q) ? -1 : 1) * traced.distance(q) - round;
      }),
    );
  };

  it('touch the neighbouring incisor all the way and never enter it (three-mesh-bvh)', () => {
    const { crown: mesh, frame } = toothInPlace(anatomy.teeth.mesial);
    const gaps = moves.map((move) => least({ mesh, frame }, move));
    // The walls are looked at in points a third of a millimetre apart.
    expect(Math.min(...gaps)).toBeGreaterThan(-0.1);
    expect(Math.max(...gaps)).toBeLessThan(0.1);
    const [first, last] = [moves[0], moves[moves.length - 1]];
    expect(distance(first, last)).toBeGreaterThan(2);
  });

  it('come as near to the planned crown as is read (three-mesh-bvh)', () => {
    const crown = plannedCrownOf(anatomy);
    const found = Math.min(...moves.map((move) => least(crown, move)));
    expect(found).toBeGreaterThan(0);
    expect(Math.abs((crownClearance(anatomy, crown).crown?.value ?? Infinity) - found)).toBeLessThan(0.01);
  });
});

describe('what is ground off a one-piece abutment', () => {
  it('is what manifold-3d takes off it', async () => {
    const { rows, said } = await checkReductions(8);
    console.info(said);
    expect(rows.filter((row) => row.theirs > 1).length).toBeGreaterThan(8);
    expect(rows.filter((row) => row.palatal).length).toBeGreaterThan(4);
  }, 300_000);
});
