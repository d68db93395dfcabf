/**
 * What is ground off a one-piece abutment, by others: distances and crossings by three-mesh-bvh, the solid by manifold-3d. Mean sites, poses, wear, tilt and material at
 * random, seeds fixed.
 */
import { expect } from 'vitest';
import type { SiteCode } from '../../src/core/anatomy/site.ts';
import { broughtInto, type Placed, turnedInto } from '../../src/core/geometry/carry.ts';
import type { TriangleMesh } from '../../src/core/geometry/mesh.ts';
import { along, distance, dot, sub, type Vec3 } from '../../src/core/geometry/vec.ts';
import { libraryShape } from '../../src/core/implant/library.ts';
import type { AbutmentNumbers } from '../../src/core/implant/shape.ts';
import { Placement } from '../../src/core/measure/placement.ts';
import { defaultSite } from '../../src/core/plan/defaults.ts';
import { solidsOf } from '../../src/core/plan/evaluate.ts';
import { planAlongCrown } from '../../src/core/plan/newPlan.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { AbutmentInCrown } from '../../src/core/restoration/abutmentInCrown.ts';
import { coverOf } from '../../src/core/restoration/crownChoices.ts';
import { MATERIAL_NAMES } from '../../src/core/restoration/material.ts';
import { plannedCrownOf } from '../../src/core/restoration/plannedCrown.ts';
import { reductionOf } from '../../src/core/restoration/reduction.ts';
import { Traced } from './rays.ts';
import { solidModeller } from './solid.ts';

/** Park and Miller's generator: 0 to 1, the same every time. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

export const shape = (name: string) => {
  const found = libraryShape(name);
  if (!found) throw new Error(name);
  return found;
};

/** The plan of a mean site with its pose moved at random by up to so many mm and degrees. */
export function* poses(
  tooth: SiteCode,
  name: string,
  count: number,
  mm: number,
  deg: number,
): Generator<Plan> {
  const random = seeded(1000 + tooth);
  const off = (most: number) => (2 * random() - 1) * most;
  const base = planAlongCrown(defaultSite(tooth), shape(name), 'screw-gum', '');
  for (let i = 0; i < count; i++) {
    const { platform: p, tilt: t } = base.pose;
    const platform = { m: p.m + off(mm), f: p.f + off(mm), c: p.c + off(mm) };
    const tilt = { faciopalatal: t.faciopalatal + off(deg), mesiodistal: t.mesiodistal + off(deg) };
    yield { ...base, pose: { ...base.pose, platform, tilt } };
  }
}

/** A mesh without the fan about its last vertex. */
function openFoot({ positions, triangles }: TriangleMesh): TriangleMesh {
  const apex = positions.length / 3 - 1;
  const kept: number[] = [];
  for (let i = 0; i < triangles.length; i += 3) {
    const corners = [...triangles.slice(i, i + 3)];
    if (!corners.includes(apex)) kept.push(...corners);
  }
  return { positions, triangles: Uint32Array.from(kept) };
}

/** Corners of a closed mesh's foot, in order round it: the neighbours of its last vertex. */
function rimOf({ positions: p, triangles }: TriangleMesh): Vec3[] {
  const apex = p.length / 3 - 1;
  const rim = new Set<number>();
  for (let i = 0; i < triangles.length; i += 3) {
    const corners = [...triangles.slice(i, i + 3)];
    if (corners.includes(apex)) for (const v of corners) if (v !== apex) rim.add(v);
  }
  return [...rim].sort((x, y) => x - y).map((v): Vec3 => [p[3 * v], p[3 * v + 1], p[3 * v + 2]]);
}

function toLoop(loop: readonly Vec3[], p: Vec3): number {
  return Math.min(
    ...loop.map((a, i) => {
      const d = sub(loop[(i + 1) % loop.length], a);
      const share = Math.min(1, Math.max(0, dot(sub(p, a), d) / dot(d, d)));
      return distance(p, along(a, d, share));
    }),
  );
}

/** A crown as meshes: closed, without its foot, and the foot's rim; where it stands, and the abutment in it. */
interface Opinion {
  readonly whole: Traced;
  readonly wall: Traced;
  readonly rim: readonly Vec3[];
  readonly frame: Placed;
  readonly at: Placement;
  readonly abutment: AbutmentNumbers;
}

/** From so far palatally rays are sent, mm. */
const FAR = 30;

/** How far within what may stay a place of the abutment lies, from the axis facially, mesially and up, mm: where the foot's rim is nearest no wall stands beside it. */
function soundness({ whole, wall, rim, frame, at }: Opinion, [f, m, x]: Vec3, cover: number): number {
  const q = broughtInto(frame, along(along(along(at.platform, at.a, x), at.ef, f), at.em, m));
  const d = wall.distance(q);
  const within = whole.holds(q) || toLoop(rim, q) < d + 1e-6;
  return (within ? d : -d) - cover;
}

/** Levels at which the palatal side is traced. */
const LEVELS = 400;

/** Where at most less than this is too near palatally, the plane is moved in by that share of its way only (rule C8), mm. */
const WHOLE_SIDE = 0.2;

