/**
 * Measures the default sites as a study would: on the meshes, by rays and nearest points (three-mesh-bvh), from the entered frames alone. Nothing here
 * asks the ridge for a half-width. Site frame, mm.
 */
import { type Anatomy, anatomyOf } from '../../src/core/anatomy/anatomy.ts';
import { archDirections, fromArch } from '../../src/core/anatomy/arch.ts';
import { canalMesh } from '../../src/core/anatomy/canalMesh.ts';
import { floorMesh } from '../../src/core/anatomy/floorMesh.ts';
import { gumMesh } from '../../src/core/anatomy/gumMesh.ts';
import type { ToothClass } from '../../src/core/anatomy/landmarks.ts';
import { ridgeMesh } from '../../src/core/anatomy/ridgeMesh.ts';
import { rootMesh } from '../../src/core/anatomy/root-mesh.ts';
import { shownRange, shownTeeth } from '../../src/core/anatomy/section.ts';
import type { SiteCode } from '../../src/core/anatomy/site.ts';
import { type PlacedTooth, placeTooth } from '../../src/core/anatomy/teeth.ts';
import { defaultNeighbour } from '../../src/core/anatomy/toothDefaults.ts';
import { placedToothMeshes } from '../../src/core/anatomy/toothMeshes.ts';
import { TOOTH_TABLE } from '../../src/core/anatomy/toothTable.ts';
import { type Loop, type Plane, sliceMesh } from '../../src/core/geometry/slice.ts';
import { add, along, cross, norm, rad, scale, sub, type Vec3 } from '../../src/core/geometry/vec.ts';
import { defaultSite } from '../../src/core/plan/defaults.ts';
import { Traced } from './rays.ts';

interface Measured {
  readonly anatomy: Anatomy;
  readonly bone: Traced;
  readonly canal: Traced;
  readonly floor: Traced;
}

const made = new Map<SiteCode, Measured>();

export function measuredSite(code: SiteCode): Measured {
  const known = made.get(code);
  if (known) return known;
  const anatomy = anatomyOf(defaultSite(code));
  const bone = new Traced(ridgeMesh(anatomy, shownRange(anatomy)).mesh);
  const one = {
    anatomy,
    bone,
    canal: new Traced(canalMesh(anatomy.canal)),
    floor: new Traced(floorMesh(anatomy)),
  };
  made.set(code, one);
  return one;
}

const back = (v: Vec3): Vec3 => scale(v, -1);

/** Across (facial) and down the ridge's own axis at an arch place, where it leans by `inclination`. */
function ridgeFrame({ arch }: Anatomy, q: number, inclination: number): { across: Vec3; down: Vec3 } {
  const { normal } = archDirections(arch, q);
  const [sin, cos] = [Math.sin(rad(inclination)), Math.cos(rad(inclination))];
  return {
    across: add(scale(normal, cos), [0, 0, -sin]),
    down: add(scale(normal, -sin), [0, 0, -cos]),
  };
}

/** Facial half-widths of the site's own section, 0.05 mm of depth apart from 0.5 to 14 mm. */
function facialPlate(code: SiteCode): { depth: number; out: number }[] {
  const { anatomy, bone } = measuredSite(code);
  const { across, down } = ridgeFrame(anatomy, 0, anatomy.site.ridge.inclination);
  return Array.from({ length: 271 }, (_, i) => {
    const depth = 0.5 + 0.05 * i;
    return { depth, out: bone.reach(scale(down, depth), across) };
  });
}

/** Deepest point of the facial plate below the straight line that touches it above and below the hollow. */
export function hollow(code: SiteCode): { depth: number; level: number } {
  const plate = facialPlate(code);
  let best = { depth: 0, level: 0 };
  for (let i = 0; i < plate.length; i += 2) {
    for (let k = i + 20; k < plate.length; k += 2) {
      const slope = (plate[k].out - plate[i].out) / (k - i);
      for (let j = i + 1; j < k; j += 2) {
        const depth = plate[i].out + slope * (j - i) - plate[j].out;
        if (depth > best.depth) best = { depth, level: plate[j].depth };
      }
    }
  }
  return best;
}

