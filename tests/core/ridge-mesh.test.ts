import { describe, expect, it } from 'vitest';
import { type Anatomy, anatomyOf } from '../../src/core/anatomy/anatomy.ts';
import { toArch } from '../../src/core/anatomy/arch.ts';
import { canalMesh } from '../../src/core/anatomy/canalMesh.ts';
import { floorMesh } from '../../src/core/anatomy/floorMesh.ts';
import { RIDGE_BEYOND, ridgeMesh } from '../../src/core/anatomy/ridgeMesh.ts';
import { RidgeShell } from '../../src/core/anatomy/ridgeShell.ts';
import { sectionOutline } from '../../src/core/anatomy/section.ts';
import { SITES, type Site, type SocketState } from '../../src/core/anatomy/site.ts';
import { plannedTooth } from '../../src/core/anatomy/toothMeshes.ts';
import { meshVolume, type TriangleMesh } from '../../src/core/geometry/mesh.ts';
import { type Loop, onPlane, type Plane, sliceMesh } from '../../src/core/geometry/slice.ts';
import { along, dot, sub, type Vec3 } from '../../src/core/geometry/vec.ts';
import { siteFaults } from '../../src/core/plan/check.ts';
import { defaultSite } from '../../src/core/plan/defaults.ts';
import { evaluate, readingOf } from '../../src/core/plan/evaluate.ts';
import { seeded } from '../oracle/plans.ts';
import { SITES_DEMO, slabSite } from '../support/demoPlans.ts';
import { opinionOn } from '../support/solid.ts';

const SOCKET: SocketState = {
  kind: 'socket',
  axis: { faciopalatal: 36, mesiodistal: 3 },
  width: 5.5,
  breadth: 6,
  depth: 12,
  parallel: 4,
  wall: { thickness: 1, level: 3 },
  dehiscence: { depth: 0, width: 3 },
};

const withSocket = (site: Site, over: Partial<SocketState> = {}): Site => ({
  ...site,
  ridge: { ...site.ridge, widths: site.mesial.ridge.widths, undercut: { ...site.ridge.undercut, depth: 0 } },
  state: { ...SOCKET, ...over },
});

const vertex = ({ positions: p }: TriangleMesh, i: number): Vec3 => [p[3 * i], p[3 * i + 1], p[3 * i + 2]];

/** The section `m = 0` in the ridge's own coordinates: across it, + facial, and up along its axis. */
function siteSection(anatomy: Anatomy): Loop {
  const { cos, sin } = anatomy.ridge;
  const plane: Plane = { origin: [1e-7, 0, 0], x: [0, cos, -sin], y: [0, sin, cos] };
  return sliceMesh(ridgeMesh(anatomy).mesh, plane)[0];
}

/** Where a loop crosses a level: sorted. */
function crossings(loop: Loop, level: number): number[] {
  const out: number[] = [];
  loop.forEach(([x0, y0], i) => {
    const [x1, y1] = loop[(i + 1) % loop.length];
    if (y0 > level !== y1 > level) out.push(x0 + ((x1 - x0) * (level - y0)) / (y1 - y0));
  });
  return out.sort((a, b) => a - b);
}

/** Straight arch, upright ridge, half-widths 4 and 5 throughout. */
function plainSite(): Site {
  const s = slabSite(8);
  const widths = [1, 15].map((depth) => ({ depth, facial: 4, palatal: 5 }));
  const about = { widths, inclination: 0 };
  return {
    ...s,
    ridge: { ...s.ridge, widths },
    mesial: { ...s.mesial, ridge: about },
    distal: { ...s.distal, ridge: about },
  };
}

