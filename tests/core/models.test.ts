/** Solid models of the demo plans as solids. Sources: manifold-3d (closed, genus, parts), upright columns through the parts (volume), formulas of the cylinder and the V groove. */
import { describe, expect, it } from 'vitest';
import { shownTeeth } from '../../src/core/anatomy/section.ts';
import { placedToothMeshes } from '../../src/core/anatomy/toothMeshes.ts';
import { boxOf, solidFault } from '../../src/core/geometry/closed.ts';
import { meshVolume, type TriangleMesh } from '../../src/core/geometry/mesh.ts';
import { drillingOf } from '../../src/core/plan/drilling.ts';
import { solidsOf } from '../../src/core/plan/evaluate.ts';
import { passBodies } from '../../src/core/plan/inHand.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { drillTo, pressAgainst } from '../../src/core/plan/rehearse.ts';
import { buildModel } from '../../src/solids/build.ts';
import type { Model, ModelKind } from '../../src/solids/model.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { practiceVolume } from '../support/practiceColumns.ts';
import { opinionOn, solidModeller } from '../support/solid.ts';

async function modelOf(plan: Plan, kind: ModelKind): Promise<Model> {
  const made = buildModel(await solidModeller(), plan, kind);
  if (!made.ok) throw new Error(JSON.stringify(made.why));
  return made.model;
}

/** Neighbouring crowns that run into each other: each such contact, with the ridge below it, is a way through the model. */
async function fusedContacts(plan: Plan): Promise<number> {
  const kernel = await solidModeller();
  const anatomy = solidsOf(plan.site);
  const crowns = shownTeeth(anatomy).map((tooth) => {
    const { positions, triangles } = placedToothMeshes(tooth, { columns: 80, rings: 48 }).crown;
    return kernel.Manifold.ofMesh(
      new kernel.Mesh({ numProp: 3, vertProperties: Float32Array.from(positions), triVerts: triangles }),
    );
  });
  const pairs = crowns.flatMap((a, i) => crowns.slice(i + 1).map((b) => a.intersect(b)));
  const fused = pairs.filter((shared) => !shared.isEmpty()).length;
  for (const one of [...crowns, ...pairs]) one.delete();
  return fused;
}

/** Area of the faces that lie in the plane of the base, mm². */
function baseArea({ positions: p, triangles: t }: TriangleMesh): number {
  let twice = 0;
  for (let i = 0; i < t.length; i += 3) {
    const [a, b, c] = [3 * t[i], 3 * t[i + 1], 3 * t[i + 2]];
    if (Math.max(p[a + 2], p[b + 2], p[c + 2]) > 1e-6) continue;
    twice -= (p[b] - p[a]) * (p[c + 1] - p[a + 1]) - (p[c] - p[a]) * (p[b + 1] - p[a + 1]);
  }
  return twice / 2;
}

const close = (found: number, expected: number, share: number): void =>
  expect(Math.abs(found / expected - 1), `${found} against ${expected}`).toBeLessThan(share);

describe.each(SITES_DEMO)('$id', ({ plan }) => {
  const anatomy = solidsOf(plan.site);

  it('the ridge with its neighbours is one closed body on a flat base, of the volume its parts have', async () => {
    const { mesh, volume, size } = await modelOf(plan, 'ridge');
    const opinion = await opinionOn(mesh);
    expect(opinion).toMatchObject({ status: 'NoError', parts: 1, genus: await fusedContacts(plan) });
    close(volume, opinion.volume, 1e-6);
    close(volume, practiceVolume(anatomy, []), 1e-3);
    const { low, high } = boxOf(mesh);
    expect(low).toEqual([0, 0, 0]);
    expect(size).toEqual(high);
    expect(baseArea(mesh)).toBeGreaterThan(0.3 * size[0] * size[1]);
  });

  it.each(['implant', 'plain'] as const)('%s: closed, without a handle, standing', async (kind) => {
    const { mesh, volume, size } = await modelOf(plan, kind);
    const opinion = await opinionOn(mesh);
    expect(opinion).toMatchObject({ status: 'NoError', parts: 1, genus: 0 });
    close(volume, opinion.volume, 1e-6);
    const { implant } = plan;
    const above = Math.max(implant.abutment?.height ?? 0, implant.scallop);
    // On its platform, or on a foot 0.8 mm thick in which it stands 0.15 mm deep.
    const foot = above > 0 ? above + 0.8 - 0.15 : 0;
    expect(size[2]).toBeCloseTo(implant.implantedLength + implant.transmucosalLength + foot, 4);
  });
});

describe.each(SITES_DEMO.slice(0, 2))('$id', ({ plan }) => {
  it('with the planned hole it has the volume left by its bodies', async () => {
    const hole = drillingOf(plan)?.hole;
    if (!hole) throw new Error('no hole');
    const { mesh, volume, parts } = await modelOf(plan, 'planned');
    expect(await opinionOn(mesh)).toMatchObject({ status: 'NoError', parts: 1 });
    close(
      volume,
      practiceVolume(solidsOf(plan.site), hole.neck ? [hole.drill, hole.neck] : [hole.drill]),
      1e-3,
    );
    expect(parts.map(({ name }) => name)).toContain('hole');
  });
});

