import type { Manifold, ManifoldToplevel } from 'manifold-3d';
import type { Anatomy } from '../../src/core/anatomy/anatomy.ts';
import { canalMesh } from '../../src/core/anatomy/canalMesh.ts';
import { ridgeMesh } from '../../src/core/anatomy/ridgeMesh.ts';
import type { Socket } from '../../src/core/anatomy/socket.ts';
import { GENERIC_KIT } from '../../src/core/drilling/genericKit.ts';
import { type Kit, pointLength } from '../../src/core/drilling/kit.ts';
import { sweptHull } from '../../src/core/drilling/outline.ts';
import { PassBody } from '../../src/core/drilling/passBody.ts';
import type { DrillPose, Pass, Press } from '../../src/core/drilling/rehearsal.ts';
import type { TriangleMesh } from '../../src/core/geometry/mesh.ts';
import { axisOf, entryOf } from '../../src/core/geometry/pose.ts';
import { along, cross, dot, scale, sub, unit, type Vec3 } from '../../src/core/geometry/vec.ts';
import type { Plan } from '../../src/core/plan/plan.ts';

/** Numbers of a pass on a slab; upright in the middle, 10 mm deep, with the 2.0 drill, unless they say otherwise. */
export interface PassNumbers {
  readonly drill?: number;
  readonly neck?: number;
  readonly m?: number;
  readonly f?: number;
  readonly fp?: number;
  readonly md?: number;
  readonly depth?: number;
  readonly press?: Press | null;
}

export const poseOf = (m = 0, f = 0, fp = 0, md = 0): DrillPose => ({
  mouth: { m, f },
  tilt: { faciopalatal: fp, mesiodistal: md },
});

export const passOf = (n: PassNumbers = {}): Pass => ({
  tool: n.neck === undefined ? { kind: 'drill', index: n.drill ?? 0 } : { kind: 'neck', index: n.neck },
  pose: poseOf(n.m, n.f, n.fp, n.md),
  depth: n.depth ?? 10,
  press: n.press ?? null,
  speed: 1000,
  irrigated: true,
});

type Random = () => number;

const between = (random: Random, lo: number, hi: number): number => lo + (hi - lo) * random();

/** The drill's pose that a plan means. */
export function plannedPose({ pose }: Plan): DrillPose {
  const [m, f] = entryOf(pose);
  return { mouth: { m, f }, tilt: pose.tilt };
}

/** A pass of the generic kit about a plan's axis, off it as a hand may be; the numbers are invented. */
export function randomPass(random: Random, plan: Plan, drill: number): Pass {
  const { mouth, tilt } = plannedPose(plan);
  const shape = random();
  const move = between(random, -0.9, 0.9);
  const press: Press | null =
    shape < 0.55
      ? null
      : {
          toward: between(random, 0, 360),
          mouth: move,
          bottom: shape < 0.75 ? move : shape < 0.9 ? 0 : -move / 3,
        };
  const neck = shape > 0.35 && shape < 0.55 && drill > 1;
  return {
    tool: neck ? { kind: 'neck', index: Math.floor(4 * random()) } : { kind: 'drill', index: drill },
    pose: {
      mouth: { m: mouth.m + between(random, -0.6, 0.6), f: mouth.f + between(random, -0.6, 0.6) },
      tilt: {
        faciopalatal: tilt.faciopalatal + between(random, -7, 7),
        mesiodistal: tilt.mesiodistal + between(random, -5, 5),
      },
    },
    depth: neck ? between(random, 0.5, 2.5) : between(random, 5, 13),
    press,
    speed: 1000,
    irrigated: true,
  };
}

export const randomPasses = (random: Random, plan: Plan): Pass[] => {
  const count = 1 + Math.floor(3 * random());
  return Array.from({ length: count }, (_, i) => randomPass(random, plan, Math.min(6, 2 * i)));
};

/** Corners of a circle, and the radius that gives a polygon of so many the circle's area. */
const CORNERS = 64;
const EQUAL_AREA = Math.sqrt((2 * Math.PI) / CORNERS / Math.sin((2 * Math.PI) / CORNERS));
const ABOVE = 12;

/** Solids of manifold-3d, freed together. */
export class Bench {
  private readonly held: { delete: () => void }[] = [];
  constructor(readonly wasm: ManifoldToplevel) {}

  keep<T extends { delete: () => void }>(one: T): T {
    this.held.push(one);
    return one;
  }

  free(): void {
    for (const one of this.held.splice(0)) one.delete();
  }

  solid(mesh: TriangleMesh): Manifold {
    const { wasm } = this;
    return this.keep(
      new wasm.Manifold(
        new wasm.Mesh({
          numProp: 3,
          vertProperties: Float32Array.from(mesh.positions),
          triVerts: mesh.triangles,
        }),
      ),
    );
  }