describe('the ridge mesh', () => {
  it.each(SITES)('lies on the surface of the model, site %i', (tooth) => {
    // Source: rule S5: the solid's function is 0 on the surface. Its trimmed face and its flat ends are not on it.
    const anatomy = anatomyOf(defaultSite(tooth));
    const { mesh, walls } = ridgeMesh(anatomy);
    const { trimmed } = new RidgeShell(anatomy.ridge);
    let worst = 0;
    let seen = 0;
    for (const i of new Set(mesh.triangles.subarray(0, 3 * walls))) {
      const p = vertex(mesh, i);
      if (toArch(anatomy.arch, p)[1] < trimmed + 1e-6) continue;
      worst = Math.max(worst, Math.abs(anatomy.ridge.solid(...p)));
      seen++;
    }
    expect(worst).toBeLessThan(1e-9);
    expect(seen).toBeGreaterThan(5000);
  });

  it.each(SITES)('measures the widths that were entered, to 0.01 mm, site %i', (tooth) => {
    // Source: the entries of the site itself, rule S2: half-widths across the ridge's own axis at each depth.
    const anatomy = anatomyOf(defaultSite(tooth));
    const loop = siteSection(anatomy);
    for (const { depth, facial, palatal } of anatomy.site.ridge.widths) {
      const [left, right] = crossings(loop, -depth);
      expect(Math.abs(right - facial)).toBeLessThan(0.01);
      expect(Math.abs(left + palatal)).toBeLessThan(0.01);
    }
  });

  it('has the undercut, the crest levels, the eminences and the floor that were entered', () => {
    // Worked by hand: half-width 4 less 1.2 at the level and nothing 3 mm from it; crests by rule S1; height 18, upright; eminence 0.5
    // over the middle of a root: the root's origin lies 2 mm above its bone, its tip 13 mm below that, so the middle lies 4.5 deep.
    const s = plainSite();
    const cut = anatomyOf({
      ...s,
      ridge: { ...s.ridge, undercut: { depth: 1.2, level: 8, halfHeight: 3 } },
      mesial: { ...s.mesial, boneLevel: 1.5 },
      distal: { ...s.distal, boneLevel: -0.5 },
    });
    const loop = siteSection(cut);
    for (const [level, half] of [
      [8, 2.8],
      [5, 4],
      [11, 4],
    ])
      expect(Math.abs(crossings(loop, -level)[1] - half)).toBeLessThan(0.01);
    expect(crossings(loop, -8)[0]).toBeCloseTo(-5, 6);
    expect(Math.min(...loop.map((p) => p[1]))).toBeCloseTo(-18, 9);
    const along = sliceMesh(ridgeMesh(cut).mesh, { origin: [0, 1e-7, 0], x: [1, 0, 0], y: [0, 0, 1] })[0];
    const topAt = (m: number) =>
      Math.max(
        ...crossings(
          along.map(([x, y]) => [y, x] as const),
          m,
        ),
      );
    expect(topAt(0.001)).toBeCloseTo(0, 2);
    expect(topAt(cut.teeth.mesial.station)).toBeCloseTo(1.5, 2);
    expect(topAt(cut.teeth.distal.station)).toBeCloseTo(-0.5, 2);
    expect(Math.max(...along.map((p) => p[0]))).toBeCloseTo(cut.teeth.mesial.station + RIDGE_BEYOND, 9);

    const bulged = anatomyOf({ ...s, ridge: { ...s.ridge, eminence: { height: 0.5, halfWidth: 3 } } });
    const q = bulged.teeth.mesial.station;
    const [middle] = sliceMesh(ridgeMesh(bulged).mesh, { origin: [q, 0, 0], x: [0, 1, 0], y: [0, 0, 1] });
    expect(Math.abs(crossings(middle, -4.5)[1] - 4.5)).toBeLessThan(0.012);
  });

  it('has the volume of a plain box', () => {
    // Source: length × (width × height less what the crest's rounding takes: two quarter ellipses of semi-axes 4 and 5 by 0.05).
    const anatomy = anatomyOf(plainSite());
    const length = anatomy.teeth.mesial.station - anatomy.teeth.distal.station + 2 * RIDGE_BEYOND;
    const section = 9 * 18 - 9 * 0.05 * (1 - Math.PI / 4);
    expect(meshVolume(ridgeMesh(anatomy).mesh) / (length * section)).toBeCloseTo(1, 5);
  });

  it.each(SITES)('is a closed solid without handles, healed or with a socket, site %i', async (tooth) => {
    // Source: manifold-3d, an independent solid modeller.
    const healed = defaultSite(tooth);
    const dehisced = withSocket(healed, { dehiscence: { depth: 4, width: 3.5 } });
    const widely = withSocket(healed, { dehiscence: { depth: 6, width: 8 } });
    for (const site of [healed, withSocket(healed), dehisced, widely]) {
      const { mesh } = ridgeMesh(anatomyOf(site));
      const found = await opinionOn(mesh);
      expect(found).toMatchObject({ status: 'NoError', genus: 0, parts: 1 });
      expect(found.volume).toBeGreaterThan(1000);
      expect(found.volume / meshVolume(mesh)).toBeCloseTo(1, 4);
    }
  });

  it('is a closed solid on 20 random sites and on the demo sites', async () => {
    // Source: manifold-3d.
    const random = seeded(7);
    const sites: Site[] = SITES_DEMO.map(({ plan }) => plan.site);
    while (sites.length < 20 + SITES_DEMO.length) {
      const s = defaultSite(SITES[Math.floor(random() * SITES.length)]);
      const between = (lo: number, hi: number) => lo + (hi - lo) * random();
      const widths = s.ridge.widths.map((w) => ({
        ...w,
        facial: w.facial * between(0.7, 1.3),
        palatal: w.palatal * between(0.7, 1.3),
      }));
      const site: Site = {
        ...s,
        arch: { width: 34, depth: between(0, 8) },
        ridge: {
          ...s.ridge,
          widths,
          inclination: between(0, 45),
          crestRounding: between(0.1, 3),
          height: between(14, 22),
          undercut: { depth: between(0, 1), level: between(3, 8), halfHeight: between(2, 4) },
        },
        state:
          random() < 0.4 ? { ...SOCKET, depth: between(8, 13), width: between(4, 6) } : { kind: 'healed' },
        gap: between(5.5, 9),
        mesial: { ...s.mesial, boneLevel: between(-1, 2) },
        distal: { ...s.distal, boneLevel: between(-1, 2) },
      };
      if (siteFaults(site).length === 0) sites.push(site);
    }
    for (const site of sites) {
      const found = await opinionOn(ridgeMesh(anatomyOf(site)).mesh);
      expect(found).toMatchObject({ status: 'NoError', genus: 0, parts: 1 });
      expect(found.volume).toBeGreaterThan(500);
    }
  });

  it('has lost the bone that a socket’s void takes', () => {
    // Source: rule S11, counted on a grid of 0.12 mm points: those in the ridge and in the void. A dehiscence takes more, on its side.
    const base = withSocket(defaultSite(14));
    const whole = meshVolume(ridgeMesh(anatomyOf({ ...base, state: { kind: 'healed' } })).mesh);
    // The last one is wider than the socket.
    for (const [depth, width] of [
      [0, 3.5],
      [4, 3.5],
      [5, 7.5],
    ]) {
      const anatomy = anatomyOf(withSocket(base, { dehiscence: { depth, width } }));
      const { ridge, socket } = anatomy;
      const step = 0.12;
      let count = 0;
      for (let m = -4.2; m < 4.2; m += step)
        for (let f = -9; f < 7; f += step)
          for (let c = -16; c < 3; c += step)
            if (ridge.solid(m, f, c) < 0 && socket?.contains([m, f, c])) count++;
      const lost = whole - meshVolume(ridgeMesh(anatomy).mesh);
      expect(lost / (count * step ** 3)).toBeGreaterThan(0.97);
      expect(lost / (count * step ** 3)).toBeLessThan(1.03);
    }
  });
});

