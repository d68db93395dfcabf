/** Second opinions: manifold-3d on solids, three-mesh-bvh on distances and rays. Neither shares a line with the core or the oracle. */
import Module, { type Manifold, type ManifoldToplevel } from 'manifold-3d';
import { BufferAttribute, BufferGeometry, Matrix4, Ray, Vector3 } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import {
  canalMesh,
  dehiscenceMesh,
  prismMesh,
  ridgeMesh,
  type Surface,
  socketMesh,
  threadedMesh,
} from './meshes.ts';
import type { Ground, Placed } from './model.ts';
import { inner, type V } from './numbers.ts';

export async function modeller(): Promise<ManifoldToplevel> {
  const wasm = await Module();
  wasm.setup();
  return wasm;
}

export function solidOf(wasm: ManifoldToplevel, s: Surface): Manifold {
  const mesh = new wasm.Mesh({
    numProp: 3,
    vertProperties: Float32Array.from(s.points),
    triVerts: Uint32Array.from(s.triangles),
  });
  mesh.merge();
  return new wasm.Manifold(mesh);
}

/** The solids of one site; `free` gives them back. */
export class SiteSolids {
  readonly ridge: Manifold;
  /** Socket and dehiscence together, or null. */
  readonly socket: Manifold | null;
  readonly canal: Manifold | null;
  /** Ridge less voids; `bone` also above the floor. */
  readonly wallBone: Manifold;
  readonly bone: Manifold;
  private readonly wasm: ManifoldToplevel;

  constructor(wasm: ManifoldToplevel, g: Ground) {
    this.wasm = wasm;
    this.ridge = solidOf(wasm, ridgeMesh(g));
    this.socket = this.voids(g);
    this.canal = g.canal ? solidOf(wasm, canalMesh(g)) : null;
    const voids = [this.socket, this.canal].filter((x) => x !== null);
    this.wallBone = wasm.Manifold.difference([this.ridge, ...voids]);
    this.bone = this.wallBone.trimByPlane([0, 0, 1], g.floor);
  }

  private voids(g: Ground): Manifold | null {
    const s = g.socket;
    if (!s) return null;
    const socket = solidOf(this.wasm, socketMesh(g));
    if (!(s.state.dehiscence.depth > 0)) return socket;
    const whole = solidOf(this.wasm, dehiscenceMesh(g));
    const { ef } = s.axis;
    const facial = whole.trimByPlane([ef[0], ef[1], ef[2]], inner(ef, [0, s.facialShift, 0]));
    const both = socket.add(facial);
    for (const x of [socket, whole, facial]) x.delete();
    return both;
  }

  free(): void {
    for (const x of [this.ridge, this.socket, this.canal, this.wallBone, this.bone]) x?.delete();
  }

  /** Length of bone along a line: the volume that a thin prism about it shares with the bone, over the prism's section. */
  boneAlong(from: V, to: V): number {
    const half = 0.01;
    const prism = solidOf(this.wasm, prismMesh(from, to, half));
    const shared = prism.intersect(this.wallBone);
    const length = shared.volume() / (4 * half * half);
    prism.delete();
    shared.delete();
    return length;
  }

  /** Of the threaded envelope without its end faces: whole area, area outside bone, area in the socket's void, mm². */
  areas(p: Placed): {
    whole: number;
    outside: number;
    socket: number;
    volume: number;
    status: string;
    genus: number;
  } {
    const body = solidOf(this.wasm, threadedMesh(p));
    const original = body.asOriginal();
    const id = original.originalID();
    const outside = original.subtract(this.bone);
    const inSocket = this.socket ? original.intersect(this.socket) : null;
    const found = {
      whole: lateral(original, id, p),
      outside: lateral(outside, id, p),
      socket: inSocket ? lateral(inSocket, id, p) : 0,
      volume: original.volume(),
      status: original.status(),
      genus: original.genus(),
    };
    for (const x of [body, original, outside, inSocket]) x?.delete();
    return found;
  }
}

/** Area of the facets that come from a given original and lie on neither end face of the threaded part. */
function lateral(m: Manifold, id: number, p: Placed): number {
  if (m.isEmpty()) return 0;
  const mesh = m.getMesh();
  const at = (i: number): V => {
    const k = mesh.triVerts[i]! * mesh.numProp;
    return [mesh.vertProperties[k]!, mesh.vertProperties[k + 1]!, mesh.vertProperties[k + 2]!];
  };
  let sum = 0;
  for (let run = 0; run < mesh.runOriginalID.length; run += 1) {
    if (mesh.runOriginalID[run] !== id) continue;
    for (let i = mesh.runIndex[run]!; i < mesh.runIndex[run + 1]!; i += 3) {
      const [a, b, c] = [at(i), at(i + 1), at(i + 2)];
      const levels = [a, b, c].map((x) => p.cylindrical(x)[0]);
      const flat = [p.lastThread, p.apex].some((t) => levels.every((l) => Math.abs(l - t) < 2e-5));
      if (!flat) sum += area(a, b, c);
    }
  }
  return sum;
}

function area(a: V, b: V, c: V): number {
  const x = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const;
  const y = [c[0] - a[0], c[1] - a[1], c[2] - a[2]] as const;
  return Math.hypot(x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2], x[0] * y[1] - x[1] * y[0]) / 2;
}

// ---------------------------------------------------------------- rays and distances

export function bvhOf(s: Surface): MeshBVH {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(s.points), 3));
  geometry.setIndex(new BufferAttribute(Uint32Array.from(s.triangles), 1));
  const bvh = new MeshBVH(geometry);
  Object.assign(geometry, { boundsTree: bvh });
  return bvh;
}

const BOTH_SIDES = 2;

/** Distance along a ray to the first facet, or null. */
export function firstHit(bvh: MeshBVH, from: V, along: V): number | null {
  const hit = bvh.raycastFirst(new Ray(new Vector3(...from), new Vector3(...along)), BOTH_SIDES);
  return hit ? hit.distance : null;
}

/** Distance from a point to the nearest facet, or `bound` where none is nearer than that. */
export function closest(bvh: MeshBVH, point: V, bound = Infinity): number {
  const found = bvh.closestPointToPoint(new Vector3(...point), undefined, 0, bound);
  return Math.min(bound, found?.distance ?? Infinity);
}

/** Least distance between two meshes, 0 where they cross. */
export function apart(a: MeshBVH, b: MeshBVH): number {
  // A first bound from some corners of `b`, so that the search over pairs of facets leaves most of them out.
  const corners = b.geometry.getAttribute('position');
  let bound = Infinity;
  for (let i = 0; i < corners.count; i += 2) {
    const hit = a.closestPointToPoint(new Vector3().fromBufferAttribute(corners, i), undefined, 0, bound);
    if (hit && hit.distance < bound) bound = hit.distance;
  }
  const found = a.closestPointToGeometry(b.geometry, new Matrix4(), undefined, undefined, 0, bound + 1e-3);
  if (!found) throw new Error('one of the meshes is empty');
  return found.distance;
}
