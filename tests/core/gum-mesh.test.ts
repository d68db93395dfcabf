import { describe, expect, it } from 'vitest';
import { type Anatomy, anatomyOf } from '../../src/core/anatomy/anatomy.ts';
import { archDirections, fromArch, toArch } from '../../src/core/anatomy/arch.ts';
import { gumMesh } from '../../src/core/anatomy/gumMesh.ts';
import { ridgeMesh } from '../../src/core/anatomy/ridgeMesh.ts';
import { shownRange } from '../../src/core/anatomy/section.ts';
import { SITES } from '../../src/core/anatomy/site.ts';
import type { PlacedTooth } from '../../src/core/anatomy/teeth.ts';
import { placedToothMeshes } from '../../src/core/anatomy/toothMeshes.ts';
import { meshVolume } from '../../src/core/geometry/mesh.ts';
import { type Loop, type Plane, sliceMesh } from '../../src/core/geometry/slice.ts';
import type { Vec3 } from '../../src/core/geometry/vec.ts';
import { defaultSite } from '../../src/core/plan/defaults.ts';
import { randomPlans } from '../oracle/plans.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { Traced } from '../support/rays.ts';
import { opinionOn } from '../support/solid.ts';

/** The upright plane across the arch at a place: `x` facial from the arc, `y` coronal. */
function across({ arch }: Anatomy, q: number): Plane {
  return { origin: fromArch(arch, q, 0, 0), x: archDirections(arch, q).normal, y: [0, 0, 1] };
}

type Point = readonly [number, number];

function contains(loop: Loop, [x, y]: Point): boolean {
  let inside = false;
  loop.forEach(([x0, y0], i) => {
    const [x1, y1] = loop[(i + 1) % loop.length];
    if (y0 > y !== y1 > y && x < x0 + ((x1 - x0) * (y - y0)) / (y1 - y0)) inside = !inside;
  });
  return inside;
}

const side = (a: Point, b: Point, c: Point) => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** Pairs of a loop's segments that cross each other. */
function selfCrossings(loop: Loop): number {
  let count = 0;
  const n = loop.length;
  for (let i = 0; i < n; i++) {
    const [a, b] = [loop[i], loop[(i + 1) % n]];
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue;
      const [c, d] = [loop[j], loop[(j + 1) % n]];
      if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) count++;
    }
  }
  return count;
}

/** Highest point of a tooth's facial surface that the gum covers, at the middle of the tooth. */
function facialMargin(anatomy: Anatomy, tooth: PlacedTooth, gum: readonly Loop[], plane: Plane): number {
  const { crown } = placedToothMeshes(tooth);
  const [outline] = sliceMesh(crown, plane);
  const middle = outline.reduce((s, p) => s + p[0], 0) / outline.length;
  const covered = outline.filter((p) => p[0] > middle && gum.some((loop) => contains(loop, p)));
  expect(covered.length, `tooth ${tooth.code} of site ${anatomy.site.tooth}`).toBeGreaterThan(0);
  return Math.max(...covered.map((p) => p[1]));
}