/** As the study measured: below a line along the ridge's axis that touches the plate where it starts to dip. */
export function dip(code: SiteCode): { depth: number; start: number } {
  let most = { depth: 0, out: 0 };
  let best = { depth: 0, start: 0 };
  for (const here of facialPlate(code)) {
    if (here.out > most.out) most = here;
    if (most.out - here.out > best.depth) best = { depth: most.out - here.out, start: most.depth };
  }
  return best;
}

/** A neighbour of that class on a default site, with its root's facial and palatal meridians. */
export function neighbourOf(cls: ToothClass): { code: SiteCode; tooth: PlacedTooth } {
  const code = ({ central: 12, lateral: 11, canine: 12, premolar1: 13, premolar2: 14 } as const)[cls];
  const { mesial, distal } = measuredSite(code).anatomy.teeth;
  return { code, tooth: mesial.cls === cls && cls === 'central' ? mesial : distal };
}

/** Width of the ridge about a tooth, across its own axis. */
export function dentateWidth(cls: ToothClass, depth: number): number {
  const { code, tooth } = neighbourOf(cls);
  const { anatomy, bone } = measuredSite(code);
  const { across, down } = ridgeFrame(anatomy, tooth.station, tooth.numbers.ridge.inclination);
  const p = along(fromArch(anatomy.arch, tooth.station, 0, tooth.numbers.boneLevel), down, depth);
  return bone.reach(p, across) + bone.reach(p, back(across));
}

export const meanDentateWidth = (cls: ToothClass): number =>
  (dentateWidth(cls, 1) + dentateWidth(cls, 4) + dentateWidth(cls, 8)) / 3;

/** Point of a root's facial (+1) or palatal (−1) meridian, so far apical of the CEJ along its axis. */
function meridian({ root }: PlacedTooth, side: 1 | -1, apical: number): Vec3 {
  const share = Math.min(1, Math.max(0, apical) / root.semi[2]);
  const p = along(root.centre, root.a, -apical);
  return along(p, root.ey, side * root.semi[1] * Math.sqrt(1 - share * share));
}

/** How far apical of the CEJ a root goes into the bone on that side, along its axis. */
export function cejToCrest(cls: ToothClass, side: 1 | -1): number {
  const { code, tooth } = neighbourOf(cls);
  const { bone } = measuredSite(code);
  for (let k = -1; k < 9; k += 0.02) if (bone.holds(meridian(tooth, side, k))) return k;
  return Number.NaN;
}

/** Bone over a root, across its axis: so far apical of its CEJ, or so far apical of the crest on that side. */
export function wallOver(cls: ToothClass, side: 1 | -1, apical: { cej: number } | { crest: number }): number {
  const { code, tooth } = neighbourOf(cls);
  const k = 'cej' in apical ? apical.cej : cejToCrest(cls, side) + apical.crest;
  return measuredSite(code).bone.reach(meridian(tooth, side, k), scale(tooth.root.ey, side));
}

/** From the apex of the site's mean tooth, stood in its place with the neighbours' bone level, to the floor along the ridge's axis. */
export function apexToFloor(code: SiteCode): number {
  const { anatomy, floor } = measuredSite(code);
  const tooth = placeTooth(anatomy.arch, code, defaultNeighbour(code, 1), 0, 1);
  return floor.reach(tooth.root.apex, ridgeFrame(anatomy, 0, anatomy.site.ridge.inclination).down);
}

/** Surface of a root without its flat top, of a straight CEJ, mm². */
export function rootArea(cls: ToothClass): number {
  const { positions: p, triangles: t } = rootMesh({
    ...TOOTH_TABLE[cls],
    cejCurveMesial: 0,
    cejCurveDistal: 0,
  });
  const at = (i: number): Vec3 => [p[3 * i], p[3 * i + 1], p[3 * i + 2]];
  let sum = 0;
  for (let i = 0; i < t.length; i += 3) {
    const [a, b, c] = [at(t[i]), at(t[i + 1]), at(t[i + 2])];
    if (Math.max(a[2], b[2], c[2]) - Math.min(a[2], b[2], c[2]) < 1e-9) continue;
    sum += norm(cross(sub(b, a), sub(c, a))) / 2;
  }
  return sum;
}

