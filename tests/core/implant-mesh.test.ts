import Module from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { meshVolume, type TriangleMesh } from '../../src/core/geometry/mesh.ts';
import { DEFAULT_IMPLANT, IMPLANT_LIBRARY, libraryShape } from '../../src/core/implant/library.ts';
import { envelopeMesh, implantMesh } from '../../src/core/implant/mesh.ts';
import { type ImplantShape, leadOf, overallLength, totalLength } from '../../src/core/implant/shape.ts';

let wasm: Awaited<ReturnType<typeof Module>>;
beforeAll(async () => {
  wasm = await Module();
  wasm.setup();
});

/** Second opinion on a mesh by manifold-3d: status, genus, volume, area. */
function solid(mesh: TriangleMesh) {
  const body = new wasm.Manifold(
    new wasm.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(mesh.positions),
      triVerts: mesh.triangles,
    }),
  );
  const out = {
    status: body.status(),
    genus: body.genus(),
    volume: body.volume(),
    area: body.surfaceArea(),
    parts: body.decompose().length,
  };
  body.delete();
  return out;
}

/** Edges that do not occur exactly once in each direction. */
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

const vertices = ({ positions: p }: TriangleMesh): [number, number, number][] =>
  Array.from({ length: p.length / 3 }, (_, i) => [p[3 * i], p[3 * i + 1], p[3 * i + 2]]);

const areaOf = ({ positions: p, triangles: t }: TriangleMesh, keep: (z: number) => boolean): number => {
  let area = 0;
  for (let i = 0; i < t.length; i += 3) {
    const [a, b, c] = [3 * t[i], 3 * t[i + 1], 3 * t[i + 2]];
    if (!keep((p[a + 2] + p[b + 2] + p[c + 2]) / 3)) continue;
    const u = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
    const v = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
    area += Math.hypot(u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]) / 2;
  }
  return area;
};

const NONE = { count: 0, length: 0, depth: 0 } as const;
const own = (over: Partial<ImplantShape>): ImplantShape => ({ ...DEFAULT_IMPLANT, ...over });
const straight = (over: Partial<ImplantShape>): ImplantShape =>
  own({
    transmucosalLength: 0,
    taperLength: 0,
    flutes: NONE,
    apicalDiameter: 4,
    implantedDiameter: 4,
    platformDiameter: 4,
    ...over,
  });
/** Share of a circle's area and length that a regular polygon of n corners has (elementary geometry). */
const polygonArea = (n: number): number => Math.sin((2 * Math.PI) / n) / ((2 * Math.PI) / n);
const polygonLength = (n: number): number => Math.sin(Math.PI / n) / (Math.PI / n);

describe('the envelope mesh', () => {
  // Source: handbook formulas of the frustum, π h (r₁² + r₁r₂ + r₂²)/3 and π (r₁ + r₂) s, here as worked figures.
  it.each([
    ['cylinder', 4, 4, 10, 125.664, 125.664],
    ['frustum', 3, 4, 10, 96.866, 110.093],
    ['long frustum', 2.8, 4.2, 12, 116.993, 132.171],
  ])(
    'of a %s has the handbook volume and side, less the tessellation',
    (_, apical, body, h, volume, side) => {
      const n = 256;
      const shape = straight({
        apicalDiameter: apical,
        implantedDiameter: body,
        platformDiameter: body,
        taperLength: h,
        implantedLength: h,
      });
      const mesh = envelopeMesh(shape, { segments: n });
      expect(meshVolume(mesh)).toBeCloseTo(volume * polygonArea(n), 2);
      const discs = (Math.PI * (apical ** 2 + body ** 2)) / 4;
      const total = side * polygonLength(n) + discs * polygonArea(n);
      expect(Math.abs(areaOf(mesh, () => true) / total - 1)).toBeLessThan(1e-4);
      expect(Math.abs(solid(mesh).volume / meshVolume(mesh) - 1)).toBeLessThan(1e-5);
    },
  );

  it('is the sum of its frusta for a tapered shape with a flared neck', () => {
    // By hand, frustum formula: taper 1→1.5 over 8, cylinder 1.5 over 3, flare 1.5→1.75 over 1.5.
    const byHand = (Math.PI / 3) * (8 * (1 + 1.5 + 2.25) + 9 * 2.25 + 1.5 * (2.25 + 2.625 + 3.0625));
    const mesh = envelopeMesh(DEFAULT_IMPLANT, { segments: 64 });
    expect(meshVolume(mesh) / polygonArea(64)).toBeCloseTo(byHand, 9);
    expect(solid(mesh)).toMatchObject({ status: 'NoError', genus: 0, parts: 1 });
  });
});