describe('the section', () => {
  const plan = SITES_DEMO[0].plan;
  const found = evaluate(plan);
  const { placement, anatomy } = found;
  const plane: Plane = { origin: placement.entry, x: placement.ef, y: placement.a };

  it('draws the bone’s outline on the surface', () => {
    // Source: rule S5 (0 on the surface) and S6 (the floor).
    const outline = sectionOutline(anatomy, plane);
    const { trimmed } = new RidgeShell(anatomy.ridge);
    expect(outline.bone).toHaveLength(1);
    const off = outline.bone[0]
      .map(([x, y]) => onPlane(plane, x, y))
      .filter((p) => p[2] > anatomy.ridge.floor + 0.01 && toArch(anatomy.arch, p)[1] > trimmed + 0.01)
      .map((p) => Math.abs(anatomy.ridge.solid(...p)));
    expect(off.length).toBeGreaterThan(150);
    expect(Math.max(...off)).toBeLessThan(0.001);
  });

  it('ends every wall’s dimension line on that outline', () => {
    // Source: the readings' own points, which were found without any mesh.
    const { bone } = sectionOutline(anatomy, plane);
    const inJaw = bone[0].map(([x, y]) => anatomy.toJaw(onPlane(plane, x, y)));
    for (const id of ['facial-wall-3mm', 'facial-wall-thinnest', 'palatal-wall-apex'] as const) {
      const { to } = readingOf(found.readings, id);
      expect(to).not.toBeNull();
      const away = inJaw.map((a, i) => segmentDistance(to ?? [0, 0, 0], a, inJaw[(i + 1) % inJaw.length]));
      expect(Math.min(...away)).toBeLessThan(0.01);
    }
  });

  it('keeps the spongy bone within the cortex, as thick as entered', () => {
    // Source: the site's own numbers: cortex 0.9 facially, 1.2 palatally, across the ridge's axis.
    const { cos, sin } = anatomy.ridge;
    const upright: Plane = { origin: [1e-7, 0, 0], x: [0, cos, -sin], y: [0, sin, cos] };
    const outline = sectionOutline(anatomy, upright);
    const [outer] = outline.bone;
    const [inner] = outline.marrow;
    const [o0, o1] = crossings(outer, -9);
    const [i0, i1] = crossings(inner, -9);
    expect(o1 - i1).toBeCloseTo(anatomy.site.ridge.cortex.facial, 2);
    expect(i0 - o0).toBeCloseTo(anatomy.site.ridge.cortex.palatal, 2);
    // Over the floor 0.8, as drawn; the floor itself is the bone's lower edge (rule S6).
    const lowest = (loop: Loop) => Math.min(...loop.map(([x, y]) => onPlane(upright, x, y)[2]));
    expect(lowest(inner) - lowest(outer)).toBeCloseTo(0.8, 6);
    expect(lowest(outer)).toBeCloseTo(anatomy.ridge.floor, 6);
  });

  it('shows the roots beside the gap in the mesiodistal cut, and the planned crown', () => {
    // Source: the tooth table's root length; the plane is laid through both roots' origins and the mesial root's tip.
    const { root } = anatomy.teeth.mesial;
    const up: Vec3 = root.a;
    const outline = sectionOutline(anatomy, { origin: root.centre, x: root.ex, y: up });
    const own = outline.teeth.find((t) => t.code === anatomy.teeth.mesial.code);
    const [line] = own?.root ?? [];
    expect(Math.min(...line.map((p) => p[1]))).toBeCloseTo(-root.semi[2], 1);
    const tooth = plannedTooth(anatomy);
    // Source: the model: a reference level is that of the facial CEJ.
    const facial = along(tooth.origin, tooth.ey, tooth.numbers.cervixDepth / 2);
    expect(facial[2]).toBeCloseTo(anatomy.site.reference.cej, 9);
    // Across the planned crown through its tip, which need not stand over the middle of its cervix.
    const aside = dot(sub(tooth.marks.tip, tooth.origin), tooth.ex);
    const origin = along(tooth.origin, tooth.ex, aside);
    const { crown } = sectionOutline(anatomy, { origin, x: tooth.ey, y: tooth.a });
    const tip = Math.max(...crown[0].map((p) => p[1]));
    expect(tip).toBeCloseTo(anatomy.site.crown.crownLength, 1);
  });

  it('leaves the void out of bone and marrow', () => {
    const socketed = anatomyOf(withSocket(defaultSite(14)));
    const { socket } = socketed;
    const axis: Plane = {
      origin: socket?.centre ?? [0, 0, 0],
      x: socket?.ef ?? [1, 0, 0],
      y: socket?.a ?? [0, 1, 0],
    };
    const { bone, marrow } = sectionOutline(socketed, axis);
    // Worked by hand: at the top of the half-ellipsoid the void is as broad as entered.
    const [, left, right] = crossings(bone[0], 0.01);
    expect(right - left).toBeCloseTo(SOCKET.breadth, 1);
    expect(crossings(marrow[0], 0.01)).toHaveLength(4);
  });
});

