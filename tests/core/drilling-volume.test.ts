/** Bone that a drill takes, against manifold-3d (solids of corners, equal in area to the circles) and against handbook volumes. */
import { beforeAll, describe, expect, it } from 'vitest';
import { GENERIC_KIT } from '../../src/core/drilling/genericKit.ts';
import { type PassBody, passBody } from '../../src/core/drilling/passBody.ts';
import { boneRemoved, crescentVolume, holeVolume, lastPassVolume } from '../../src/core/drilling/volume.ts';
import { solidsOf } from '../../src/core/plan/evaluate.ts';
import { seeded } from '../oracle/plans.ts';
import { Bench, passOf, randomPasses } from '../support/drilling.ts';
import { seriesPlan } from '../support/randomPlans.ts';
import { slabPlan } from '../support/slabs.ts';
import { solidModeller } from '../support/solid.ts';

const slab = solidsOf(slabPlan({ width: 9 }).site);
const body = (n: Parameters<typeof passOf>[0]): PassBody => passBody(slab.ridge, GENERIC_KIT, passOf(n))!;

describe('volumes that handbooks know', () => {
  it('a 2.0 hole, 10 mm deep: cylinder π r² h and cone π r² y / 3, y = 0.577', () => {
    const expected = Math.PI * 10 + (Math.PI * 0.57735) / 3;
    expect(Math.abs(holeVolume(slab, [body({})]) - expected)).toBeLessThan(0.003 * expected);
  });

  it('a shift of 0.5 adds a slab 2 r · 0.5 · h and under it the wedge r · y · 0.5', () => {
    const press = { toward: 40, mouth: 0.5, bottom: 0.5 };
    const expected = Math.PI * 10 + (Math.PI * 0.57735) / 3 + 2 * 0.5 * 10 + 0.5 * 0.57735;
    expect(Math.abs(holeVolume(slab, [body({ press })]) - expected)).toBeLessThan(0.003 * expected);
  });

  it('the last pass takes what the one before has left: the ring between 2.0 and 2.8', () => {
    const [first, second] = [body({}), body({ drill: 2 })];
    const whole = (r: number) => Math.PI * r * r * 10 + (Math.PI * r ** 3 * 0.57735) / 3;
    const expected = whole(1.4) - whole(1);
    expect(Math.abs(lastPassVolume(slab, [first, second]) - expected)).toBeLessThan(0.003 * expected);
    expect(crescentVolume(slab, first, [second])).toBeLessThan(1e-9);
  });
});

describe('150 rehearsals against manifold-3d', () => {
  let bench: Bench;
  let sites: Bench;
  beforeAll(async () => {
    bench = new Bench(await solidModeller());
    sites = new Bench(bench.wasm);
  });

  it('bone removed and crescent left agree within 0.5 % or 0.05 mm³', () => {
    const random = seeded(415);
    const off: number[] = [];
    let plan = seriesPlan(4000, 0);
    let bone = sites.bone(solidsOf(plan.site));
    let time = 0;
    let crescents = 0;
    for (let n = 0; n < 150; n++) {
      if (n % 5 === 0) {
        sites.free();
        plan = seriesPlan(4000 + n, (n / 5) % 20);
        bone = sites.bone(solidsOf(plan.site));
      }
      const anatomy = solidsOf(plan.site);
      const passes = randomPasses(random, plan);
      const made = passes
        .map((pass) => ({ pass, body: passBody(anatomy.ridge, GENERIC_KIT, pass) }))
        .filter((one) => one.body !== null) as { pass: (typeof passes)[number]; body: PassBody }[];
      if (made.length === 0) continue;
      const bodies = made.map((one) => one.body);
      const solids = made.map((one) => bench.pass(one.pass, one.body));
      const hole = bench.keep(bench.wasm.Manifold.union(solids));
      const started = performance.now();
      const volume = holeVolume(anatomy, bodies);
      time += performance.now() - started;
      const expected = bench.keep(bone.intersect(hole)).volume();
      const check = (found: number, other: number, what: string): void => {
        const room = Math.max(0.05, 0.005 * other);
        off.push(Math.abs(found - other) / room);
        expect(
          Math.abs(found - other),
          `${n} ${what} ${found} ${other} ${JSON.stringify(passes)}`,
        ).toBeLessThan(room);
      };
      check(volume, expected, 'hole');
      if (solids.length > 1) {
        const rest = bench.keep(bench.wasm.Manifold.union(solids.slice(1)));
        const left = bench.keep(bench.keep(bone.intersect(solids[0])).subtract(rest)).volume();
        const crescent = crescentVolume(anatomy, bodies[0], bodies.slice(1));
        if (left > 0.05) crescents++;
        check(crescent, left, 'crescent');
      }
      bench.free();
    }
    off.sort((p, q) => p - q);
    console.log(
      `share of the room: p95 ${off[Math.floor(off.length * 0.95)].toFixed(2)}, worst ${off.at(-1)?.toFixed(2)}; ${crescents} crescents; ${(time / 150).toFixed(1)} ms a volume`,
    );
    expect(crescents).toBeGreaterThan(40);
  });

  it('taking nothing takes nothing', () => {
    expect(boneRemoved(slab, [])).toBe(0);
  });
});
