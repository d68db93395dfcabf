import Module from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { crownMesh, lowerCrownMesh, toothMesh } from '../../src/core/anatomy/crown.ts';
import { CLASS_NUMBERS, landmarksOf, type ToothClass } from '../../src/core/anatomy/landmarks.ts';
import { rootMesh } from '../../src/core/anatomy/root-mesh.ts';
import type { ToothNumbers } from '../../src/core/anatomy/site.ts';
import { LOWER_INCISORS, TOOTH_TABLE } from '../../src/core/anatomy/toothTable.ts';
import { meshVolume, mirrorMesh, type TriangleMesh } from '../../src/core/geometry/mesh.ts';
import { crossings, type Point, span, vertices } from '../support/meshProbe.ts';

const CLASSES: readonly ToothClass[] = ['central', 'lateral', 'canine', 'premolar1', 'premolar2'];
const FRONT: readonly ToothClass[] = ['central', 'lateral', 'canine'];

let wasm: Awaited<ReturnType<typeof Module>>;
beforeAll(async () => {
  wasm = await Module();
  wasm.setup();
});

function solid(mesh: TriangleMesh) {
  const body = new wasm.Manifold(
    new wasm.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(mesh.positions),
      triVerts: mesh.triangles,
    }),
  );
  const out = { status: body.status(), genus: body.genus(), parts: body.decompose().length };
  body.delete();
  return out;
}

function badEdges({ triangles }: TriangleMesh): number {
  const seen = new Map<string, number>();
  for (let i = 0; i < triangles.length; i += 3)
    for (let k = 0; k < 3; k++) {
      const key = `${triangles[i + k]},${triangles[i + ((k + 1) % 3)]}`;
      seen.set(key, (seen.get(key) ?? 0) + 1);
    }
  let bad = 0;
  for (const [key, count] of seen) {
    const [a, b] = key.split(',');
    if (count !== 1 || seen.get(`${b},${a}`) !== 1) bad++;
  }
  return bad;
}

/** Distance from a point to the mesh, by the nearest of 66 points on every triangle: up to 0.03 mm too much. */
function reach({ positions: p, triangles: t }: TriangleMesh, q: Point): number {
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < t.length; i += 3) {
    const corner = (k: number, axis: number): number => p[3 * t[i + k] + axis];
    if (Math.hypot(corner(0, 0) - q[0], corner(0, 1) - q[1], corner(0, 2) - q[2]) > best + 1) continue;
    for (let a = 0; a <= 10; a++)
      for (let b = 0; a + b <= 10; b++) {
        const at = (axis: number): number =>
          (a * corner(0, axis) + b * corner(1, axis) + (10 - a - b) * corner(2, axis)) / 10;
        best = Math.min(best, Math.hypot(at(0) - q[0], at(1) - q[1], at(2) - q[2]));
      }
  }
  return best;
}

