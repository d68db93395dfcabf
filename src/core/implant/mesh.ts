import { MeshBuilder, type Ring } from '../geometry/loft.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import type { Vec3 } from '../geometry/vec.ts';
import { addThread, columnAngle } from './meshThread.ts';
import { envelopeOf, envelopePolyline, rimHeight } from './profile.ts';
import { type ImplantShape, totalLength } from './shape.ts';

/**
 * Meshes of an implant in its own right-handed frame: `z` along the axis, 0 at the platform plane, + coronal; `x` toward the mark;
 * `y` completes it. Millimetres. To place one, carry it by a proper rotation only: a mirrored one would have a left-handed thread.
 */
export interface ImplantMeshes {
  /** Closed, outward, genus 0: thread, neck, and abutment or the well for the screw. */
  readonly body: TriangleMesh;
  /** Small closed triangle at the mark, let into the surface and 0.04 mm proud so that it can be drawn; `null` where the index is 0. */
  readonly mark: TriangleMesh | null;
}

export interface ImplantMeshOptions {
  /** Columns round the axis, at least 8; rounded up to a multiple of 4. Tessellation error `r (1 − cos π/n)`. */
  readonly segments?: number;
}

const segmentsOf = (options: ImplantMeshOptions): number =>
  Math.max(8, 4 * Math.ceil((options.segments ?? 64) / 4));

const onCircle = (r: number, angle: number, z: number): Vec3 => [r * Math.cos(angle), r * Math.sin(angle), z];

/** Height of the shoulder's face inside the rim: a saddle that flattens toward the axis. */
function faceHeight(shape: ImplantShape, r: number, angle: number): number {
  const share = r / (shape.platformDiameter / 2);
  return (shape.scallop * (1 - share * share * Math.cos(2 * angle))) / 2;
}

/**
 * Body of revolution of the thread crests up to the platform plane, closed by flat discs (rule S15), in the frame of
 * {@link ImplantMeshes}. Its vertices lie on the envelope: inside by at most `r (1 − cos π/n)`.
 */
export function envelopeMesh(shape: ImplantShape, options: ImplantMeshOptions = {}): TriangleMesh {
  const n = segmentsOf(options);
  const { x, r } = envelopePolyline(shape);
  const builder = new MeshBuilder();
  const rings: Ring[] = [];
  for (let i = x.length - 1; i >= 0; i--) {
    if (i < x.length - 1 && x[i + 1] - x[i] < 1e-9 && r[i + 1] === r[i]) continue;
    rings.push(builder.ring(n, (j) => onCircle(r[i], columnAngle(j, n), -x[i])));
  }
  builder.bands(rings);
  builder.capBelow(rings[0], [0, 0, -totalLength(shape)]);
  builder.capAbove(rings[rings.length - 1], [0, 0, 0]);
  return builder.build();
}

/** From the last thread over the platform plane to the shoulder's rim, which is the ring returned. */
function addNeck(builder: MeshBuilder, shape: ImplantShape, lastThread: Ring, n: number): Ring {
  let ring = lastThread;
  const r = shape.platformDiameter / 2;
  if (shape.transmucosalLength > 0) {
    const platform = builder.ring(n, (j) => onCircle(r, columnAngle(j, n), 0));
    builder.band(ring, platform);
    ring = platform;
  }
  if (shape.scallop <= 0) return ring;
  const below = ring;
  const rim = below.map((vertex, j) => {
    const angle = columnAngle(j, n);
    const height = rimHeight(shape, angle);
    return height < 1e-9 ? vertex : builder.vertex(onCircle(r, angle, height));
  });
  builder.band(below, rim);
  return rim;
}

/** The shoulder's face with a well for the screw: bevelled at the rim, flat at the bottom. */
function addWell(builder: MeshBuilder, shape: ImplantShape, rim: Ring, n: number): void {
  const bevel = 0.12;
  const radius = Math.min(
    0.5 * (shape.implantedDiameter - 2 * shape.thread.depth) - 0.45,
    0.3 * shape.platformDiameter,
  );
  const r = Math.max(0.3, radius);
  const depth = Math.min(2, 0.4 * totalLength(shape));
  const onFace = (q: number): Ring =>
    builder.ring(n, (j) => {
      const angle = columnAngle(j, n);
      return onCircle(q, angle, faceHeight(shape, q, angle));
    });
  const floor = -depth;
  const inside = builder.ring(n, (j) => {
    const angle = columnAngle(j, n);
    return onCircle(r, angle, faceHeight(shape, r, angle) - bevel);
  });
  const bottom = builder.ring(n, (j) => onCircle(r, columnAngle(j, n), floor));
  const middle = (r + bevel + shape.platformDiameter / 2) / 2;
  builder.bands([rim, onFace(middle), onFace(r + bevel), inside, bottom]);
  builder.capAbove(bottom, [0, 0, floor]);
}

