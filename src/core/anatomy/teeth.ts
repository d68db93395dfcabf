import { axisFrame, axisOf, type Tilt } from '../geometry/pose.ts';
import { add, scale, type Vec3 } from '../geometry/vec.ts';
import { type Arch, archDirections, fromArch, toArch } from './arch.ts';
import { classOf, type Landmarks, landmarksOf, type ToothClass } from './landmarks.ts';
import type { Neighbour, Site, SiteCode } from './site.ts';
import { defaultNeighbour } from './toothDefaults.ts';

/** A half-ellipsoid root (rule S8) in the site frame: `z ≤ 0` about `centre`, semi-axes along `ex`, `ey`, `a`; mm. */
export interface RootSolid {
  readonly centre: Vec3;
  readonly ex: Vec3;
  readonly ey: Vec3;
  /** Unit, apex → coronal. */
  readonly a: Vec3;
  readonly semi: Vec3;
  readonly apex: Vec3;
}

/** A tooth in its place: its frame and landmarks in the site frame, mm. */
export interface PlacedTooth {
  readonly code: number;
  readonly cls: ToothClass;
  readonly numbers: Neighbour;
  /** Arch place of its station. */
  readonly station: number;
  /** +1 where the tooth's own mesial runs with the site's mesial, −1 across the midline. */
  readonly turn: 1 | -1;
  readonly origin: Vec3;
  /** Tooth axes `x` mesial, `y` facial, `z` coronal. */
  readonly ex: Vec3;
  readonly ey: Vec3;
  readonly a: Vec3;
  readonly root: RootSolid;
  readonly marks: Landmarks;
}

/** The gap's two neighbours, the further teeth that are only shown, and where the midline is. */
export interface Dentition {
  readonly mesial: PlacedTooth;
  readonly distal: PlacedTooth;
  readonly further: readonly PlacedTooth[];
  /** Arch place of the midline, mm mesial of the site. */
  readonly midline: number;
}

/** Place a tooth at a station (rule S7). */
export function placeTooth(
  arch: Arch,
  code: number,
  n: Neighbour,
  station: number,
  turn: 1 | -1,
): PlacedTooth {
  const { tangent, normal } = archDirections(arch, station);
  const mesial = scale(tangent, turn);
  const toSite = (v: Vec3): Vec3 => [
    v[0] * mesial[0] + v[1] * normal[0],
    v[0] * mesial[1] + v[1] * normal[1],
    v[2],
  ];
  const frame = (tilt: Tilt) => {
    const { a, ef, em } = axisFrame(axisOf(tilt));
    return { ex: toSite(em), ey: toSite(ef), a: toSite(a) };
  };
  const own = frame(n.tilt);
  const base = fromArch(arch, station, 0, n.boneLevel);
  const origin = add(base, scale(own.a, n.cejAboveBone / own.a[2]));
  const rootFrame = frame({
    faciopalatal: n.tilt.faciopalatal + n.rootTilt.faciopalatal,
    mesiodistal: n.tilt.mesiodistal + n.rootTilt.mesiodistal,
  });
  const cls = classOf(code);
  const local = landmarksOf(cls, n);
  const at = (p: Vec3): Vec3 =>
    add(origin, add(add(scale(own.ex, p[0]), scale(own.ey, p[1])), scale(own.a, p[2])));
  return {
    code,
    cls,
    numbers: n,
    station,
    turn,
    origin,
    ...own,
    root: {
      centre: origin,
      ...rootFrame,
      semi: [n.cervixWidth / 2, n.cervixDepth / 2, n.rootLength],
      apex: add(origin, scale(rootFrame.a, -n.rootLength)),
    },
    marks: {
      mesialContact: at(local.mesialContact),
      distalContact: at(local.distalContact),
      mesialEnd: at(local.mesialEnd),
      distalEnd: at(local.distalEnd),
      tip: at(local.tip),
    },
  };
}

/** Code of the tooth `steps` places distal (−: mesial) of a site; past the midline it continues on the other side. */
function neighbourCode(site: SiteCode, steps: number): number {
  const side = Math.floor(site / 10);
  const place = (site % 10) + steps;
  return place >= 1 ? side * 10 + place : (side === 1 ? 2 : 1) * 10 + 1 - place;
}

/** Solve `measure(station) = target` by secant: the measure is smooth and nearly linear in the station. */
function solveStation(measure: (station: number) => number, target: number, start: number): number {
  let x0 = start;
  let x1 = start + 0.5;
  let y0 = measure(x0) - target;
  let y1 = measure(x1) - target;
  for (let i = 0; i < 30 && Math.abs(y1) > 1e-12; i++) {
    const next = x1 - (y1 * (x1 - x0)) / (y1 - y0);
    if (!Number.isFinite(next)) break;
    x0 = x1;
    y0 = y1;
    x1 = next;
    y1 = measure(x1) - target;
  }
  return x1;
}

/** All teeth in their places, the gap left open (rule S9). Cost: about twenty placements. */
export function placeTeeth(arch: Arch, site: Site): Dentition {
  const place = site.tooth % 10;
  const half = site.gap / 2;
  const mesialTurn = place === 1 ? -1 : 1;
  const mesialCode = neighbourCode(site.tooth, -1);
  const distalCode = neighbourCode(site.tooth, 1);
  const facing = (t: PlacedTooth) => (t.turn === 1 ? t.marks.distalContact : t.marks.mesialContact);
  const mesialAt = (q: number) => placeTooth(arch, mesialCode, site.mesial, q, mesialTurn);
  const distalAt = (q: number) => placeTooth(arch, distalCode, site.distal, q, 1);
  const mesial = mesialAt(
    solveStation((q) => facing(mesialAt(q))[0], half, half + site.mesial.crownWidth / 2),
  );
  const distal = distalAt(
    solveStation((q) => distalAt(q).marks.mesialContact[0], -half, -half - site.distal.crownWidth / 2),
  );

  const arcPlace = (p: Vec3) => toArch(arch, p)[0];
  const further: PlacedTooth[] = [];
  let inner = mesial;
  let midline = place === 1 ? arcPlace(mesial.marks.mesialContact) : Number.NaN;
  for (let steps = -2; steps >= -4 && further.length < 3; steps--) {
    const code = neighbourCode(site.tooth, steps);
    const crossed = place + steps < 1;
    const turn = crossed ? -1 : 1;
    if (crossed && Number.isNaN(midline)) midline = arcPlace(inner.marks.mesialContact);
    const numbers = defaultNeighbour(code, site.mesial.boneLevel);
    const innerFace = inner.turn === 1 ? inner.marks.mesialContact : inner.marks.distalContact;
    const target = arcPlace(innerFace);
    const build = (q: number) => placeTooth(arch, code, numbers, q, turn);
    const station = solveStation((q) => arcPlace(facing(build(q))), target, target + numbers.crownWidth / 2);
    inner = build(station);
    further.push(inner);
    if (crossed) break;
  }
  const outerCode = neighbourCode(site.tooth, 2);
  if (outerCode % 10 <= 5) {
    const numbers = defaultNeighbour(outerCode, site.distal.boneLevel);
    const target = arcPlace(distal.marks.distalContact);
    const build = (q: number) => placeTooth(arch, outerCode, numbers, q, 1);
    further.push(
      build(
        solveStation((q) => arcPlace(build(q).marks.mesialContact), target, target - numbers.crownWidth / 2),
      ),
    );
  }
  return { mesial, distal, further, midline };
}
