import type { MeshBuilder, Ring } from '../geometry/loft.ts';
import { along, sub } from '../geometry/vec.ts';
import { faceInner } from './meshShoulder.ts';
import type { ImplantShape } from './shape.ts';

/** Half the mark's width and its greatest length, mm; how deep it is engraved; the most of the way round that half of it takes, radians. */
const HALF = 0.28;
const LONG = 0.95;
const DEEP = 0.12;
const WIDEST = 0.2;

/** A shoulder's face is as wide as this at least to take a mark, mm. */
const ROOM = 0.3;

/**
 * Where the index mark is engraved: on the side of a neck of 1 mm or more, its tip coronal, else on the shoulder's face, its tip outward. `tip` and
 * `foot` are shares of the way up the neck, or from the rim inward over the face; `half` is half the angle it takes, radians.
 */
export interface Mark {
  readonly on: 'neck' | 'face';
  readonly tip: number;
  readonly foot: number;
  readonly half: number;
}

/** `null` where the index is 0, and where the shoulder's face has no room: there an abutment's flats show the index. */
export function markPlace(shape: ImplantShape): Mark | null {
  if (shape.index === 0) return null;
  const neck = shape.transmucosalLength;
  const half = (radius: number) => Math.min(WIDEST, HALF / radius);
  if (neck >= 1) {
    const radius = (shape.platformDiameter + shape.implantedDiameter) / 4;
    return { on: 'neck', tip: 0.75, foot: Math.max(0.28, 0.75 - LONG / neck), half: half(radius) };
  }
  const rim = shape.platformDiameter / 2;
  const width = rim - faceInner(shape);
  if (width < ROOM) return null;
  return { on: 'face', tip: 0.18, foot: 0.82, half: half(rim - 0.82 * width) };
}

/**
 * The wall from one ring up to the next with the mark let into it; the rings' columns 0, 1 and the last are those of the mark. Returns what
 * adds the recess itself, so that a caller can keep its triangles together.
 */
export function bandWithMark(builder: MeshBuilder, mark: Mark, l: Ring, u: Ring): () => void {
  const n = l.length;
  const place = (j: number, share: number, sunk: number): number => {
    const from = builder.place(l[j]);
    const [x, y, z] = along(from, sub(builder.place(u[j]), from), share);
    const inward = mark.on === 'neck' ? 1 - sunk / Math.hypot(x, y) : 1;
    return builder.vertex([x * inward, y * inward, mark.on === 'face' ? z - sunk : z]);
  };
  const outline = (sunk: number) =>
    [
      place(n - 1, mark.foot, sunk),
      place(0, Math.min(mark.tip, mark.foot), sunk),
      place(1, mark.foot, sunk),
      place(0, Math.max(mark.tip, mark.foot), sunk),
    ] as const;
  const edge = outline(0);
  const [left, below, right, above] = edge;
  for (let j = 2; j < n - 2; j++) builder.quad(l[j], l[j + 1], u[j + 1], u[j]);
  builder.quad(l[n - 1], l[0], below, left);
  builder.quad(left, above, u[0], u[n - 1]);
  builder.quad(l[0], l[1], right, below);
  builder.quad(above, right, u[1], u[0]);
  builder.quad(l[n - 2], l[n - 1], left, u[n - 2]);
  builder.triangle(left, u[n - 1], u[n - 2]);
  builder.quad(l[1], l[2], u[2], right);
  builder.triangle(u[2], u[1], right);
  return () => {
    const floor = outline(DEEP);
    for (let k = 0; k < 4; k++) {
      const next = (k + 1) % 4;
      builder.quad(edge[k], edge[next], floor[next], floor[k]);
    }
    builder.triangle(floor[0], floor[1], floor[3]);
    builder.triangle(floor[1], floor[2], floor[3]);
  };
}
