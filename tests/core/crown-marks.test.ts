import { describe, expect, it } from 'vitest';
import { arcBetween } from '../../src/core/geometry/arc.ts';
import { broughtInto, broughtOut } from '../../src/core/geometry/carry.ts';
import type { TriangleMesh } from '../../src/core/geometry/mesh.ts';
import { angleBetween, cross, distance, sub, unit, type Vec3 } from '../../src/core/geometry/vec.ts';
import { FIXINGS, fixingAnswers } from '../../src/core/plan/crownAnswer.ts';
import { crownMarks } from '../../src/core/plan/crownMarks.ts';
import { evaluate, readingOf } from '../../src/core/plan/evaluate.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { coverOf } from '../../src/core/restoration/crownChoices.ts';
import { band } from '../../src/marks/band.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { MEAN_PLANS } from '../support/meanPlans.ts';

const PLANS = [...SITES_DEMO, ...MEAN_PLANS];
const demo = (part: string): Plan => {
  const found = SITES_DEMO.find(({ id }) => id.includes(part));
  if (!found) throw new Error(`no demo plan ${part}`);
  return found.plan;
};

/** Outward unit normal of the triangle whose middle is nearest to a place, found by looking at all of them. */
function nearestFacet({ positions: p, triangles: t }: TriangleMesh, at: Vec3): Vec3 {
  const corner = (v: number): Vec3 => [p[3 * v], p[3 * v + 1], p[3 * v + 2]];
  let best: { away: number; normal: Vec3 } = { away: Infinity, normal: [0, 0, 1] };
  for (let i = 0; i < t.length; i += 3) {
    const [a, b, c] = [corner(t[i]), corner(t[i + 1]), corner(t[i + 2])];
    const away = distance(at, [0, 1, 2].map((k) => (a[k] + b[k] + c[k]) / 3) as unknown as Vec3);
    if (away < best.away) best = { away, normal: unit(cross(sub(b, a), sub(c, a))) };
  }
  return best.normal;
}

// By hand: a quarter of a circle, a strip, a strip round a right angle (its outer corner is a square's).
describe('small drawing geometry', () => {
  it('lays an arc the shorter way, on its circle', () => {
    const arc = arcBetween([1, 2, 3], [1, 0, 0], [0, 1, 0], 2, 2);
    const half = Math.SQRT2;
    expect(arc[0]).toEqual([3, 2, 3]);
    arc[1].forEach((v, k) => {
      expect(v).toBeCloseTo([1 + half, 2 + half, 3][k], 12);
    });
    arc[2].forEach((v, k) => {
      expect(v).toBeCloseTo([1, 4, 3][k], 12);
    });
    expect(arcBetween([0, 0, 0], [0, 0, 1], [0, 0, 1], 2)).toEqual([]);
  });

  it('keeps a band as wide as it is asked to be, round a corner too', () => {
    const at = (x: number, y: number) => ({ x, y });
    expect(band([at(0, 0), at(0, 10)], 2)).toEqual([at(-2, 0), at(-2, 10), at(2, 10), at(2, 0)]);
    const turned = band([at(0, 0), at(0, 10), at(10, 10)], 2);
    expect(turned[1].x).toBeCloseTo(-2, 12);
    expect(turned[1].y).toBeCloseTo(12, 12);
    expect(turned[4].x).toBeCloseTo(2, 12);
    expect(turned[4].y).toBeCloseTo(8, 12);
  });
});