/** Nearest distance of the central's root to the canal at one level of the root; 0 the CEJ, 1 the apex. */
export function rootToCanal(share: number): number {
  const { anatomy, canal } = measuredSite(12);
  const { root } = anatomy.teeth.mesial;
  const r = Math.sqrt(1 - share * share);
  const middle = along(root.centre, root.a, -share * root.semi[2]);
  return Math.min(
    ...Array.from({ length: 180 }, (_, i) => {
      const angle = (Math.PI * i) / 90;
      const p = along(middle, root.ex, root.semi[0] * r * Math.cos(angle));
      return canal.distance(along(p, root.ey, root.semi[1] * r * Math.sin(angle)));
    }),
  );
}

/** Inner width of the canal across its run, at a share of its length. */
export function canalWidth(share: number): number {
  const { anatomy, canal } = measuredSite(11);
  const { mouth, run, length } = anatomy.canal;
  const p = along(mouth, run, length * share);
  const side: Vec3 = [-run[2], 0, run[0]];
  const v = scale(side, 1 / norm(side));
  return canal.reach(p, v) + canal.reach(p, back(v));
}

export function canalLength(): number {
  const { anatomy, canal } = measuredSite(11);
  const { mouth, run } = anatomy.canal;
  return canal.far(along(mouth, run, -1), run) - canal.reach(along(mouth, run, -1), run);
}

/** Bone in front of the canal, horizontally, at a share of its length. */
export function labialOfCanal(code: SiteCode, share: number): number {
  const { anatomy, bone, canal } = measuredSite(code);
  const { normal } = archDirections(anatomy.arch, anatomy.teeth.midline);
  const p = along(anatomy.canal.mouth, anatomy.canal.run, anatomy.canal.length * share);
  return bone.reach(p, normal) - canal.reach(p, normal);
}

const acrossAt = ({ arch }: Anatomy, q: number): Plane => ({
  origin: fromArch(arch, q, 0, 0),
  x: archDirections(arch, q).normal,
  y: [0, 0, 1],
});

/** Height along a tooth's axis of its facial margin: where the gum's outline, in the section through its middle, comes in to the tooth's facial side. */
function facialMargin(gum: readonly Loop[], tooth: PlacedTooth, plane: Plane): number {
  const { crown } = placedToothMeshes(tooth);
  const lean = rad(tooth.numbers.tilt.faciopalatal);
  const covered = sliceMesh(crown, plane)
    .flat()
    .filter(([x, y]) => gum.some((loop) => winds(loop, x, y)));
  const out = ([x, y]: readonly [number, number]) => x * Math.cos(lean) - y * Math.sin(lean);
  const middle = out([0, tooth.numbers.boneLevel]);
  return Math.max(
    ...covered.filter((p) => out(p) > middle).map(([x, y]) => x * Math.sin(lean) + y * Math.cos(lean)),
  );
}

/** Whether a loop goes round a point. */
function winds(loop: Loop, x: number, y: number): boolean {
  let inside = false;
  loop.forEach(([x0, y0], i) => {
    const [x1, y1] = loop[(i + 1) % loop.length];
    if (y0 > y !== y1 > y && x < x0 + ((x1 - x0) * (y - y0)) / (y1 - y0)) inside = !inside;
  });
  return inside;
}

/** Height of the papilla between two shown teeth over the mean of their facial margins, along the mean of their axes. */
export function papillaHeight(code: SiteCode, codes: readonly [number, number]): number {
  const { anatomy } = measuredSite(code);
  const gum = gumMesh(anatomy, shownRange(anatomy)).mesh;
  const pair = codes.map((c) => {
    const found = shownTeeth(anatomy).find((t) => t.code === c);
    if (!found) throw new Error(`tooth ${c} is not shown at ${code}`);
    return found;
  });
  const margin = pair.map((tooth) => {
    const plane = acrossAt(anatomy, tooth.station);
    return facialMargin(sliceMesh(gum, plane), tooth, plane);
  });
  const lean = rad((pair[0].numbers.tilt.faciopalatal + pair[1].numbers.tilt.faciopalatal) / 2);
  const [from, to] = pair.map((t) => t.station).sort((a, b) => a - b);
  let tip = -Infinity;
  for (let q = from + 1.5; q < to - 1.5; q += 0.1) {
    for (const [e, c] of sliceMesh(gum, acrossAt(anatomy, q)).flat())
      tip = Math.max(tip, e * Math.sin(lean) + c * Math.cos(lean));
  }
  return tip - (margin[0] + margin[1]) / 2;
}
