/**
 * The body of revolution against the handbook: frustum side π(r₁ + r₂)s, volume πh(r₁² + r₁r₂ + r₂²)/3, centroid h(r₁² + 2r₁r₂ + 3r₂²)/(4(r₁² + r₁r₂ + r₂²))
 * from the end of radius r₁; and against manifold-3d, which builds its own cone.
 */
import Module from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { anatomyOf } from '../../src/core/anatomy/anatomy.ts';
import { meshVolume, type TriangleMesh } from '../../src/core/geometry/mesh.ts';
import { IMPLANT_LIBRARY } from '../../src/core/implant/library.ts';
import { envelopeMesh } from '../../src/core/implant/mesh.ts';
import { envelopeOf, envelopePolyline } from '../../src/core/implant/profile.ts';
import type { ImplantShape } from '../../src/core/implant/shape.ts';
import { lateralArea } from '../../src/core/measure/exposure.ts';
import { Placement } from '../../src/core/measure/placement.ts';
import { slabSite } from '../support/demoPlans.ts';
import { cylinder } from '../support/slabs.ts';

let wasm: Awaited<ReturnType<typeof Module>>;
beforeAll(async () => {
  wasm = await Module();
  wasm.setup();
});

// Reference values 6.4: r1 (coronal), r2 (apical), h → slant, side mm², volume mm³, half-angle, centroid from r1.
const ROWS = [
  [2.0, 2.0, 10, 10.0, 125.664, 125.664, 0, 5.0],
  [2.0, 1.5, 10, 10.0125, 110.093, 96.866, 2.862, 4.527],
  [2.1, 1.4, 12, 12.0204, 132.171, 116.993, 3.338, 5.2105],
  [1.75, 1.2, 10, 10.0151, 92.817, 69.141, 3.148, 4.3856],
] as const;

const frustum = (r1: number, r2: number, h: number): ImplantShape =>
  cylinder(r1, h, { apicalDiameter: 2 * r2, taperLength: r1 === r2 ? 0 : h });

const placed = (shape: ImplantShape): Placement =>
  new Placement(
    anatomyOf(slabSite()),
    shape,
    { platform: { m: 0, f: 0, c: 0 }, tilt: { faciopalatal: 0, mesiodistal: 0 }, roll: 0 },
    1,
  );

const solid = (mesh: TriangleMesh) =>
  new wasm.Manifold(
    new wasm.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(mesh.positions),
      triVerts: mesh.triangles,
    }),
  );

/** Centroid along the axis of a closed mesh, by tetrahedra from the origin (divergence theorem). */
function centroidZ({ positions: p, triangles: t }: TriangleMesh): number {
  let moment = 0;
  let six = 0;
  for (let i = 0; i < t.length; i += 3) {
    const [a, b, c] = [3 * t[i], 3 * t[i + 1], 3 * t[i + 2]];
    const v =
      p[a] * (p[b + 1] * p[c + 2] - p[b + 2] * p[c + 1]) +
      p[a + 1] * (p[b + 2] * p[c] - p[b] * p[c + 2]) +
      p[a + 2] * (p[b] * p[c + 1] - p[b + 1] * p[c]);
    six += v;
    moment += (v * (p[a + 2] + p[b + 2] + p[c + 2])) / 4;
  }
  return moment / six;
}

describe.each(ROWS)('frustum %d → %d over %d', (r1, r2, h, slant, side, volume, halfAngle, centroid) => {
  const shape = frustum(r1, r2, h);

  it('has the handbook’s slant and half-angle in its profile', () => {
    const { x, r } = envelopePolyline(shape);
    const last = x.length - 1;
    expect(Math.hypot(x[last] - x[0], r[last] - r[0])).toBeCloseTo(slant, 4);
    expect((Math.atan((r[0] - r[last]) / (x[last] - x[0])) * 180) / Math.PI).toBeCloseTo(halfAngle, 3);
    expect(envelopeOf(shape).radius(h / 2)).toBeCloseTo((r1 + r2) / 2, 12);
  });

  it('has the handbook’s side, whole and in parts', () => {
    const at = placed(shape);
    expect(lateralArea(at, 0, h)).toBeCloseTo(side, 3);
    expect(lateralArea(at, 0, 0.37 * h) + lateralArea(at, 0.37 * h, h)).toBeCloseTo(side, 3);
  });

  it('has the handbook’s volume and centroid as a mesh, but for the polygon in place of the circle', () => {
    const n = 256;
    const mesh = envelopeMesh(shape, { segments: n });
    // An n-gon in a circle has n/(2π) sin(2π/n) of its area.
    const polygon = (n / (2 * Math.PI)) * Math.sin((2 * Math.PI) / n);
    expect(meshVolume(mesh)).toBeCloseTo(volume * polygon, 3);
    expect(-centroidZ(mesh)).toBeCloseTo(centroid, 4);
  });

  it('equals the cone that manifold-3d builds, in volume and surface', () => {
    const n = 256;
    const ours = solid(envelopeMesh(shape, { segments: n }));
    const theirs = wasm.Manifold.cylinder(h, r2, r1, n, false).translate([0, 0, -h]);
    expect(ours.status()).toBe('NoError');
    expect(ours.volume()).toBeCloseTo(theirs.volume(), 3);
    expect(ours.surfaceArea()).toBeCloseTo(theirs.surfaceArea(), 3);
    // What either has and the other has not: nothing but single-precision dust.
    expect(ours.subtract(theirs).volume() + theirs.subtract(ours).volume()).toBeLessThan(1e-3);
    ours.delete();
    theirs.delete();
  });
});

// Reference values 6.4: cylinder sides.
it.each([
  [3.4, 10, 106.81],
  [4.0, 10, 125.66],
  [4.0, 13, 163.36],
  [5.0, 10, 157.08],
])('cylinder %d × %d has a side of %d mm²', (d, l, side) => {
  expect(lateralArea(placed(cylinder(d / 2, l)), 0, l)).toBeCloseTo(side, 2);
});

it('a body that tapers 2.0 → 1.4 over 11.5 has radius 1.695 at 5.84 mm (6.4)', () => {
  expect(envelopeOf(frustum(2, 1.4, 11.5)).radius(5.84)).toBeCloseTo(1.695, 3);
});

it('every shape of the library has the side of its frusta, and the mesh’s area comes to it from below', () => {
  for (const shape of IMPLANT_LIBRARY) {
    const at = placed(shape);
    const { x, r } = envelopePolyline(shape);
    let side = 0;
    for (let i = 1; i < x.length; i++)
      side += Math.PI * (r[i] + r[i - 1]) * Math.hypot(x[i] - x[i - 1], r[i] - r[i - 1]);
    expect(lateralArea(at, 0, x[x.length - 1]), shape.name).toBeCloseTo(side, 9);
    const body = solid(envelopeMesh(shape, { segments: 512 }));
    const discs = Math.PI * (r[0] ** 2 + r[r.length - 1] ** 2);
    expect(body.surfaceArea(), shape.name).toBeLessThan(side + discs);
    expect(body.surfaceArea(), shape.name).toBeGreaterThan((side + discs) * 0.9998);
    body.delete();
  }
});
