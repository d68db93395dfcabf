/**
 * The readings against other people's geometry: three-mesh-bvh (rays, closest points) and manifold-3d (booleans, volumes, closedness)
 * on fine meshes of the oracle's surfaces. The meshes stand off the surfaces by at most 0.003 mm (`meshes.ts`), and that is added
 * to the 0.01 mm, or 0.1 mm², that the readings may be off.
 */
import type { MeshBVH } from 'three-mesh-bvh';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ReadingId } from '../../src/core/measure/reading.ts';
import { evaluate } from '../../src/core/plan/evaluate.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { canalWallMesh, envelopeMesh, rootMesh, sheetMesh, TESSELLATION } from './meshes.ts';
import { Ground, type Placed, type Side } from './model.ts';
import { minus, RAD, type V } from './numbers.ts';
import { apart, bvhOf, closest, firstHit, modeller, SiteSolids } from './opinions.ts';
import { randomPlans, type Series } from './plans.ts';
import { groundOf, placedOf } from './readings.ts';

const NEAR = 0.01 + TESSELLATION;

interface Case {
  readonly plan: Plan;
  readonly g: Ground;
  readonly p: Placed;
  readonly solids: SiteSolids;
  readonly sheets: Record<Side, MeshBVH>;
  readonly core: ReadonlyMap<ReadingId, number | null>;
  readonly profile: (side: Side, level: number) => { wall: number | null; gap: number } | null;
}

const worst = (label: string, list: readonly number[]): void => {
  const sorted = [...list].sort((a, b) => a - b);
  const p95 = sorted[Math.floor(sorted.length * 0.95)] ?? 0;
  console.log(
    `${label}: ${list.length}, p95 ${p95.toExponential(1)}, worst ${(sorted.at(-1) ?? 0).toExponential(1)}`,
  );
};

