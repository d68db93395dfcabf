import { type ImplantShape, totalLength } from './shape.ts';

/** Share of the way round that the flutes take, and the widest that one is, radians. */
const SHARE = 0.42;
const WIDEST = 1;
/** Angle over which the cutting face falls to the floor, radians: radial to the eye. */
const FACE = 0.01;
/** Share of their length over which flutes run out coronally. */
const RUN_OUT = 0.4;

const turn = 2 * Math.PI;

export const hasFlutes = ({ flutes }: ImplantShape): boolean =>
  flutes.count > 0 && flutes.length > 0 && flutes.depth > 0;

/** Angle that one flute takes, radians; 0: there are none. */
export const fluteWidth = (shape: ImplantShape): number =>
  hasFlutes(shape) ? Math.min(WIDEST, (SHARE * turn) / shape.flutes.count) : 0;

/** Angle of the cutting face of flute `i`, radians anticlockwise from the mark; a land lies at the mark. */
const faceAngle = (shape: ImplantShape, i: number): number =>
  ((i + 0.5) * turn) / shape.flutes.count + fluteWidth(shape) / 2;

/** Angles at which a flute has an edge, so that a mesh can have columns there; radians. */
export function fluteAngles(shape: ImplantShape): number[] {
  if (!hasFlutes(shape)) return [];
  return Array.from({ length: shape.flutes.count }, (_, i) => faceAngle(shape, i)).flatMap((face) => [
    face - fluteWidth(shape),
    face - FACE,
    face,
  ]);
}

/** How far the flutes are cut into the envelope there (rule S15), mm; `angle` from the mark, `z` coronal of the platform plane. */
export function fluteCut(shape: ImplantShape, angle: number, z: number): number {
  if (!hasFlutes(shape)) return 0;
  const { count, length, depth } = shape.flutes;
  const sector = turn / count;
  const behind = faceAngle(shape, 0) - angle;
  const off = behind - sector * Math.floor(behind / sector);
  if (off < FACE / 2) return 0;
  const u = Math.max(0, off - FACE) / (fluteWidth(shape) - FACE);
  const height = (z + totalLength(shape)) / length;
  const v = Math.max(0, (height - (1 - RUN_OUT)) / RUN_OUT);
  return depth * Math.max(0, 1 - u * u - v * v);
}
