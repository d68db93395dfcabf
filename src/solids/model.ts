import type { Manifold } from 'manifold-3d';
import { apart, boxOf, type SolidFault, solidBodies, solidFault } from '../core/geometry/closed.ts';
import { meshVolume, type TriangleMesh } from '../core/geometry/mesh.ts';

/** What can be made: the ridge with its neighbours whole, drilled as far as was rehearsed, or with the planned hole; the implant with its threads, or plain. */
export const MODEL_KINDS = ['ridge', 'drilled', 'planned', 'implant', 'plain'] as const;
export type ModelKind = (typeof MODEL_KINDS)[number];

/** What a stretch of a model's surface belongs to; a tooth goes by its code (ISO 3950). */
export type Belongs = 'bone' | 'hole' | 'implant' | 'foot' | `tooth-${number}`;

/** A stretch of a model's triangles. */
export interface ModelPart {
  readonly name: Belongs;
  readonly from: number;
  readonly count: number;
}

/** A body to print: right-handed, standing on `z = 0` in the corner of the positive axes, mm. */
export interface Model {
  readonly kind: ModelKind;
  /** Site, ISO 3950. */
  readonly tooth: number;
  /** Closed and outward: it has been looked at. */
  readonly mesh: TriangleMesh;
  /** Stretches of its triangles, one after the other. */
  readonly parts: readonly ModelPart[];
  readonly volume: number;
  readonly size: readonly [number, number, number];
  /** Chips too small to print and cavities without a way out that were left out. */
  readonly leftOut: number;
}

/** Why there is no model: it is no solid, nothing was drilled, or the planned hole cannot be made. */
export type NoModel = SolidFault | { readonly code: 'no-passes' | 'no-hole' };

export type ModelResult =
  | { readonly ok: true; readonly model: Model }
  | { readonly ok: false; readonly why: NoModel };

/** What a model is made from; `names` by the modeller's number of the body a surface came from, the others bone. */
export interface ModelSource {
  readonly kind: ModelKind;
  readonly tooth: number;
  readonly solid: Manifold;
  readonly names: ReadonlyMap<number, Belongs>;
}

/** Bodies smaller than this are chips, mm³. */
const CHIP = 1;
/** How far the surface may move when needless triangles are taken out, mm. */
const COARSER = 0.002;
/** How far sheets that touch at a corner are moved apart, mm. */
const APART = 0.001;

/** A stretch of surface with its name: three corners a triangle. */
interface Stretch {
  readonly name: Belongs;
  readonly corners: readonly number[];
}

/** A solid's points, and its triangles put together by what they belong to. */
function surfaceOf(solid: Manifold, names: ReadonlyMap<number, Belongs>) {
  const { vertProperties, triVerts, numProp, runIndex, runOriginalID } = solid.getMesh();
  const points = vertProperties.length / numProp;
  const positions = Float64Array.from({ length: 3 * points }, (_, i) => {
    const point = Math.floor(i / 3);
    return vertProperties[point * numProp + i - 3 * point];
  });
  const stretches = new Map<Belongs, number[]>();
  runOriginalID.forEach((id, k) => {
    const name = names.get(id) ?? 'bone';
    const own = stretches.get(name) ?? [];
    for (let i = runIndex[k]; i < runIndex[k + 1]; i++) own.push(triVerts[i]);
    stretches.set(name, own);
  });
  return { positions, stretches: [...stretches].map(([name, corners]) => ({ name, corners })) };
}

const cornersOf = (stretches: readonly Stretch[]): Uint32Array =>
  Uint32Array.from(stretches.flatMap(({ corners }) => corners));

/** Without the bodies that are chips or closed cavities. */
function cleaned(positions: Float64Array, stretches: readonly Stretch[]) {
  const { of, volumes } = solidBodies({ positions, triangles: cornersOf(stretches) });
  const least = Math.min(CHIP, Math.max(...volumes) / 2);
  let at = 0;
  const kept = stretches.map(({ name, corners }) => {
    const from = at;
    at += corners.length / 3;
    return { name, corners: corners.filter((_, i) => volumes[of[from + Math.floor(i / 3)]] >= least) };
  });
  return {
    kept: kept.filter(({ corners }) => corners.length > 0),
    leftOut: volumes.filter((v) => v < least).length,
  };
}

/** Only the points that triangles use, moved into the corner of the positive axes, in the single precision of the files. */
function settled(positions: Float64Array, triangles: Uint32Array): TriangleMesh {
  const number = new Map<number, number>();
  const corners = triangles.map((v) => {
    const found = number.get(v) ?? number.size;
    number.set(v, found);
    return found;
  });
  const used = Float64Array.from(
    [...number.keys()].flatMap((v) => [...positions.subarray(3 * v, 3 * v + 3)]),
  );
  const { low } = boxOf({ positions: used, triangles: corners });
  return { positions: used.map((v, i) => Math.fround(v - low[i % 3])), triangles: corners };
}

function partsOf(stretches: readonly Stretch[]): ModelPart[] {
  let from = 0;
  return stretches.map(({ name, corners }) => {
    const part = { name, from, count: corners.length / 3 };
    from += part.count;
    return part;
  });
}

/** The model that a solid is, looked at before it is offered. The solid stands upright in a right-handed frame, `z` up. */
export function modelOf({ kind, tooth, solid, names }: ModelSource): ModelResult {
  const simple = solid.simplify(COARSER);
  const { positions, stretches } = surfaceOf(simple, names);
  simple.delete();
  const { kept, leftOut } = cleaned(positions, stretches);
  const mesh = apart(settled(positions, cornersOf(kept)), APART);
  const why = solidFault(mesh);
  if (why) return { ok: false, why };
  const [x, y, z] = boxOf(mesh).high;
  return {
    ok: true,
    model: { kind, tooth, mesh, parts: partsOf(kept), volume: meshVolume(mesh), size: [x, y, z], leftOut },
  };
}

/** One part of a model's surface that has three corners of its own for every triangle. */
export function partMesh({ positions, normals }: TriangleMesh, { from, count }: ModelPart): TriangleMesh {
  const stretch = (source: Float64Array) => source.slice(9 * from, 9 * (from + count));
  const triangles = Uint32Array.from({ length: 3 * count }, (_, i) => i);
  const out = { positions: stretch(positions), triangles };
  return normals ? { ...out, normals: stretch(normals) } : out;
}
