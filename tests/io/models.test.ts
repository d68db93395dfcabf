/** Solid models as files, read back by others: three's STL and glTF loaders, glTF-Transform, gltf-validator, manifold-3d. tests/browser/models.test.ts reads the 3MF. */
import { WebIO } from '@gltf-transform/core';
import { validateBytes } from 'gltf-validator';
import { Box3, type BufferGeometry, type Mesh, Vector3 } from 'three';
import { GLTFLoader } from 'three/addons/loaders/GLTFLoader.js';
import { STLLoader } from 'three/addons/loaders/STLLoader.js';
import { beforeAll, describe, expect, it } from 'vitest';
import type { TriangleMesh } from '../../src/core/geometry/mesh.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { modelFile } from '../../src/io/modelFile.ts';
import { buildModel } from '../../src/solids/build.ts';
import type { Model, ModelKind } from '../../src/solids/model.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { opinionOn, solidModeller } from '../support/solid.ts';
import { welded } from '../support/weld.ts';

async function modelOf(plan: Plan, kind: ModelKind): Promise<Model> {
  const made = buildModel(await solidModeller(), plan, kind);
  if (!made.ok) throw new Error(JSON.stringify(made.why));
  return made.model;
}

function size(geometry: BufferGeometry): Vector3 {
  geometry.computeBoundingBox();
  return geometry.boundingBox?.getSize(new Vector3()) ?? new Vector3();
}

/** The normals of the file are those of the corners' order. */
function turnedOutward(geometry: BufferGeometry): void {
  const given = geometry.getAttribute('normal').array;
  const bare = geometry.clone();
  bare.computeVertexNormals();
  const own = bare.getAttribute('normal').array;
  const off = inOrder(given.length / 3).filter((i) => {
    const [x, y, z] = [given[3 * i], given[3 * i + 1], given[3 * i + 2]];
    return x * own[3 * i] + y * own[3 * i + 1] + z * own[3 * i + 2] < 0.99;
  });
  // Slivers of no area have no normal.
  expect(off.length).toBeLessThan(given.length / 3000);
}

const inOrder = (count: number): number[] => Array.from({ length: count }, (_, i) => i);

/** A geometry of three as one body. */
function bodyOf(geometries: readonly BufferGeometry[]): TriangleMesh {
  const points = geometries.flatMap((one) => {
    const loose = one.index ? one.toNonIndexed() : one;
    return [...loose.getAttribute('position').array];
  });
  return welded(points, inOrder(points.length / 3));
}

const solid = async (mesh: TriangleMesh, { volume }: Model): Promise<void> => {
  const opinion = await opinionOn(mesh);
  expect(opinion).toMatchObject({ status: 'NoError', parts: 1 });
  expect(Math.abs(opinion.volume / volume - 1)).toBeLessThan(1e-5);
};

const CASES = SITES_DEMO.flatMap(({ id, plan }) =>
  (['planned', 'plain'] as const).map((kind) => ({ name: `${id}, ${kind}`, plan, kind })),
);

describe.each(CASES)('$name', ({ plan, kind }) => {
  let model: Model;
  beforeAll(async () => {
    model = await modelOf(plan, kind);
  }, 120_000);

  it('STL: 84 + 50 n bytes, its header says what it is not, three reads the same closed body', async () => {
    const bytes = await modelFile(model, 'stl');
    expect(bytes.length).toBe(84 + (50 * model.mesh.triangles.length) / 3);
    const header = new TextDecoder().decode(bytes.subarray(0, 80));
    expect(header).toMatch(/practice model made from numbers.*Not a surgical guide/);
    expect(header).not.toMatch(/^solid/);
    const geometry = new STLLoader().parse(bytes.buffer);
    await solid(bodyOf([geometry]), model);
    const { x, y, z } = size(geometry);
    [x, y, z].forEach((v, k) => {
      expect(v).toBeCloseTo(model.size[k], 5);
    });
    turnedOutward(geometry);
  });

  it('GLB: the validator finds nothing, glTF-Transform and three read named parts in metres, together one closed body', async () => {
    const bytes = await modelFile(model, 'glb');
    const { issues } = await validateBytes(bytes);
    expect(issues).toMatchObject({ numErrors: 0, numWarnings: 0 });
    const root = (await new WebIO().readBinary(bytes)).getRoot();
    expect(root.getAsset().version).toBe('2.0');
    expect(root.listScenes()[0].getExtras()).toMatchObject({
      caution: expect.stringMatching(/Not a surgical guide/),
    });
    const names = model.parts.map(({ name }) => name);
    expect(root.listMeshes().map((mesh) => mesh.getName())).toEqual(names);
    expect(root.listMaterials().map((material) => material.getName())).toEqual(names);
    const { scene } = await new GLTFLoader().parseAsync(bytes.buffer, '');
    scene.updateMatrixWorld(true);
    const meshes: Mesh[] = [];
    scene.traverse((one) => {
      if ((one as Mesh).isMesh) meshes.push(one as Mesh);
    });
    expect(meshes.map(({ name }) => name)).toEqual(names);
    await solid(bodyOf(meshes.map(({ geometry }) => geometry)), model);
    const box = new Box3().setFromObject(scene).getSize(new Vector3());
    // y points up in glTF.
    [box.x, box.z, box.y].forEach((metres, k) => {
      expect(1000 * metres).toBeCloseTo(model.size[k], 4);
    });
  });
});