describe.each(CLASSES)('the crown of the upper %s', (cls) => {
  const n = TOOTH_TABLE[cls];
  const crown = crownMesh(cls, n);

  it('is closed, outward, one solid, light, and its normals point outward', () => {
    expect(badEdges(crown)).toBe(0);
    expect(meshVolume(crown)).toBeGreaterThan(0);
    expect(solid(crown)).toEqual({ status: 'NoError', genus: 0, parts: 1 });
    expect(crown.triangles.length / 3).toBeLessThanOrEqual(8000);
    const normals = crown.normals;
    if (!normals) throw new Error('no normals');
    for (let i = 0; i < normals.length; i += 3)
      expect(Math.hypot(normals[i], normals[i + 1], normals[i + 2])).toBeCloseTo(1, 6);
    expect(badEdges(mirrorMesh(crown))).toBe(0);
    expect(meshVolume(mirrorMesh(crown))).toBeCloseTo(meshVolume(crown), 9);
  });

  it('has the widths, depth, length and CEJ of the table to 0.05 mm', () => {
    // Source: Nelson and Ash, Wheeler's Dental Anatomy, Table 1-1.
    const [x, y, z] = [span(crown, 0), span(crown, 1), span(crown, 2)];
    const near = (value: number, wanted: number): void => expect(Math.abs(value - wanted)).toBeLessThan(0.05);
    near(x.high - x.low, n.crownWidth);
    near(y.high - y.low, n.crownDepth);
    near(z.high, n.crownLength);
    near(z.low, 0);
    // The CEJ: most apical facially and palatally, curved incisally by the table's amounts at mesial and distal.
    const ring = vertices(crown).filter(
      (p) => Math.abs(Math.hypot((2 * p[0]) / n.cervixWidth, (2 * p[1]) / n.cervixDepth) - 1) < 1e-9,
    );
    const at = (px: number, py: number): number =>
      Math.min(...ring.filter((p) => Math.hypot(p[0] - px, p[1] - py) < 1e-9).map((p) => p[2]));
    near(at(n.cervixWidth / 2, 0), n.cejCurveMesial);
    near(at(-n.cervixWidth / 2, 0), n.cejCurveDistal);
    near(at(0, n.cervixDepth / 2), 0);
    near(at(0, -n.cervixDepth / 2), 0);
  });

  it('passes through its landmarks to 0.1 mm', () => {
    // Rule S10: the readings take these points from the numbers alone.
    for (const point of Object.values(landmarksOf(cls, n))) expect(reach(crown, point)).toBeLessThan(0.1);
  });

  it('touches its neighbours at the heights of the class', () => {
    // Contact heights: textbook proportions, from memory (distal contact more apical than mesial).
    const k = CLASS_NUMBERS[cls];
    const widest = (side: 1 | -1): number =>
      vertices(crown).reduce((best, p) => (side * p[0] > side * best[0] ? p : best))[2];
    expect(Math.abs(widest(1) / n.crownLength - k.contactMesial)).toBeLessThan(0.04);
    expect(Math.abs(widest(-1) / n.crownLength - k.contactDistal)).toBeLessThan(0.04);
    expect(widest(1)).toBeGreaterThan(widest(-1));
  });

  it('is convex facially in the side view, with its height of contour in the cervical third', () => {
    // Source: labial and buccal crests of curvature lie in the cervical third (carving texts; from memory).
    const profile = Array.from({ length: 17 }, (_, i) => {
      const z = n.crownLength * (0.03 + 0.055 * i);
      return Math.max(...crossings(crown, 1, [0.013, z]));
    });
    const highest = profile.indexOf(Math.max(...profile));
    expect(0.03 + 0.055 * highest).toBeLessThan(0.36);
    for (let i = 1; i + 1 < profile.length; i++)
      expect(profile[i - 1] - 2 * profile[i] + profile[i + 1]).toBeLessThan(0.012);
  });

  it('joins its root at the CEJ without a step', () => {
    const { crown: upper, root } = toothMesh(cls, n);
    const key = (p: Point): string => p.map((v) => Math.round(v * 1e5) + 0).join(' ');
    const keys = new Set(vertices(upper).map(key));
    const shared = vertices(root).filter((p) => keys.has(key(p)));
    expect(shared.length).toBeGreaterThanOrEqual(80);
  });
});

