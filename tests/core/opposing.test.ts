import Module from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Anatomy, anatomyOf } from '../../src/core/anatomy/anatomy.ts';
import { measuredCentral, opposingIncisors, opposingMeshes } from '../../src/core/anatomy/opposing.ts';
import type { SiteCode } from '../../src/core/anatomy/site.ts';
import { placedToothMeshes } from '../../src/core/anatomy/toothMeshes.ts';
import { meshVolume, type TriangleMesh } from '../../src/core/geometry/mesh.ts';
import type { Vec3 } from '../../src/core/geometry/vec.ts';
import { defaultSite } from '../../src/core/plan/defaults.ts';

const bite = (tooth: SiteCode, overjet: number, overbite: number): Anatomy =>
  anatomyOf({ ...defaultSite(tooth), opposing: { overjet, overbite } });

const points = ({ positions: p }: TriangleMesh): Vec3[] =>
  Array.from({ length: p.length / 3 }, (_, i): Vec3 => [p[3 * i], p[3 * i + 1], p[3 * i + 2]]);

const dot = (p: Vec3, q: Vec3): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];

/** The vertices that lie furthest along a crown's axis, from distal to mesial: the level part of its edge. */
function edgeOf(mesh: TriangleMesh, axis: Vec3, mesial: Vec3): Vec3[] {
  const list = points(mesh);
  const top = Math.max(...list.map((p) => dot(p, axis)));
  return list.filter((p) => dot(p, axis) > top - 1e-6).sort((p, q) => dot(p, mesial) - dot(q, mesial));
}

const middle = (list: readonly Vec3[]): Vec3 => {
  const at = (k: number): number => list.reduce((sum, p) => sum + p[k], 0) / list.length;
  return [at(0), at(1), at(2)];
};

describe.each([
  [12, 41, 2.9, 2.9],
  [22, 31, 2.9, 2.9],
  [14, 41, 4.5, 1],
  [11, 41, 1, -2],
  [21, 31, -1.5, 4],
] as const)('the lower incisors opposite site %d', (site, code, overjet, overbite) => {
  const anatomy = bite(site, overjet, overbite);
  const lower = opposingMeshes(anatomy, { columns: 40, rings: 24 });

  it('stand by overjet and overbite from the upper central, measured on the meshes in the jaw', () => {
    // Own construction of the two measures, along the jaw's y and z: from where the upper edge begins to fall distally to the middle of
    // the lower edge; the tolerance is the meshes' own grain.
    const upper = measuredCentral(anatomy);
    const crown = placedToothMeshes(upper, { columns: 400, rings: 24 }).crown;
    const above = anatomy.toJaw(edgeOf(crown, upper.a, upper.ex)[0]);
    const central = lower.find(({ tooth }) => tooth.code === code);
    if (!central) throw new Error('no lower central');
    const { a, ex } = central.tooth;
    const below = anatomy.toJaw(middle(edgeOf(central.crown, a, ex)));
    expect(Math.abs(above[1] - below[1] - overjet)).toBeLessThan(0.03);
    expect(Math.abs(above[2] - below[2] - overbite)).toBeLessThan(0.03);
  });

  it('are four closed solids by their numbers, two on each side of the midline', () => {
    for (const { crown } of lower) expect(meshVolume(crown)).toBeGreaterThan(0);
    expect(lower.map(({ tooth }) => tooth.code).sort()).toEqual([31, 32, 41, 42]);
    for (const { tooth } of lower) {
      // ISO 3950: the thirties are on the patient's left, where x > 0 in the jaw.
      const x = anatomy.toJaw(tooth.edge)[0];
      expect(Math.sign(x)).toBe(tooth.code < 40 ? 1 : -1);
    }
  });

  it('touch each other, the centrals at the midline, and have level edges', () => {
    const contact = (wanted: number, side: 1 | -1): Vec3 => {
      const found = lower.find(({ tooth }) => tooth.code === wanted);
      if (!found) throw new Error(`no ${wanted}`);
      const { origin, ex, a, numbers } = found.tooth;
      const at = (k: number): number =>
        origin[k] + (side * ex[k] * numbers.crownWidth) / 2 + a[k] * 0.9 * numbers.crownLength;
      return anatomy.toJaw([at(0), at(1), at(2)]);
    };
    const apart = (p: Vec3, q: Vec3): number => Math.hypot(p[0] - q[0], p[1] - q[1]);
    for (const quadrant of [30, 40]) {
      expect(apart(contact(quadrant + 1, -1), contact(quadrant + 2, 1))).toBeLessThan(1e-9);
      expect(Math.abs(contact(quadrant + 1, 1)[0])).toBeLessThan(1e-9);
    }
    const levels = lower.map(({ tooth }) => tooth.edge[2]);
    expect(Math.max(...levels) - Math.min(...levels)).toBeLessThan(1e-9);
  });
});

describe('the opposing incisors', () => {
  it('of the other side are mirror images', () => {
    const [right, left] = ([13, 23] as const).map((tooth) => {
      const anatomy = bite(tooth, 2, 3);
      return opposingMeshes(anatomy, { columns: 24, rings: 12 }).map(({ tooth: { code }, crown }) => ({
        code,
        list: points(crown).map(anatomy.toJaw),
      }));
    });
    for (const { code, list } of right) {
      const twin = left.find((t) => t.code === (code < 40 ? code + 10 : code - 10));
      list.forEach((p, i) => {
        const q = twin?.list[i] ?? [0, 0, 0];
        expect(Math.hypot(p[0] + q[0], p[1] - q[1], p[2] - q[2])).toBeLessThan(1e-9);
      });
    }
  });

  it('lean 14.5° facially from the occlusal normal', () => {
    // Source: Downs WB, Am J Orthod 1948;34:812-40, incisor to occlusal plane, mean 14.5° from the right angle (from memory).
    for (const { a } of opposingIncisors(bite(12, 2.9, 2.9)))
      expect((Math.acos(-a[2]) * 180) / Math.PI).toBeCloseTo(14.5, 9);
  });

  describe('at the mean overjet', () => {
    let wasm: Awaited<ReturnType<typeof Module>>;
    beforeAll(async () => {
      wasm = await Module();
      wasm.setup();
    });
    const solid = ({ positions, triangles }: TriangleMesh) =>
      new wasm.Manifold(
        new wasm.Mesh({ numProp: 3, vertProperties: Float32Array.from(positions), triVerts: triangles }),
      );
    /** Space that lower and upper crowns share, mm³, by manifold-3d. */
    const shared = (overbite: number): number => {
      const anatomy = bite(12, 2.9, overbite);
      const { mesial, distal, further } = anatomy.teeth;
      const uppers = [mesial, distal, ...further].map((t) => solid(placedToothMeshes(t).crown));
      return opposingMeshes(anatomy)
        .flatMap(({ crown }) => uppers.map((upper) => solid(crown).intersect(upper).volume()))
        .reduce((sum, v) => sum + v, 0);
    };

    it('meet the palatal faces of the upper ones between 2 and 4 mm of overbite', () => {
      // Two teeth share no space: with a smaller overbite they stand free. Incisors in normal occlusion touch near the mean overbite (2.9).
      expect(shared(2)).toBeLessThan(1e-3);
      expect(shared(4)).toBeGreaterThan(0.1);
    });
  });
});