describe('drilled as far as rehearsed', () => {
  const [{ plan }] = SITES_DEMO;

  it('nothing drilled: nothing offered', async () => {
    expect(buildModel(await solidModeller(), plan, 'drilled')).toEqual({
      ok: false,
      why: { code: 'no-passes' },
    });
  });

  it('a pass and a press are what is missing', async () => {
    const rehearsed = pressAgainst(drillTo(plan, 8), { toward: 200, mouth: 0.4, bottom: 0 });
    const { volume, mesh } = await modelOf(rehearsed, 'drilled');
    expect(await opinionOn(mesh)).toMatchObject({ status: 'NoError', parts: 1 });
    const bodies = passBodies(rehearsed);
    expect(bodies.length).toBeGreaterThan(0);
    close(volume, practiceVolume(solidsOf(plan.site), bodies), 1e-3);
  });
});

describe('a dummy by formula', () => {
  const slab = SITES_DEMO[4].plan;
  const round: Plan = {
    ...slab,
    implant: { ...slab.implant, index: 0, flutes: { count: 0, length: 0, depth: 0 } },
  };
  const { implantedLength: length, implantedDiameter, thread } = round.implant;
  const [r, d] = [implantedDiameter / 2, thread.depth];
  /** The well for the screw: a cylinder to 2 mm, bevelled by 0.12 mm. */
  const well = (w: number): number => {
    const b = w + 0.12;
    return Math.PI * (w * w * (2 - 0.12) + (0.12 * (w * w + w * b + b * b)) / 3);
  };

  it('plain: a cylinder less its well', async () => {
    const { volume } = await modelOf(round, 'plain');
    const w = Math.min(r - 0.45, 0.3 * round.implant.platformDiameter);
    close(volume, Math.PI * r * r * length - well(w), 1e-3);
  });

  it('with its thread: less a V groove that runs out over one pitch at both ends', async () => {
    const { volume } = await modelOf(round, 'implant');
    const { pitch } = thread;
    const w = Math.min(r - d - 0.45, 0.3 * round.implant.platformDiameter);
    // The groove's depth g is spread evenly from 0 to d: the mean of r² − (r − g)² is r d − d²/3; where it runs out, r d/2 − d²/9.
    const groove =
      Math.PI * ((length - 2 * pitch) * (r * d - (d * d) / 3) + 2 * pitch * ((r * d) / 2 - (d * d) / 9));
    close(volume, Math.PI * r * r * length - well(w) - groove, 1e-3);
  });

  it('one that nothing flat would hold up stands on a foot', async () => {
    const abutment = { height: 5, baseDiameter: 3, topDiameter: 2 };
    const { mesh, size, parts } = await modelOf(
      { ...slab, implant: { ...slab.implant, abutment } },
      'implant',
    );
    expect(await opinionOn(mesh)).toMatchObject({ status: 'NoError', parts: 1, genus: 0 });
    expect(parts.map(({ name }) => name)).toEqual(['implant', 'foot']);
    expect(size[2]).toBeCloseTo(length + 5 + 0.8 - 0.15, 4);
    expect(size[0]).toBeCloseTo(slab.implant.platformDiameter + 2, 4);
  });
});

describe('what is no solid is not offered', () => {
  // A tetrahedron by hand.
  const corners = [0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1];
  const faces = [0, 2, 1, 0, 1, 3, 1, 2, 3, 0, 3, 2];
  const mesh = (positions: number[], triangles: number[]): TriangleMesh => ({
    positions: Float64Array.from(positions),
    triangles: Uint32Array.from(triangles),
  });

  it('a tetrahedron is one', () => {
    expect(solidFault(mesh(corners, faces))).toBeNull();
    expect(meshVolume(mesh(corners, faces))).toBeCloseTo(1 / 6, 12);
  });

  it.each([
    ['a face is missing', mesh(corners, faces.slice(3)), 'open'],
    ['a face is turned', mesh(corners, [0, 1, 2, ...faces.slice(3)]), 'open'],
    ['it is inside out', mesh(corners, [...faces].reverse()), 'inward'],
    ['a corner is no number', mesh([Number.NaN, ...corners.slice(1)], faces), 'not-finite'],
    ['it is empty', mesh([], []), 'empty'],
    [
      'two share an edge',
      mesh(
        [...corners, 0, 0, 0, 0, 0, 1, -1, 0, 0, 0, -1, 0],
        [...faces, 4, 5, 6, 4, 7, 5, 4, 6, 7, 5, 7, 6],
      ),
      'open',
    ],
  ] as const)('%s', (_, wrong, code) => {
    expect(solidFault(wrong)?.code).toBe(code);
  });
});