describe.each(FRONT)('the upper %s', (cls) => {
  const n = TOOTH_TABLE[cls];
  const crown = crownMesh(cls, n);

  it('has its cingulum in the cervical third and hollows of at least 0.4 mm above it', () => {
    // Source: cingulum in the cervical third, lingual fossa incisal of it between the marginal ridges (carving texts; from memory).
    const most = vertices(crown).reduce((best, p) => (p[1] < best[1] ? p : best));
    expect(most[2]).toBeGreaterThan(0.03 * n.crownLength);
    expect(most[2]).toBeLessThan(n.crownLength / 3);
    // Depth of the hollow: how far a straight edge laid across the palatal face from ridge to ridge stands off it.
    let deepest = 0;
    for (let i = 0; i < 10; i++) {
      const z = n.crownLength * (0.4 + 0.03 * i);
      const line = Array.from({ length: 61 }, (_, k) => {
        const x = (n.crownWidth / 2) * 0.85 * (k / 30 - 1) + 1e-3;
        return [x, Math.min(...crossings(crown, 1, [x, z]))] as const;
      }).filter(([, y]) => Number.isFinite(y));
      for (const [xa, ya] of line)
        for (const [xb, yb] of line) {
          if (xb - xa < 1) continue;
          const between = line.filter(([x]) => x > xa && x < xb);
          const gaps = between.map(([x, y]) => y - (ya + ((yb - ya) * (x - xa)) / (xb - xa)));
          if (gaps.length > 0 && Math.min(...gaps) >= 0) deepest = Math.max(deepest, ...gaps);
        }
    }
    expect(deepest).toBeGreaterThanOrEqual(0.4);
  });

  it('is rounder at its distal corner than at its mesial one', () => {
    // Source: distoincisal angle rounder than the mesioincisal (carving texts; from memory). Measured as the outline's area missing from its box.
    const outline = (side: 1 | -1): number => {
      let missing = 0;
      for (let i = 0; i < 60; i++) {
        const z = n.crownLength * (1 - 0.4 * ((i + 0.5) / 60));
        const row = crossings(crown, 0, [0.4, z]);
        const edge = row.length === 0 ? 0 : side > 0 ? row[row.length - 1] : -row[0];
        missing += ((n.crownWidth / 2 - edge) * 0.4 * n.crownLength) / 60;
      }
      return missing;
    };
    expect(outline(-1)).toBeGreaterThan(1.15 * outline(1));
  });
});

describe('the premolars', () => {
  it.each([
    ['premolar1', 1],
    ['premolar2', 0.4],
  ] as const)(
    '%s has a palatal cusp %d mm shorter than the facial one, and a groove between them',
    (cls, shorter) => {
      // Source: first premolar's palatal cusp about 1 mm shorter, the second's nearly level (carving texts; from memory).
      const n = TOOTH_TABLE[cls];
      const crown = crownMesh(cls, n);
      const facial = span(crown, 2, (p) => p[1] > 0.5).high;
      const palatal = span(crown, 2, (p) => p[1] < -0.5).high;
      expect(facial).toBeCloseTo(n.crownLength, 1);
      expect(facial - palatal).toBeCloseTo(shorter, 1);
      const middle = Math.max(...crossings(crown, 2, [0.01, -0.15]));
      expect(palatal - middle).toBeGreaterThan(1.4);
      // Marginal ridges lie between the groove and the cusps, on both sides.
      for (const x of [1, -1]) {
        const ridge = span(crown, 2, (p) => x * p[0] > 2.2 && Math.abs(p[1]) < 0.8).high;
        expect(ridge).toBeGreaterThan(middle + 0.3);
        expect(ridge).toBeLessThan(palatal);
      }
    },
  );
});

describe('crowns of other numbers', () => {
  it('stay closed solids over wide ranges of their numbers', () => {
    // Extremes of our own: a fifth smaller and larger than the table, square necks, flat and deep CEJs.
    for (const cls of CLASSES)
      for (const scale of [0.8, 1.2])
        for (const curve of [0, 1.3]) {
          const t = TOOTH_TABLE[cls];
          const n: ToothNumbers = {
            crownLength: t.crownLength * scale,
            rootLength: t.rootLength / scale,
            crownWidth: t.crownWidth / scale,
            cervixWidth: t.cervixWidth / scale,
            crownDepth: t.crownDepth * scale,
            cervixDepth: t.cervixDepth * scale,
            cejCurveMesial: t.cejCurveMesial * curve,
            cejCurveDistal: t.cejCurveDistal * curve,
          };
          const { crown, root } = toothMesh(cls, n, { columns: 40, rings: 24 });
          for (const mesh of [crown, root]) {
            expect(badEdges(mesh)).toBe(0);
            expect(meshVolume(mesh)).toBeGreaterThan(0);
            expect(solid(mesh)).toEqual({ status: 'NoError', genus: 0, parts: 1 });
          }
          const x = span(crown, 0);
          expect(Math.abs(x.high - x.low - n.crownWidth)).toBeLessThan(0.1);
          const z = span(crown, 2);
          expect(Math.abs(z.high - n.crownLength)).toBeLessThan(0.1);
        }
  });

  it.each(['central', 'lateral'] as const)('gives the lower %s its table numbers', (cls) => {
    // Source: Nelson and Ash, Table 1-1, lower incisors (from memory).
    const n = LOWER_INCISORS[cls];
    const crown = lowerCrownMesh(n);
    expect(solid(crown)).toEqual({ status: 'NoError', genus: 0, parts: 1 });
    const [x, y, z] = [span(crown, 0), span(crown, 1), span(crown, 2)];
    expect(Math.abs(x.high - x.low - n.crownWidth)).toBeLessThan(0.05);
    expect(Math.abs(y.high - y.low - n.crownDepth)).toBeLessThan(0.05);
    expect(Math.abs(z.high - n.crownLength)).toBeLessThan(0.05);
  });
});

