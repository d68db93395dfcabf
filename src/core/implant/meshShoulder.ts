import type { MeshBuilder, Ring } from '../geometry/loft.ts';
import type { Vec3 } from '../geometry/vec.ts';
import { FLAT, hasFlatWell, sectorOf } from './meshColumns.ts';
import { rimHeight } from './profile.ts';
import { type ImplantShape, totalLength } from './shape.ts';

export type Columns = readonly number[];
type Band = (lower: Ring, upper: Ring) => void;

const onCircle = (r: number, angle: number, z: number): Vec3 => [r * Math.cos(angle), r * Math.sin(angle), z];

/** Height of the shoulder's face inside the rim: a saddle that flattens toward the axis. */
function faceHeight(shape: ImplantShape, r: number, angle: number): number {
  const share = r / (shape.platformDiameter / 2);
  return (shape.scallop * (1 - share * share * Math.cos(2 * angle))) / 2;
}

/**
 * From the last thread over the platform plane to the shoulder's rim, which is the ring returned. `neck` joins the last thread with the
 * platform plane.
 */
export function addNeck(
  builder: MeshBuilder,
  shape: ImplantShape,
  lastThread: Ring,
  angles: Columns,
  neck: Band,
): Ring {
  let ring = lastThread;
  const r = shape.platformDiameter / 2;
  if (shape.transmucosalLength > 0) {
    const platform = builder.ring(angles.length, (j) => onCircle(r, angles[j], 0));
    neck(ring, platform);
    ring = platform;
  }
  if (shape.scallop <= 0) return ring;
  const below = ring;
  const rim = below.map((vertex, j) => {
    const height = rimHeight(shape, angles[j]);
    return height < 1e-9 ? vertex : builder.vertex(onCircle(r, angles[j], height));
  });
  builder.band(below, rim);
  return rim;
}

/** Width of the bevel round the well, mm. */
const BEVEL = 0.12;

/** Radius of the well for the screw, at the edges of its flats where it has some, mm. */
function wellRadius(shape: ImplantShape): number {
  const core = shape.implantedDiameter / 2 - shape.thread.depth;
  return Math.max(0.3, Math.min(core - 0.45, 0.3 * shape.platformDiameter));
}

/** Radius at which the outermost strip of the shoulder's face ends, mm. */
export function faceInner(shape: ImplantShape): number {
  if (shape.abutment) return shape.abutment.baseDiameter / 2;
  const mouth = wellRadius(shape) + BEVEL;
  return shape.scallop > 0 ? (mouth + shape.platformDiameter / 2) / 2 : mouth;
}

/** Angle to the middle of the nearest flat, radians. */
const offFlat = (angle: number, sector: number): number => angle - sector * Math.round(angle / sector);

/** The shoulder's face with a well for the screw, bevelled, flat at the bottom, with as many flats as the index says from three on. */
export function addWell(
  builder: MeshBuilder,
  shape: ImplantShape,
  rim: Ring,
  angles: Columns,
  face: Band,
): void {
  const r = wellRadius(shape);
  const floor = -Math.min(2, 0.4 * totalLength(shape));
  const onFace = (q: number): Ring =>
    builder.ring(angles.length, (j) => onCircle(q, angles[j], faceHeight(shape, q, angles[j])));
  const sector = sectorOf(shape);
  const wall = (angle: number): number =>
    hasFlatWell(shape) ? (r * Math.cos(sector / 2)) / Math.cos(offFlat(angle, sector)) : r;
  const inside = builder.ring(angles.length, (j) =>
    onCircle(wall(angles[j]), angles[j], faceHeight(shape, r, angles[j]) - BEVEL),
  );
  const bottom = builder.ring(angles.length, (j) => onCircle(wall(angles[j]), angles[j], floor));
  const outer = onFace(faceInner(shape));
  face(rim, outer);
  builder.bands([outer, ...(shape.scallop > 0 ? [onFace(r + BEVEL)] : []), inside, bottom]);
  builder.capAbove(bottom, [0, 0, floor]);
}

/** The shoulder's face and a one-piece abutment with as many flats as the index says, one of them at the mark. */
export function addAbutment(
  builder: MeshBuilder,
  shape: ImplantShape,
  rim: Ring,
  angles: Columns,
  face: Band,
): void {
  const abutment = shape.abutment;
  if (!abutment) return;
  const n = angles.length;
  const sector = sectorOf(shape);
  const cut = (angle: number): number =>
    sector === 0 ? 1 : Math.min(1, FLAT / Math.max(FLAT, Math.cos(offFlat(angle, sector))));
  const base = abutment.baseDiameter / 2;
  const top = abutment.topDiameter / 2;
  const bevel = Math.min(0.3, top / 2, abutment.height / 4);
  const radiusAt = (z: number): number => base + ((top - base) * z) / abutment.height;
  const foot = builder.ring(n, (j) => onCircle(base, angles[j], faceHeight(shape, base, angles[j])));
  // Flats begin above the highest point of the shoulder, so that a round foot meets every platform.
  const start = shape.scallop + 0.12 * abutment.height;
  const ring = (z: number, inset: number, flat: boolean): Ring =>
    builder.ring(n, (j) => onCircle((radiusAt(z) - inset) * (flat ? cut(angles[j]) : 1), angles[j], z));
  const rings: Ring[] = [foot, ring(start, 0, false)];
  if (sector > 0) rings.push(ring(start + 0.05, 0, true));
  const last = ring(abutment.height, bevel, true);
  rings.push(ring(abutment.height - bevel, 0, true), last);
  face(rim, foot);
  builder.bands(rings);
  builder.capAbove(last, [0, 0, abutment.height]);
}