describe('the gum mesh', () => {
  it.each(SITES)('is a closed solid without handles, site %i', async (tooth) => {
    // Source: manifold-3d, an independent solid modeller.
    const { mesh } = gumMesh(anatomyOf(defaultSite(tooth)));
    const found = await opinionOn(mesh);
    expect(found).toMatchObject({ status: 'NoError', genus: 0, parts: 1 });
    expect(found.volume / meshVolume(mesh)).toBeCloseTo(1, 4);
  });

  it('is a closed solid on the demo sites, one of them a fresh socket', async () => {
    for (const { plan } of SITES_DEMO) {
      const found = await opinionOn(gumMesh(anatomyOf(plan.site)).mesh);
      expect(found).toMatchObject({ status: 'NoError', genus: 0, parts: 1 });
    }
  });

  it('is a closed solid about the bone on random sites, healed and fresh', async () => {
    // Sources: manifold-3d for the solid, three-mesh-bvh for which of the bone's vertices lie in it: those of the sheet down to 6 mm and of a socket's wall.
    for (const { site } of randomPlans({ sites: 32, posesPerSite: 1, seed: 11 })) {
      const anatomy = anatomyOf(site);
      const range = shownRange(anatomy);
      const { mesh } = gumMesh(anatomy, range);
      expect(await opinionOn(mesh)).toMatchObject({ status: 'NoError', genus: 0, parts: 1 });
      const gum = new Traced(mesh);
      const { positions: p, triangles } = ridgeMesh(anatomy, { ...range, density: 0.4 }).mesh;
      let held = 0;
      const bare: string[] = [];
      for (const i of new Set([...triangles].map((v) => 3 * v))) {
        const at: Vec3 = [p[i], p[i + 1], p[i + 2]];
        const [q] = toArch(anatomy.arch, at);
        if (q < range.from + 0.2 || q > range.to - 0.2 || anatomy.ridge.depth(at) > 6) continue;
        if (gum.holds(at)) held++;
        else bare.push(`${site.tooth} at ${at.map((x) => x.toFixed(2))}`);
      }
      expect(bare).toEqual([]);
      expect(held).toBeGreaterThan(1000);
    }
  }, 120_000);

  it.each(SITES)('crosses itself in no section across the arch, site %i', (tooth) => {
    const anatomy = anatomyOf(defaultSite(tooth));
    const { mesh } = gumMesh(anatomy);
    for (let q = anatomy.teeth.distal.station; q < anatomy.teeth.mesial.station; q += 0.23) {
      const loops = sliceMesh(mesh, across(anatomy, q));
      expect(loops).toHaveLength(1);
      expect(selfCrossings(loops[0]), `at ${q}`).toBe(0);
    }
  });

  it.each(SITES)('lies at the entered level over the crest, and outside the bone, site %i', (tooth) => {
    // Source: the entries: 3 mm over the healed crest along c; the bone is inside by the facial thickness at 2 mm depth.
    const anatomy = anatomyOf(defaultSite(tooth));
    const { site, ridge } = anatomy;
    const { mesh } = gumMesh(anatomy);
    const [loop] = sliceMesh(mesh, across(anatomy, 1e-7));
    const lean = Math.tan((site.crown.tilt.faciopalatal * Math.PI) / 180);
    const above = loop.filter((p) => p[1] > 1).map((p) => [Math.abs(p[0] - lean * p[1]), p[1]] as const);
    const top = above.reduce((a, b) => (a[0] < b[0] ? a : b))[1];
    expect(Math.abs(top - site.gum.crest)).toBeLessThan(0.2);
    const { cos, sin } = ridge;
    const wall = ridge.half(1, 0, 2) * ridge.cap(2);
    const at = (u: number): Point => [u * cos - 2 * sin, -u * sin - 2 * cos];
    const whole = ridge.half(1, 0, 2);
    expect(contains(loop, at(wall + 0.05))).toBe(true);
    expect(contains(loop, at(whole + site.gum.facial - 0.05))).toBe(true);
    expect(contains(loop, at(whole + site.gum.facial + 0.2))).toBe(false);
  });

  it.each(SITES)('has its margin about 1 mm coronal of the neighbours’ CEJs, site %i', (tooth) => {
    // Common practice, no source: a healthy margin lies 0.5 to 2 mm coronal of the CEJ.
    const anatomy = anatomyOf(defaultSite(tooth));
    const { mesh } = gumMesh(anatomy);
    for (const neighbour of [anatomy.teeth.mesial, anatomy.teeth.distal]) {
      const plane = across(anatomy, neighbour.station);
      const margin = facialMargin(anatomy, neighbour, sliceMesh(mesh, plane), plane);
      const lean = (neighbour.numbers.tilt.faciopalatal * Math.PI) / 180;
      const cej = neighbour.origin[2] - (neighbour.numbers.cervixDepth / 2) * Math.sin(lean);
      expect(margin - cej).toBeGreaterThan(0.5);
      expect(margin - cej).toBeLessThan(2);
    }
  });

  it.each(SITES)('rises to papillae beside the gap, higher than over its middle, site %i', (tooth) => {
    // Source: the entries: the planned margin and the papillae's heights above it.
    const anatomy = anatomyOf(defaultSite(tooth));
    const { site, teeth } = anatomy;
    const { mesh } = gumMesh(anatomy);
    const heightAt = (q: number) => Math.max(...sliceMesh(mesh, across(anatomy, q))[0].map((p) => p[1]));
    const highest = (from: number, to: number) => {
      let best = -Infinity;
      for (let q = from; q < to; q += 0.2) best = Math.max(best, heightAt(q));
      return best;
    };
    const mesial = highest(1.5, teeth.mesial.station - 1.5);
    const distal = highest(teeth.distal.station + 1.5, -1.5);
    expect(mesial).toBeGreaterThan(heightAt(1e-7) + 1);
    expect(distal).toBeGreaterThan(heightAt(1e-7) + 1);
    expect(mesial).toBeLessThan(site.reference.margin + site.gum.papillaMesial + 1.5);
  });
});