describe('canal and floor', () => {
  it('makes the tube that was entered', async () => {
    // Source: frustum volume π h (r₁² + r₁r₂ + r₂²)/3, both halves; a regular polygon of 36 corners has 0.99493 of its circle.
    const { canal } = anatomyOf(defaultSite(11));
    const mesh = canalMesh(canal);
    const [a, b, c] = canal.radii;
    const half = canal.length / 2;
    const frustum = (x: number, y: number) => (Math.PI * half * (x * x + x * y + y * y)) / 3;
    const found = await opinionOn(mesh);
    expect(found).toMatchObject({ status: 'NoError', genus: 0, parts: 1 });
    expect(found.volume).toBeCloseTo(0.99493 * (frustum(a, b) + frustum(b, c)), 2);
  });

  it('lays the floor in its plane, facing coronally', () => {
    const anatomy = anatomyOf(defaultSite(12));
    const { positions, triangles } = floorMesh(anatomy);
    for (let i = 2; i < positions.length; i += 3) expect(positions[i]).toBeCloseTo(anatomy.ridge.floor, 9);
    const [a, b, c] = [0, 1, 2].map((k) => 3 * triangles[k]);
    const turn =
      (positions[b] - positions[a]) * (positions[c + 1] - positions[a + 1]) -
      (positions[b + 1] - positions[a + 1]) * (positions[c] - positions[a]);
    expect(turn).toBeGreaterThan(0);
  });
});

function segmentDistance(p: Vec3, a: Vec3, b: Vec3): number {
  const d = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const l2 = d[0] ** 2 + d[1] ** 2 + d[2] ** 2 || 1;
  const w = Math.min(
    1,
    Math.max(0, ((p[0] - a[0]) * d[0] + (p[1] - a[1]) * d[1] + (p[2] - a[2]) * d[2]) / l2),
  );
  return Math.hypot(p[0] - a[0] - w * d[0], p[1] - a[1] - w * d[1], p[2] - a[2] - w * d[2]);
}