describe.each(IMPLANT_LIBRARY.map((s) => [s.name, s] as const))('the implant mesh of %s', (_, shape) => {
  const { body } = implantMesh(shape);

  it('is closed, outward, in one piece, without a hole, for manifold-3d too', () => {
    expect(badEdges(body)).toBe(0);
    expect(meshVolume(body)).toBeGreaterThan(0);
    const second = solid(body);
    expect(second).toMatchObject({ status: 'NoError', genus: 0, parts: 1 });
    expect(second.volume).toBeCloseTo(meshVolume(body), 3);
  });

  it('reaches from the apex to the shoulder or the abutment and is light', () => {
    const z = vertices(body).map((v) => v[2]);
    expect(Math.min(...z)).toBeCloseTo(-totalLength(shape), 9);
    const top = shape.abutment ? overallLength(shape) - totalLength(shape) : shape.scallop;
    expect(Math.max(...z)).toBeCloseTo(top, 9);
    expect(body.triangles.length / 3).toBeLessThan(9000);
  });

  it('never stands outside the envelope, and its crests lie on it', () => {
    // Rule S15, evaluated here by its own words.
    const bottom = -totalLength(shape);
    const envelope = (z: number): number => {
      const [tip, thick, platform] = [
        shape.apicalDiameter / 2,
        shape.implantedDiameter / 2,
        shape.platformDiameter / 2,
      ];
      if (z > -shape.transmucosalLength)
        return platform + (Math.min(z, 0) * (platform - thick)) / shape.transmucosalLength;
      return z - bottom < shape.taperLength
        ? tip + ((thick - tip) * (z - bottom)) / shape.taperLength
        : thick;
    };
    const p = body.positions;
    const t = body.triangles;
    let outside = 0;
    let touching = 0;
    for (let i = 0; i < t.length; i += 3) {
      // Corners, edge middles and centre of every triangle.
      for (const w of [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
        [0.5, 0.5, 0],
        [0, 0.5, 0.5],
        [0.5, 0, 0.5],
        [1 / 3, 1 / 3, 1 / 3],
      ]) {
        const at = (k: number): number =>
          w[0] * p[3 * t[i] + k] + w[1] * p[3 * t[i + 1] + k] + w[2] * p[3 * t[i + 2] + k];
        const z = at(2);
        if (z > 0) continue;
        const excess = Math.hypot(at(0), at(1)) - envelope(z);
        outside = Math.max(outside, excess);
        if (z < -shape.transmucosalLength - 0.01 && z > bottom + 0.01 && Math.abs(excess) < 1e-9) touching++;
      }
    }
    expect(outside).toBeLessThan(1e-6);
    expect(touching).toBeGreaterThan(500);
  });
});

/** Levels of the groove's deepest points at an angle, coronal to apical, from vertices near that angle. */
function grooves(mesh: TriangleMesh, angle: number, shape: ImplantShape): number[] {
  const core = shape.implantedDiameter / 2 - shape.thread.depth;
  return vertices(mesh)
    .filter(([x, y]) => Math.abs(Math.hypot(x, y) - core) < 1e-9)
    .filter(([x, y]) => Math.abs(Math.atan2(y, x) - angle) < 1e-9)
    .map((v) => v[2])
    .sort((a, b) => b - a);
}