/** The checks, over the poses of one series of random sites; each is a test of the file that calls it. */
export function secondOpinion(series: Series): void {
  const cases: Case[] = [];

  beforeAll(async () => {
    const wasm = await modeller();
    const sites = new Map<Plan['site'], Pick<Case, 'solids' | 'sheets'>>();
    for (const plan of randomPlans(series)) {
      const g = groundOf(plan);
      const site = sites.get(plan.site) ?? {
        solids: new SiteSolids(wasm, g),
        sheets: { facial: bvhOf(sheetMesh(g, 'facial', 0)), palatal: bvhOf(sheetMesh(g, 'palatal', 0)) },
      };
      sites.set(plan.site, site);
      const found = evaluate(plan);
      const core = new Map(found.readings.map((r) => [r.id, r.value] as const));
      const profile: Case['profile'] = (side, level) => {
        const samples = found.profiles.find((x) => x.side === side)!.samples;
        return samples.find((s) => Math.abs(s.level - level) < 1e-9) ?? null;
      };
      cases.push({ plan, g, p: placedOf(plan), solids: site.solids, sheets: site.sheets, core, profile });
    }
  }, 1_800_000);

  afterAll(() => {
    for (const solids of new Set(cases.map((c) => c.solids))) solids.free();
  });

  /** The facial sheet at least the crest margin deep: the same for every pose of a site. */
  const deepSheets = new Map<Plan['site'], MeshBVH>();
  function deepSheet(plan: Plan, g: Ground): MeshBVH {
    const sheet = deepSheets.get(plan.site) ?? bvhOf(sheetMesh(g, 'facial', plan.crestMargin));
    deepSheets.set(plan.site, sheet);
    return sheet;
  }

  describe('solids (manifold-3d)', () => {
    it('ridge and bone are closed, in one piece or as many as the voids cut, without handles in the ridge', () => {
      for (const { solids } of cases) {
        expect(solids.ridge.status()).toBe('NoError');
        expect(solids.bone.status()).toBe('NoError');
        expect(solids.ridge.genus()).toBe(0);
        expect(solids.bone.volume()).toBeLessThan(solids.ridge.volume());
      }
    });

    it('volume of the threaded envelope is that of frustum and cylinder; exposed areas and contact are those of the boolean', () => {
      const off: number[] = [];
      const offSocket: number[] = [];
      for (const { plan, p, solids, core } of cases) {
        const { implantedLength, apicalDiameter, implantedDiameter, taperLength } = plan.implant;
        const [r, R] = [apicalDiameter / 2, implantedDiameter / 2];
        // Frustum π h (R² + R r + r²) / 3 (handbook).
        const volume =
          (Math.PI * taperLength * (R * R + R * r + r * r)) / 3 +
          Math.PI * R * R * (implantedLength - taperLength);
        const found = solids.areas(p);
        expect(found.status).toBe('NoError');
        expect(found.genus).toBe(0);
        expect(found.volume).toBeCloseTo(volume, 1);
        const [socket, dehiscence, fenestration] = (['socket', 'dehiscence', 'fenestration'] as const).map(
          (x) => core.get(`exposure-${x}`) ?? 0,
        ) as [number, number, number];
        off.push(Math.abs(found.outside - socket - dehiscence - fenestration));
        offSocket.push(Math.abs(found.socket - socket));
        const contact = 100 * (1 - found.outside / found.whole);
        expect(Math.abs(contact - core.get('bone-contact')!), plan.title).toBeLessThan(0.15);
        expect(off.at(-1), `${plan.title}: outside`).toBeLessThan(0.12);
        expect(offSocket.at(-1), `${plan.title}: socket`).toBeLessThan(0.12);
      }
      worst('area outside bone, mm²', off);
      worst('area in sockets, mm²', offSocket);
    });
  });

  describe('walls (three-mesh-bvh rays, manifold-3d prisms)', () => {
    it('the ray ends where the mesh of the sheet is hit, and meets as much bone as a thin prism shares with the solid', () => {
      const hits: number[] = [];
      const lengths: number[] = [];
      const grazes: string[] = [];
      for (const { plan, p, solids, sheets, profile } of cases) {
        for (const side of ['facial', 'palatal'] as const) {
          const azimuth = side === 'facial' ? 0 : Math.PI;
          const samples = evaluate(plan).profiles.find((x) => x.side === side)!.samples;
          for (let i = 3; i < samples.length; i += 19) {
            const level = samples[i]!.level;
            const s = profile(side, level)!;
            // A point nearer to the sheet than the mesh stands off it may lie on the mesh's other side.
            if (s.wall === null || s.wall + s.gap < NEAR || !samples[i]!.counts) continue;
            const from = p.surface(level, azimuth);
            const along = minus(p.at(level, p.radius(level) + 1, azimuth), from);
            const hit = firstHit(sheets[side], from, along);
            expect(hit, `${plan.title} ${side} ${level}`).not.toBeNull();
            const to = p.at(level, p.radius(level) + hit!, azimuth);
            const bone = solids.boneAlong(from, to);
            const offHit = Math.abs(hit! - s.wall - s.gap);
            const offBone = Math.abs(bone - s.wall);
            if (Math.max(offHit, offBone) > NEAR)
              grazes.push(`${plan.title} ${side} ${level}: ${offHit} ${offBone}`);
            hits.push(offHit);
            lengths.push(offBone);
          }
        }
      }
      worst('end of the ray, mm', hits);
      worst('bone on the ray, mm', lengths);
      expect(hits.length).toBeGreaterThan(9 * series.sites);
      // Rays that run along a void's edge or meet the sheet nearly flat: listed, at most 1 %.
      expect(grazes.length, grazes.join('\n')).toBeLessThanOrEqual(Math.ceil(hits.length / 100));
    });
  });

  describe('closest distances (three-mesh-bvh)', () => {
    const compare = (
      label: string,
      pairs: readonly { title: string; mesh: number; core: number }[],
    ): void => {
      worst(
        label,
        pairs.map((x) => Math.abs(Math.max(0, x.core) - x.mesh)),
      );
      for (const { title, mesh, core } of pairs) {
        expect(Math.abs(Math.max(0, core) - mesh), `${title}: mesh ${mesh}, core ${core}`).toBeLessThan(NEAR);
      }
    };

    it('envelope to both roots; 0 where the core says it is inside', () => {
      const pairs = cases.flatMap(({ plan, g, p, core }) => {
        const body = bvhOf(envelopeMesh(p));
        return (['mesial', 'distal'] as const).map((side) => ({
          title: `${plan.title} ${side}`,
          mesh: apart(body, bvhOf(rootMesh(g[side]))),
          core: core.get(`root-${side}`)!,
        }));
      });
      compare('roots, mm', pairs);
    }, 1_800_000);

    it('envelope to the canal’s wall', () => {
      const pairs = cases
        .filter(({ g, core }) => g.canal && core.get('canal') !== null)
        .map(({ plan, g, p, core }) => ({
          title: plan.title,
          mesh: apart(bvhOf(envelopeMesh(p)), bvhOf(canalWallMesh(g))),
          core: core.get('canal')!,
        }));
      compare('canal, mm', pairs);
    }, 1_800_000);

    it('apical third to the facial sheet', () => {
      const pairs = cases
        .filter(({ core }) => core.get('apex-to-concavity') !== null)
        .map(({ plan, g, p, core }) => ({
          title: plan.title,
          mesh: apart(bvhOf(envelopeMesh(p, p.apex - p.shape.implantedLength / 3)), deepSheet(plan, g)),
          core: core.get('apex-to-concavity')!,
        }));
      compare('concavity, mm', pairs);
    }, 1_800_000);

    it('true wall above 0: the least distance from a counting envelope point of the window to the sheet there', () => {
      const off: number[] = [];
      for (const { plan, g, p, core } of cases) {
        for (const side of ['facial', 'palatal'] as const) {
          const value = core.get(`${side}-wall-true`);
          if (value === null || value === undefined || value < 0) continue;
          const centre = side === 'facial' ? 0 : Math.PI;
          const swing = (x: V): number => Math.abs(Math.sin((p.cylindrical(x)[2] - centre) / 2));
          const edge = Math.sin(Math.PI / 8);
          const sheet = bvhOf(sheetMesh(g, side, plan.crestMargin, (x) => swing(x) <= edge));
          let least = Infinity;
          for (let turn = -45; turn <= 45; turn += 1) {
            const azimuth = centre + turn * RAD;
            const from = p.rim(azimuth);
            for (let i = 0; i <= 250; i += 1) {
              const point = p.surface(from + ((p.apex - from) * i) / 250, azimuth);
              if (g.depth(point) >= plan.crestMargin) least = closest(sheet, point, least);
            }
          }
          // Points up to 0.06 mm apart and facets cut by the window's edge left out: theirs may be the greater, not the lesser.
          expect(least, `${plan.title} ${side} ${value}`).toBeGreaterThan(value - NEAR);
          expect(least, `${plan.title} ${side} ${value}`).toBeLessThan(value + 0.03);
          off.push(Math.abs(least - value));
        }
      }
      worst('true wall above 0, mm', off);
      expect(off.length).toBeGreaterThan(1.2 * series.sites);
    }, 1_800_000);

    it('true wall and concavity below 0 are the greatest distance of an envelope point that stands outside', () => {
      const off: number[] = [];
      for (const c of cases) {
        const { plan, g, p, sheets, core } = c;
        const furthest = (side: Side, from: number, window: number, counts: (x: V) => boolean): number => {
          let most = 0;
          for (let turn = -window; turn <= window; turn += 1.5) {
            const azimuth = (turn + (side === 'facial' ? 0 : 180)) * RAD;
            for (let i = 0; i <= 250; i += 1) {
              const point = p.surface(from + ((p.apex - from) * i) / 250, azimuth);
              if (!counts(point) || !(g.beyond(side, point) > most)) continue;
              most = Math.max(most, closest(sheets[side], point));
            }
          }
          return most;
        };
        const check = (id: ReadingId, deepest: number, look: () => number): void => {
          const value = core.get(id);
          if (value === null || value === undefined || value > -0.02 || value <= deepest) return;
          const most = look();
          // The points looked at are up to 0.06 mm apart, so that theirs may be the lesser; never the greater.
          expect(most, `${plan.title} ${id} ${value}`).toBeLessThan(-value + NEAR);
          expect(most, `${plan.title} ${id} ${value}`).toBeGreaterThan(-value - 0.06);
          off.push(Math.abs(most + value));
        };
        const radius = plan.implant.implantedDiameter / 2;
        for (const side of ['facial', 'palatal'] as const) {
          const from = p.rim(side === 'facial' ? 0 : Math.PI);
          check(`${side}-wall-true`, -radius, () =>
            furthest(side, from, 45, (x) => g.depth(x) >= plan.crestMargin),
          );
        }
        check('apex-to-concavity', -Infinity, () =>
          furthest('facial', p.apex - plan.implant.implantedLength / 3, 180, () => true),
        );
      }
      worst('outside, mm', off);
      expect(off.length).toBeGreaterThan(0.4 * series.sites);
    }, 1_800_000);
  });

  it('the widths that were entered are found again on the mesh (three-mesh-bvh rays)', () => {
    for (const { plan, g } of cases.filter((_, i) => i % series.posesPerSite === 0)) {
      const bare = new Ground({
        ...plan.site,
        state: { kind: 'healed' },
        ridge: { ...plan.site.ridge, eminence: { height: 0, halfWidth: 3 } },
      });
      for (const side of ['facial', 'palatal'] as const) {
        const sheet = bvhOf(sheetMesh(bare, side, 0));
        for (const entry of plan.site.ridge.widths) {
          const from = g.place(0, 0, entry.depth);
          const hit = firstHit(sheet, from, minus(g.place(0, side === 'facial' ? 1 : -1, entry.depth), from));
          expect(Math.abs(hit! - entry[side]), `${plan.title} ${side} ${entry.depth}`).toBeLessThan(0.01);
        }
      }
    }
  });
}