describe('the root mesh', () => {
  it.each(CLASSES)('of the %s is the half-ellipsoid of its cervix and length, closed', (cls) => {
    const n = TOOTH_TABLE[cls];
    const root = rootMesh(n);
    expect(badEdges(root)).toBe(0);
    expect(solid(root)).toEqual({ status: 'NoError', genus: 0, parts: 1 });
    const [x, y, z] = [span(root, 0), span(root, 1), span(root, 2)];
    expect(x.high - x.low).toBeCloseTo(n.cervixWidth, 6);
    expect(y.high - y.low).toBeCloseTo(n.cervixDepth, 6);
    expect(z.low).toBeCloseTo(-n.rootLength, 6);
    // Every vertex below the CEJ's lowest point lies on the ellipsoid of rule S8, worked here from its equation.
    for (const [px, py, pz] of vertices(root)) {
      if (pz > -1e-9) continue;
      const e = ((2 * px) / n.cervixWidth) ** 2 + ((2 * py) / n.cervixDepth) ** 2 + (pz / n.rootLength) ** 2;
      expect(e).toBeCloseTo(1, 9);
    }
  });

  it('has the handbook volume of half an ellipsoid and an elliptic cylinder to the CEJ', () => {
    // Handbook: (2/3)π abc; the collar between the ellipse and z = c cos²θ is π ab c̄/2, its mean height half of the mean curve
    // weighted over the ellipse: ∫∫ z dA with z = c x²/a² … = π ab (c₁ + c₂)/8, less what a fan from (c₁ + c₂)/4 adds.
    const n = { ...TOOTH_TABLE.central, cejCurveMesial: 0, cejCurveDistal: 0 };
    const volume = ((2 / 3) * Math.PI * n.cervixWidth * n.cervixDepth * n.rootLength) / 4;
    expect(Math.abs(meshVolume(rootMesh(n, { columns: 240, rootRings: 96 })) / volume - 1)).toBeLessThan(
      1e-3,
    );
  });

  it('turns with its own axes, and keeps its ring at the crown', () => {
    const n = TOOTH_TABLE.central;
    const [c, s] = [Math.cos(0.15), Math.sin(0.15)];
    const tilted = rootMesh(n, { rootAxes: { ex: [1, 0, 0], ey: [0, c, -s], a: [0, s, c] } });
    expect(badEdges(tilted)).toBe(0);
    expect(solid(tilted)).toEqual({ status: 'NoError', genus: 0, parts: 1 });
    // By hand: the apex lies one root length along −a.
    const apex = [0, -n.rootLength * s, -n.rootLength * c];
    const miss = vertices(tilted).map((p) => Math.hypot(p[0], p[1] - apex[1], p[2] - apex[2]));
    expect(Math.min(...miss)).toBeLessThan(1e-9);
    expect(span(tilted, 2).high).toBeCloseTo(n.cejCurveMesial, 9);
  });
});