  /** Ridge less socket and canal (rules S11 to S14), cropped about the site. */
  bone(anatomy: Anatomy): Manifold {
    const ridge = this.solid(ridgeMesh({ ...anatomy, socket: null }, { from: -7, to: 7 }).mesh);
    const voids = anatomy.socket ? this.socket(anatomy, anatomy.socket) : [];
    if (anatomy.site.tooth % 10 < 3) voids.push(this.solid(canalMesh(anatomy.canal, 96)));
    return voids.length === 0 ? ridge : this.keep(ridge.subtract(this.keep(this.wasm.Manifold.union(voids))));
  }

  /** Root's void and dehiscence from their rules, many-cornered. */
  private socket({ ridge }: Anatomy, { centre, a, ef, em, semi, numbers }: Socket): Manifold[] {
    const { Manifold } = this.wasm;
    const placed = (one: Manifold, x: Vec3, y: Vec3, z: Vec3, o: Vec3): Manifold =>
      this.keep(this.keep(one).transform([...x, 0, ...y, 0, ...z, 0, ...o, 1] as never));
    const [x, y] = [scale(em, semi[0]), scale(ef, semi[1])];
    const bowl = placed(Manifold.sphere(1, 192), x, y, scale(a, semi[2]), centre);
    const well = placed(Manifold.cylinder(1, 1, 1, 192), x, y, scale(a, 30), centre);
    const { depth, width } = numbers.dehiscence;
    if (depth === 0) return [bowl, well];
    const across: Vec3 = [0, ridge.cos, -ridge.sin];
    const down: Vec3 = [0, -ridge.sin * depth, -ridge.cos * depth];
    const lens = Manifold.cylinder(1, 1, 1, 192);
    const prism = placed(lens, [width / 2, 0, 0], down, scale(across, 60), scale(across, -30));
    return [bowl, well, this.keep(prism.trimByPlane(ef as never, dot(centre, ef)))];
  }

  /** A tool about the axis from `bottom` (of its full diameter, or the neck's notch) toward `up`. */
  private tool(kit: Kit, pass: Pass, bottom: Vec3, up: Vec3): Manifold {
    const { Manifold } = this.wasm;
    const x = unit(cross(Math.abs(up[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0], up));
    const y = cross(up, x);
    const part = (from: number, to: number, low: number, high: number): Manifold => {
      const o = along(bottom, up, from);
      const upright = this.keep(Manifold.cylinder(to - from, low * EQUAL_AREA, high * EQUAL_AREA, CORNERS));
      return this.keep(upright.transform([...x, 0, ...y, 0, ...up, 0, ...o, 1] as never));
    };
    const top = pass.depth + ABOVE;
    if (pass.tool.kind === 'drill') {
      const drill = kit.drills[pass.tool.index];
      const r = drill.diameter / 2;
      return this.keep(part(0, top, r, r).add(part(-pointLength(drill), 0, 0, r)));
    }
    const { neckDiameter, shoulderDiameter, height } = kit.necks[pass.tool.index];
    const [n, s] = [neckDiameter / 2, shoulderDiameter / 2];
    return this.keep(part(0, height, n, s).add(part(height, top, s, s)));
  }

  /** A pass from its numbers and its bone entry alone, a shift as the hull of its ends; where it tips, the hulls that a drawing uses. */
  pass(pass: Pass, body: PassBody, kit: Kit = GENERIC_KIT): Manifold {
    const entry = body.entry.point;
    const { Manifold } = this.wasm;
    const a = axisOf(pass.pose.tilt);
    const bottom = along(entry, a, -pass.depth);
    if (!pass.press) return this.tool(kit, pass, bottom, a);
    const { mouth, bottom: low, toward } = pass.press;
    const ef = unit(along([0, 1, 0], a, -a[1]));
    const em = unit(along(along([1, 0, 0], a, -a[0]), ef, -ef[0]));
    const angle = (toward * Math.PI) / 180;
    const way = along(along([0, 0, 0], ef, Math.cos(angle)), em, Math.sin(angle));
    const at = (s: number): Manifold => {
      const b = along(bottom, way, low * s);
      return this.tool(kit, pass, b, unit(sub(along(entry, way, mouth * s), b)));
    };
    if (mouth === low) return this.keep(Manifold.hull([at(0), at(1)]));
    const hulls = sweptHull(new PassBody({ ...body, steps: 2 }), 72, ABOVE).map((points) =>
      this.keep(Manifold.hull(points as never)),
    );
    return this.keep(Manifold.union(hulls));
  }
}