describe('the thread', () => {
  it.each([1, 2, 3])('rises by its lead in one right-handed turn with %d starts', (starts) => {
    // Right-handed: going anticlockwise as seen from the tip of z the groove climbs along + z (definition of a right-handed helix).
    const shape = straight({ implantedLength: 14, thread: { depth: 0.3, pitch: 0.8, starts } });
    const { body } = implantMesh(shape, { segments: 64 });
    let level = grooves(body, 0, shape)[8];
    const first = level;
    for (let j = 1; j <= 64; j++) {
      const angle = (2 * Math.PI * j) / 64;
      const wrapped = angle > Math.PI + 1e-9 ? angle - 2 * Math.PI : angle;
      const near = grooves(body, wrapped, shape).filter((z) => Math.abs(z - level) < 0.2);
      expect(near).toHaveLength(1);
      expect(near[0]).toBeGreaterThan(level);
      level = near[0];
    }
    expect(level - first).toBeCloseTo(leadOf(shape), 9);
  });

  it('has grooves one pitch apart along the axis', () => {
    const shape = straight({ thread: { depth: 0.3, pitch: 0.6, starts: 2 } });
    const levels = grooves(implantMesh(shape).body, 0, shape);
    expect(levels.length).toBeGreaterThan(10);
    for (let i = 1; i < levels.length; i++) expect(levels[i - 1] - levels[i]).toBeCloseTo(0.6, 9);
  });

  it('has the flank area of a V thread on a parallel stretch', () => {
    // Source: V-thread area factor 2√((p/2)² + t²)/p = 1.329 for p = 0.8, t = 0.35, on the mean diameter (derived, reference table).
    const shape = straight({ implantedLength: 14, thread: { depth: 0.35, pitch: 0.8, starts: 1 } });
    const { body } = implantMesh(shape, { segments: 128 });
    const stretch = 8 * 0.8;
    const area = areaOf(body, (z) => z < -2 && z >= -2 - stretch);
    expect(Math.abs(area / (2 * Math.PI * (2 - 0.35 / 2) * stretch) / 1.329 - 1)).toBeLessThan(0.01);
  });

  it('runs out to nothing at both ends', () => {
    const shape = straight({});
    const inside = vertices(implantMesh(shape).body).filter(
      ([x, y, z]) => Math.hypot(x, y) < 2 - 0.1 && Math.hypot(x, y) > 1.5 && z < 0,
    );
    const z = inside.map((v) => v[2]);
    expect(Math.max(...z)).toBeLessThan(-0.8 / 4);
    expect(Math.min(...z)).toBeGreaterThan(-11 + 0.8 / 4);
  });

  it('stays closed where lines, ends and columns fall together', () => {
    // Awkward numbers of our own: whole pitches, no thread depth, odd column counts, a very short body.
    const awkward: Partial<ImplantShape>[] = [
      { thread: { depth: 0, pitch: 0.8, starts: 1 } },
      { thread: { depth: 0.3, pitch: 1, starts: 4 }, implantedLength: 6 },
      {
        thread: { depth: 0.3, pitch: 0.5, starts: 1 },
        implantedLength: 10,
        taperLength: 10,
        apicalDiameter: 2,
      },
      { transmucosalLength: 3, platformDiameter: 3, scallop: 1.5, index: 1 },
      { abutment: { height: 6, baseDiameter: 4, topDiameter: 3 }, index: 3 },
      { flutes: { count: 4, length: 11, depth: 1.2 }, index: 12 },
      { flutes: { count: 2, length: 0.3, depth: 0.1 }, transmucosalLength: 0.4, scallop: 1, index: 1 },
      { transmucosalLength: 1, index: 5, flutes: { count: 3, length: 4, depth: 0.6 } },
    ];
    for (const over of awkward)
      for (const segments of [9, 32, 100]) {
        const { body } = implantMesh(straight(over), { segments });
        expect(badEdges(body)).toBe(0);
        expect(solid(body)).toMatchObject({ status: 'NoError', genus: 0, parts: 1 });
      }
  });
});

describe('the shoulder', () => {
  it('stands a scallop coronal of the platform plane, low facially and palatally', () => {
    // Rule S15: A(1 − cos 2φ)/2 on the azimuth φ from the mark.
    const shape = libraryShape('tapered-scalloped-40x11');
    if (!shape) throw new Error('the library has no scalloped shape');
    const rim = vertices(implantMesh(shape).body).filter(
      ([x, y, z]) => z > -1e-9 && Math.abs(Math.hypot(x, y) - shape.platformDiameter / 2) < 1e-9,
    );
    const highest = (angle: number): number =>
      Math.max(
        ...rim
          .filter(([x, y]) => Math.hypot(x - 2.5 * Math.cos(angle), y - 2.5 * Math.sin(angle)) < 1e-6)
          .map((v) => v[2]),
      );
    expect(highest(0)).toBeCloseTo(0, 9);
    expect(highest(Math.PI)).toBeCloseTo(0, 9);
    expect(highest(Math.PI / 2)).toBeCloseTo(1, 9);
    expect(highest(Math.PI / 4)).toBeCloseTo(0.5, 9);
  });

  it.each(IMPLANT_LIBRARY.map((s) => [s.name, s] as const))(
    'has the mark engraved on the side of + x: %s',
    (_, shape) => {
      // Rule S15: the mark's azimuth is + x, and the surface it is let into is the envelope's neck or the flat platform. 0.12 mm deep: ours.
      const { body, markFrom } = implantMesh(shape);
      const corners = new Set(body.triangles.slice(3 * markFrom));
      expect(corners.size).toBe(shape.index > 0 ? 8 : 0);
      const places = vertices(body);
      const depths = [...corners].map((v) => {
        const [x, y, z] = places[v];
        expect(x).toBeGreaterThan(2 * Math.abs(y));
        if (shape.transmucosalLength === 0) return -z;
        const flare = (shape.platformDiameter - shape.implantedDiameter) / 2;
        return shape.platformDiameter / 2 + (z * flare) / shape.transmucosalLength - Math.hypot(x, y);
      });
      depths.sort((a, b) => a - b);
      for (const [i, depth] of depths.entries()) expect(depth).toBeCloseTo(i < 4 ? 0 : 0.12, 9);
    },
  );
});