/** How far in an index flat cuts the abutment, as a share of its radius. */
const FLAT = 0.86;

/** The shoulder's face and a one-piece abutment with as many flats as the index says, one of them at the mark. */
function addAbutment(builder: MeshBuilder, shape: ImplantShape, rim: Ring, n: number): void {
  const abutment = shape.abutment;
  if (!abutment) return;
  const sector = shape.index > 0 ? (2 * Math.PI) / shape.index : 0;
  const cut = (angle: number): number => {
    if (sector === 0) return 1;
    const off = angle - sector * Math.round(angle / sector);
    return Math.min(1, FLAT / Math.max(FLAT, Math.cos(off)));
  };
  const base = abutment.baseDiameter / 2;
  const top = abutment.topDiameter / 2;
  const bevel = Math.min(0.3, top / 2, abutment.height / 4);
  const radiusAt = (z: number): number => base + ((top - base) * z) / abutment.height;
  const foot = builder.ring(n, (j) => {
    const angle = columnAngle(j, n);
    return onCircle(base, angle, faceHeight(shape, base, angle));
  });
  // Flats begin above the highest point of the shoulder, so that a round foot meets every platform.
  const start = shape.scallop + 0.12 * abutment.height;
  const ring = (z: number, inset: number, flat: boolean): Ring =>
    builder.ring(n, (j) => {
      const angle = columnAngle(j, n);
      return onCircle((radiusAt(z) - inset) * (flat ? cut(angle) : 1), angle, z);
    });
  const rings: Ring[] = [rim, foot, ring(start, 0, false)];
  if (sector > 0) rings.push(ring(start + 0.05, 0, true));
  const last = ring(abutment.height, bevel, true);
  rings.push(ring(abutment.height - bevel, 0, true), last);
  builder.bands(rings);
  builder.capAbove(last, [0, 0, abutment.height]);
}

const PROUD = 0.04;
const SUNK = 0.1;

/** A flat triangular prism over outline points (anticlockwise seen from outside), between an outer and an inner copy. */
function prism(outer: readonly Vec3[], inner: readonly Vec3[]): TriangleMesh {
  const builder = new MeshBuilder();
  const n = outer.length;
  const low = builder.ring(n, (j) => inner[j]);
  const high = builder.ring(n, (j) => outer[j]);
  builder.band(low, high);
  for (let j = 1; j + 1 < n; j++) {
    builder.triangle(high[0], high[j], high[j + 1]);
    builder.triangle(low[0], low[j + 1], low[j]);
  }
  return builder.build();
}

/** On a neck of 1 mm or more the mark points coronally on its side, else outward on the platform. */
function markMesh(shape: ImplantShape): TriangleMesh {
  const neck = shape.transmucosalLength;
  const half = 0.28;
  if (neck >= 1) {
    const at = (across: number, z: number, lift: number): Vec3 => {
      const r = envelopeOf(shape).radius(-z) + lift;
      return onCircle(r, across / r, z);
    };
    const foot = -0.72 * neck;
    const tip = -0.25 * neck;
    const outline = [
      [0, tip],
      [-half, foot],
      [0, foot],
      [half, foot],
    ];
    return prism(
      outline.map(([s, z]) => at(s, z, PROUD)),
      outline.map(([s, z]) => at(s, z, -SUNK)),
    );
  }
  const r = shape.platformDiameter / 2;
  const outline = [
    [r - 0.08, 0],
    [r - 0.45, half],
    [r - 0.45, -half],
  ];
  return prism(
    outline.map(([x, y]): Vec3 => [x, y, PROUD]),
    outline.map(([x, y]): Vec3 => [x, y, -SUNK]),
  );
}

/**
 * The implant as it is drawn: right-handed thread of true V flanks whose crests lie on the envelope, run out over one pitch at
 * both ends; flat apical end; neck straight to the platform; scalloped rim; well for the screw or one-piece abutment.
 */
export function implantMesh(shape: ImplantShape, options: ImplantMeshOptions = {}): ImplantMeshes {
  const n = segmentsOf(options);
  const builder = new MeshBuilder();
  const { apicalRim, lastThread } = addThread(builder, shape, n);
  builder.capBelow(apicalRim, [0, 0, -totalLength(shape)]);
  const rim = addNeck(builder, shape, lastThread, n);
  if (shape.abutment) addAbutment(builder, shape, rim, n);
  else addWell(builder, shape, rim, n);
  return { body: builder.build(), mark: shape.index > 0 ? markMesh(shape) : null };
}