/** The palatal plane by the rule, from rays: normal (facially, up) and distance; null: nothing is too near palatally, or no crown stands there. */
function palatalPlane(opinion: Opinion, cover: number, post: Plan['crown']['post']) {
  const { whole, frame, at, abutment } = opinion;
  const { height, baseDiameter, topDiameter } = abutment;
  const radius = (x: number) => (baseDiameter + ((topDiameter - baseDiameter) * x) / height) / 2;
  const outline: [number, number][] = [];
  let lack = -Infinity;
  for (let i = 0; i <= LEVELS; i++) {
    const x = (height * i) / LEVELS;
    const outside = broughtInto(frame, along(along(at.platform, at.a, x), at.ef, -FAR));
    const [first] = whole.hits(outside, turnedInto(frame, at.ef));
    if (first !== undefined) outline.push([first - FAR, x]);
    if (x > post.height || radius(x) > post.diameter / 2)
      lack = Math.max(lack, -soundness(opinion, [-radius(x), 0, x], cover));
  }
  const top = outline[outline.length - 1];
  if (lack <= 0 || !top || top[1] - outline[0][1] < 1) return null;
  const lower = outline.filter(([, x]) => x <= top[1] - 1);
  const low = lower.reduce((a, b) => (b[0] < a[0] ? b : a));
  const length = Math.hypot(top[0] - low[0], top[1] - low[1]);
  const normal = [-(top[1] - low[1]) / length, (top[0] - low[0]) / length] as const;
  const along2 = ([f, x]: readonly [number, number]) => normal[0] * f + normal[1] * x;
  const whole2 = Math.min(...outline.filter(([, x]) => x >= low[1]).map(along2)) - cover;
  const touching = Math.max(along2([-radius(0), 0]), along2([-radius(height), height]), whole2);
  const share = Math.min(1, lack / WHOLE_SIDE);
  return { normal, reach: touching + (whole2 - touching) * share };
}

/** Volume of what is ground off, the least post left out, mm³. */
async function groundOff(opinion: Opinion, cover: number, post: Plan['crown']['post']) {
  const { Manifold } = await solidModeller();
  const { abutment: a } = opinion;
  const r = a.baseDiameter / 2 + 0.1;
  const box = { min: [-r, -r, -0.1] as const, max: [r, r, a.height + 0.1] as const };
  const inner = Manifold.levelSet(
    (p) => soundness(opinion, [p[0], p[1], p[2]], cover),
    { min: [...box.min], max: [...box.max] },
    0.2,
  );
  const plane = palatalPlane(opinion, cover, post);
  const kept = plane ? inner.trimByPlane([-plane.normal[0], 0, -plane.normal[1]], -plane.reach) : inner;
  const body = Manifold.cylinder(a.height, a.baseDiameter / 2, a.topDiameter / 2, 180);
  const core = Manifold.cylinder(post.height, post.diameter / 2, post.diameter / 2, 180);
  const volume = body.subtract(kept).subtract(core).volume();
  for (const solid of new Set([inner, kept, body, core])) solid.delete();
  return { volume, palatal: plane !== null };
}

interface Row {
  readonly ours: number;
  readonly theirs: number;
  readonly palatal: boolean;
}

/** So many plans a tooth, none left out; each is within 0.1 mm³ and 2 %. */
export async function checkReductions(perTooth: number): Promise<{ rows: Row[]; said: string }> {
  const rows: Row[] = [];
  for (const tooth of [11, 12, 13] as const) {
    const random = seeded(77 + tooth);
    for (const plan of poses(tooth, 'tapered-one-piece-30x11', perTooth, 0.8, 8)) {
      const off = (most: number) => (2 * random() - 1) * most;
      const crown = {
        ...plan.crown,
        material: MATERIAL_NAMES[Math.floor(random() * MATERIAL_NAMES.length)],
        wear: Math.max(0, off(1)),
        tilt: { faciopalatal: off(4), mesiodistal: off(3) },
      };
      const at = new Placement(solidsOf(plan.site), plan.implant, plan.pose, plan.crestMargin);
      const planned = plannedCrownOf(at.anatomy, crown);
      const { abutment } = plan.implant;
      if (!abutment) throw new Error('no abutment');
      const rule = { cover: coverOf(crown), post: crown.post };
      const body = new AbutmentInCrown(at, planned, abutment, rule);
      const ours = reductionOf(planned, body).volume;
      const { mesh, frame } = planned;
      const whole = new Traced(mesh);
      const opinion = { whole, wall: new Traced(openFoot(mesh)), rim: rimOf(mesh), frame, at, abutment };
      const { volume: theirs, palatal } = await groundOff(opinion, rule.cover, rule.post);
      rows.push({ ours, theirs, palatal });
    }
  }
  const off = rows.map(({ ours, theirs }) => Math.abs(ours - theirs)).sort((x, y) => x - y);
  const most = Math.max(...rows.map((row) => row.theirs));
  const ground = rows.filter((row) => row.palatal).length;
  const said = `ground off: ${off.length} plans up to ${most.toFixed(1)} mm³, ${ground} of them palatally, off by ${off[off.length >> 1].toFixed(3)} at the median, ${off.at(-1)?.toFixed(3)} at worst`;
  const apart = rows.filter(({ ours, theirs }) => Math.abs(ours - theirs) > 0.1 + 0.02 * theirs);
  expect(apart, said).toEqual([]);
  return { rows, said };
}