/** A straight body of radius 2 with flutes 0.5 deep over 5 mm and a thread too shallow to see. */
const fluted = (count: 0 | 2 | 3 | 4): ImplantShape =>
  straight({ thread: { depth: 1e-4, pitch: 0.4, starts: 1 }, flutes: { count, length: 5, depth: 0.5 } });

/** Area of the section at `z`, mm², by manifold-3d. */
function sectionArea(mesh: TriangleMesh, z: number): number {
  const body = new wasm.Manifold(
    new wasm.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(mesh.positions),
      triVerts: mesh.triangles,
    }),
  );
  const section = body.slice(z);
  const area = section.area();
  section.delete();
  body.delete();
  return area;
}

describe('the flutes', () => {
  it.each([2, 3, 4] as const)(
    'are %d least radii round the axis near the apex, 0.5 mm below the crests',
    (count) => {
      const { body } = implantMesh(fluted(count), { segments: 128 });
      const rim = vertices(body)
        .filter(([x, y, z]) => Math.abs(z + 11) < 1e-9 && Math.hypot(x, y) > 0.1)
        .map(([x, y]) => ({ angle: Math.atan2(y, x), r: Math.hypot(x, y) }))
        .sort((a, b) => a.angle - b.angle);
      const r = rim.map((v) => v.r);
      const lows = r.filter((v, i) => {
        const before = r[(i + r.length - 1) % r.length];
        return v < before - 1e-9 && v <= r[(i + 1) % r.length] + 1e-9;
      });
      expect(lows).toHaveLength(count);
      for (const low of lows) expect(low).toBeCloseTo(1.5, 9);
      expect(Math.max(...r)).toBeCloseTo(2, 9);
      // A land at the mark, so that the section through it shows the body's true width.
      expect(rim.find((v) => Math.abs(v.angle) < 1e-9)?.r).toBeCloseTo(2, 9);
    },
  );

  it.each([2, 3, 4] as const)('take the area of %d grooves away, and run out coronally', (count) => {
    // By hand, rule S15: a groove of angle w in a round of radius R = 2, D = 0.5 deep, ½∫(R² − (R − D(1 − u²))²) w du =
    // w (2RD/3 − 4D²/15) = 0.6 w; w is 0.42 of a sector, at most 1 rad. Half a per cent for the cutting face, which is not quite radial.
    const w = Math.min(1, (0.42 * 2 * Math.PI) / count);
    const groove = w * ((2 * 2 * 0.5) / 3 - (4 * 0.25) / 15);
    const [with_, without] = [count, 0 as const].map((n) => implantMesh(fluted(n), { segments: 256 }).body);
    for (const z of [-10.9, -9.5, -8.1]) {
      const taken = sectionArea(without, z) - sectionArea(with_, z);
      expect(Math.abs(taken / (count * groove) - 1)).toBeLessThan(0.015);
    }
    // 60 % of the length in full; then at v the groove is (1 − v²)^(3/2) of itself to first order of D, whose mean over v is 3π/16.
    const length = 5 * (0.6 + (0.4 * 3 * Math.PI) / 16);
    const taken = solid(without).volume - solid(with_).volume;
    expect(Math.abs(taken / (count * groove * length) - 1)).toBeLessThan(0.03);
    expect(sectionArea(with_, -5.5)).toBeCloseTo(sectionArea(without, -5.5), 4);
  });

  it('cut with the side that leads as a right-handed thread is screwed in', () => {
    // Screwed in, it turns clockwise as seen from coronal: a point of the land moves toward lesser angles, so that its leading side looks
    // down the angle and falls off at once, while the other side rises slowly.
    const { body } = implantMesh(fluted(3), { segments: 128 });
    const rim = vertices(body)
      .filter(([x, y, z]) => Math.abs(z + 11) < 1e-9 && Math.hypot(x, y) > 0.1)
      .map(([x, y]) => ({ angle: Math.atan2(y, x), r: Math.hypot(x, y) }))
      .sort((a, b) => a.angle - b.angle);
    const steps = rim.slice(1).map((v, i) => (v.r - rim[i].r) / (v.angle - rim[i].angle));
    expect(Math.max(...steps)).toBeGreaterThan(20);
    expect(Math.min(...steps)).toBeGreaterThan(-2);
  });

  it('leave no flute where the shape has none', () => {
    const round = implantMesh(fluted(0)).body;
    expect(sectionArea(round, -10)).toBeCloseTo(Math.PI * 4 * polygonArea(64), 2);
  });
});