describe('what is drawn of the crown', () => {
  it('shows every angle as large as its reading says it is', () => {
    let shown = 0;
    for (const { plan } of PLANS) {
      const evaluation = evaluate({ ...plan, fixing: 'screw-bone' });
      const { contours, correction } = crownMarks(evaluation);
      const angles = [
        ...contours.map((one) => ({ ...one, id: `emergence-${one.side}` as const })),
        ...(correction ? [{ ...correction, id: 'access-exit-correction' as const }] : []),
      ];
      for (const { id, apex, onAxis, to, arc } of angles) {
        const value = readingOf(evaluation.readings, id).value ?? Number.NaN;
        expect(angleBetween(sub(onAxis, apex), sub(to, apex))).toBeCloseTo(Math.abs(value), 6);
        for (const p of arc) expect(distance(p, apex)).toBeCloseTo(distance(arc[0], apex), 9);
        shown++;
      }
    }
    expect(shown).toBeGreaterThan(30);
  });

  it('marks an exit where the reading has it, with the normal of the facet that is nearest to it', () => {
    const seen = new Set<number>();
    for (const { plan } of PLANS) {
      const evaluation = evaluate({ ...plan, fixing: 'screw-bone' });
      const { channel, exit } = crownMarks(evaluation);
      const { restoration, anatomy } = evaluation;
      if (!channel || !exit || !restoration.access) continue;
      expect(distance(exit.at, anatomy.toJaw(restoration.access.exit))).toBe(0);
      const { mesh, frame } = restoration.crown;
      const facet = nearestFacet(mesh, broughtInto(frame, restoration.access.exit));
      const normal = anatomy.toJawDirection(sub(broughtOut(frame, facet), frame.origin));
      expect(angleBetween(normal, exit.normal)).toBeLessThan(25);
      seen.add(readingOf(evaluation.readings, 'access-exit').value ?? Number.NaN);
    }
    expect([...seen].sort((a, b) => a - b)).toEqual([-1, 0, 1]);
  });

  it('goes as deep into an abutment as is to be ground, to where the cover is thick enough', () => {
    const plan = demo('one-piece');
    const evaluation = evaluate(plan);
    const { ground } = crownMarks(evaluation);
    if (!ground) throw new Error('nothing is ground');
    const { crown } = evaluation.restoration;
    const depth = readingOf(evaluation.readings, 'abutment-reduction-depth').value ?? Number.NaN;
    expect(distance(ground.from, ground.to)).toBeCloseTo(depth, 9);
    const cover = (p: Vec3) => -crown.wall.signed(...broughtInto(crown.frame, p));
    const { toJaw } = evaluation.anatomy;
    const origin = toJaw([0, 0, 0]);
    const axes = (
      [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ] as const
    ).map(evaluation.anatomy.toJawDirection);
    const inSite = (p: Vec3): Vec3 => {
      const v = sub(p, origin);
      return axes.map((axis) => axis.reduce((sum, a, k) => sum + a * v[k], 0)) as unknown as Vec3;
    };
    const before = cover(inSite(ground.from));
    const after = cover(inSite(ground.to));
    expect(before).toBeLessThan(coverOf(plan.crown));
    expect(after).toBeGreaterThan(before + 0.5);
  });
});

// Source: limits by fixing, the table of `reference-values` 0: each way judges its own depth, and its own side of the axis.
describe('one pose, three answers', () => {
  it('judges each way by its own readings, and agrees with a plan that has chosen it', () => {
    for (const { plan } of PLANS) {
      const answers = fixingAnswers(evaluate(plan));
      expect(answers.map(({ fixing }) => fixing)).toEqual(FIXINGS);
      for (const { fixing, axis, depth, mark } of answers) {
        const own = evaluate({ ...plan, fixing });
        const screwed = plan.implant.abutment ? 'one-piece' : 'screw';
        expect(axis.kind).toBe(fixing === 'cemented' ? 'cement' : screwed);
        expect(depth.reading.id).toBe(fixing === 'screw-gum' ? 'shoulder-to-cej' : 'shoulder-to-gum-margin');
        const judged = readingOf(
          own.readings,
          fixing === 'cemented' ? 'incisal-line-offset' : 'access-exit-correction',
        );
        const states = [judged.status, readingOf(own.readings, depth.reading.id).status];
        if (states.includes('beyond') || axis.kind === 'one-piece') expect(mark).toBe('beyond');
        else if (states.includes('near')) expect(mark).toBe('near');
      }
    }
  });

  it('differs for the lateral that never formed: cement with care, a neck through the gum suits, a shoulder at bone does not', () => {
    expect(fixingAnswers(evaluate(demo('narrow-lateral'))).map(({ mark }) => mark)).toEqual([
      'near',
      'within',
      'beyond',
    ]);
  });
});
