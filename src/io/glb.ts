import { Document, type Material, type Primitive, WebIO } from '@gltf-transform/core';
import { creased } from '../core/geometry/crease.ts';
import type { TriangleMesh } from '../core/geometry/mesh.ts';
import { type Belongs, type Model, partMesh } from '../solids/model.ts';
import type { ModelWords } from '../words/sayModel.ts';
import { paintOf } from './paint.ts';

/** glTF is in metres, and its `y` points up. */
const TO_METRES = 0.001;
const Z_UP_TO_Y_UP: [number, number, number, number] = [-Math.SQRT1_2, 0, 0, Math.SQRT1_2];
/** Edges sharper than this are drawn crisp, degrees. */
const CREASE = 35;

/** glTF counts colours linearly. */
const linear = (v: number): number => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);

function materialOf(document: Document, name: Belongs): Material {
  const [r, g, b] = paintOf(name).map(linear);
  const metal = name === 'implant';
  return document
    .createMaterial(name)
    .setBaseColorFactor([r, g, b, 1])
    .setMetallicFactor(metal ? 0.9 : 0)
    .setRoughnessFactor(metal ? 0.35 : 0.7);
}

/** Every corner once: corners of one point and one normal are one. */
function indexed({ positions, normals }: TriangleMesh) {
  const known = new Map<string, number>();
  const [points, ups]: [number[], number[]] = [[], []];
  const corners = new Uint32Array(positions.length / 3);
  for (let i = 0; i < corners.length; i++) {
    const point = [...positions.subarray(3 * i, 3 * i + 3)];
    const up = [...(normals ?? positions).subarray(3 * i, 3 * i + 3)].map(Math.fround);
    const key = [...point, ...up].join();
    const found = known.get(key) ?? known.size;
    if (found === known.size) {
      known.set(key, found);
      points.push(...point);
      ups.push(...up);
    }
    corners[i] = found;
  }
  return { points: Float32Array.from(points), ups: Float32Array.from(ups), corners };
}

function primitiveOf(document: Document, mesh: TriangleMesh): Primitive {
  const buffer = document.getRoot().listBuffers()[0];
  const { points, ups, corners } = indexed(mesh);
  const accessor = (type: 'VEC3' | 'SCALAR', array: Float32Array<ArrayBuffer> | Uint32Array<ArrayBuffer>) =>
    document.createAccessor().setType(type).setArray(array).setBuffer(buffer);
  return document
    .createPrimitive()
    .setAttribute('POSITION', accessor('VEC3', points))
    .setAttribute('NORMAL', accessor('VEC3', ups))
    .setIndices(accessor('SCALAR', corners));
}

/** A binary glTF: one node a part under a root that turns and scales it, each with its material; all parts together are the closed body. */
export async function glbOf(model: Model, { title, caution }: ModelWords): Promise<Uint8Array<ArrayBuffer>> {
  const document = new Document();
  document.createBuffer();
  const root = document
    .createNode(title)
    .setRotation(Z_UP_TO_Y_UP)
    .setScale([TO_METRES, TO_METRES, TO_METRES]);
  const whole = creased(model.mesh, CREASE);
  for (const part of model.parts) {
    const primitive = primitiveOf(document, partMesh(whole, part)).setMaterial(
      materialOf(document, part.name),
    );
    root.addChild(
      document.createNode(part.name).setMesh(document.createMesh(part.name).addPrimitive(primitive)),
    );
  }
  document.createScene(title).addChild(root).setExtras({ caution });
  const asset = document.getRoot().getAsset();
  asset.generator = 'Ridgewright';
  return new WebIO().writeBinary(document) as Promise<Uint8Array<ArrayBuffer>>;
}
