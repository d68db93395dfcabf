import { expect } from 'vitest';
import { GENERIC_KIT } from '../../src/core/drilling/genericKit.ts';
import { type PassBody, passBody } from '../../src/core/drilling/passBody.ts';
import { crescentVolume, holeVolume } from '../../src/core/drilling/volume.ts';
import { solidsOf } from '../../src/core/plan/evaluate.ts';
import { seeded } from '../oracle/plans.ts';
import { Bench, randomPasses } from './drilling.ts';
import { seriesPlan } from './randomPlans.ts';
import { solidModeller } from './solid.ts';

export interface VolumeFigures {
  /** Differences as shares of what is allowed, in rising order. */
  readonly off: readonly number[];
  readonly crescents: number;
}

/** Bone removed and crescent left over seeded rehearsals, against manifold-3d: each within 0.5 % or 0.05 mm³. */
export async function checkVolumes(count: number): Promise<VolumeFigures> {
  const bench = new Bench(await solidModeller());
  const sites = new Bench(bench.wasm);
  const random = seeded(415);
  const off: number[] = [];
  let plan = seriesPlan(4000, 0);
  let bone = sites.bone(solidsOf(plan.site));
  let crescents = 0;
  for (let n = 0; n < count; n++) {
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
    const volume = holeVolume(anatomy, bodies);
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
  sites.free();
  return { off: off.sort((p, q) => p - q), crescents };
}
