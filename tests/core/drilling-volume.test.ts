/** Bone that a drill takes, against manifold-3d (solids of corners, equal in area to the circles) and against handbook volumes. */
import { describe, expect, it } from 'vitest';
import { GENERIC_KIT } from '../../src/core/drilling/genericKit.ts';
import { type PassBody, passBody } from '../../src/core/drilling/passBody.ts';
import { crescentVolume, holeVolume, lastPassVolume } from '../../src/core/drilling/volume.ts';
import { solidsOf } from '../../src/core/plan/evaluate.ts';
import { passOf } from '../support/drilling.ts';
import { slabPlan } from '../support/slabs.ts';
import { checkVolumes } from '../support/volumeCheck.ts';

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

// `npm run test:long` asks 300.
it('bone removed and crescent left agree with manifold-3d over 30 rehearsals, within 0.5 % or 0.05 mm³', async () => {
  const { off, crescents } = await checkVolumes(30);
  expect(off.length).toBeGreaterThan(40);
  expect(crescents).toBeGreaterThan(8);
});
