import { Matrix, inverse as mlInverse, pseudoInverse } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import type { DrillPose } from '../../src/core/drilling/rehearsal.ts';
import { drillPoseOf } from '../../src/core/plan/inHand.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { handSpread } from '../../src/core/spread/hand.ts';
import { inverse, jacobian, leastSquares } from '../../src/core/spread/leastSquares.ts';
import { type BenchCheck, benchCheck, callipersAt } from '../../src/core/teaching/bench.ts';
import { CALLIPER_SD, type CalliperPlace } from '../../src/core/teaching/benchPlaces.ts';
import { guessSummaries, keptGuesses, withGuess } from '../../src/core/teaching/guesses.ts';
import { normal, seeded } from '../support/classFiles.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';

const [lateral, socket, premolar, thin, slab] = SITES_DEMO.map(({ plan }) => plan);

/** Walls at three levels on both sides, and four places on the neighbours' crowns. */
const WALLS: CalliperPlace[] = ([2, 5, 8] as const).flatMap((depth) => [
  { kind: 'facial' as const, depth },
  { kind: 'palatal' as const, depth },
]);
const PINS: CalliperPlace[] = (
  ['mesial-contact', 'distal-contact', 'mesial-neck', 'distal-neck'] as const
).map((point) => ({ kind: 'pin', point }));
const ALL = [...WALLS, ...PINS];
const DRILL = 2.8;

const near = (plan: Plan, off: readonly number[]): DrillPose => {
  const { mouth, tilt } = drillPoseOf(plan.pose);
  return {
    mouth: { m: mouth.m + off[0], f: mouth.f + off[1] },
    tilt: { mesiodistal: tilt.mesiodistal + off[2], faciopalatal: tilt.faciopalatal + off[3] },
  };
};

/** Readings at a line, each with an error. */
function readings(plan: Plan, line: DrillPose, places: readonly CalliperPlace[], error: () => number) {
  const exact = callipersAt(plan, DRILL, places, line);
  if (!exact) throw new Error('a calliper meets nothing');
  return places.map((place, i) => ({ ...place, value: exact[i] + error() }));
}

function check(
  plan: Plan,
  line: DrillPose,
  places: readonly CalliperPlace[],
  error: () => number,
): BenchCheck {
  const callipers = readings(plan, line, places, error);
  const found = benchCheck(plan, { diameter: DRILL, callipers, depth: null, sd: CALLIPER_SD });
  if (typeof found === 'string') throw new Error(found);
  return found;
}

const vector = ({ mouth, tilt }: DrillPose): number[] => [
  mouth.m,
  mouth.f,
  tilt.mesiodistal,
  tilt.faciopalatal,
];

describe('the bench check (rule L12)', () => {
  test('what a calliper reads on the slab, by hand', () => {
    // 7.5 wide, upright in the middle, drill 2.8: 3.75 − 1.4; 0.5 facially: 1.85 and 2.85.
    const upright: DrillPose = { mouth: { m: 0, f: 0.5 }, tilt: { mesiodistal: 0, faciopalatal: 0 } };
    const [facial, palatal] = callipersAt(slab, DRILL, WALLS.slice(0, 2), upright) ?? [];
    expect(facial).toBeCloseTo(1.85, 6);
    expect(palatal).toBeCloseTo(2.85, 6);
  });

  test.each([
    ['slab', slab],
    ['lateral', lateral],
    ['premolar', premolar],
    ['thin gum', thin],
  ])('%s: without an error the pose comes back', (_, plan) => {
    const line = near(plan, [0.5, -0.3, 3, -4]);
    const found = check(plan, line, ALL, () => 0);
    vector(found.line).forEach((v, i) => {
      expect(v).toBeCloseTo(vector(line)[i], 4);
    });
    expect(found.held).toEqual([]);
    expect(found.doubtful).toBe(false);
  });

  test('with errors of 0.1 mm the pose lies within the stated uncertainty as often as stated: 160 holes', () => {
    const random = seeded(2026);
    const gauss = normal(random);
    const any = (most: number) => (2 * random() - 1) * most;
    const inside = [0, 0, 0, 0];
    let [n, doubtful] = [0, 0];
    let squares = 0;
    for (const plan of [slab, premolar, thin, lateral]) {
      for (let i = 0; i < 40; i++) {
        const line = near(plan, [any(0.6), any(0.5), any(4), any(4)]);
        const found = check(plan, line, ALL, () => CALLIPER_SD * gauss());
        const off = vector(found.line).map((v, k) => v - vector(line)[k]);
        const sd = [found.sd.m, found.sd.f, found.sd.mesiodistal, found.sd.faciopalatal];
        sd.forEach((s, k) => {
          if (Math.abs(off[k]) <= 1.96 * s) inside[k] += 1;
        });
        squares += off.reduce((sum, v, k) => sum + (v / sd[k]) ** 2, 0);
        if (found.doubtful) doubtful += 1;
        n += 1;
      }
    }
    // 95 % of 160 is 152 with SD 2.8: within four of them; the mean of the squares is 1 with an SD of about √(2/160): 0.11.
    for (const count of inside) expect(Math.abs(count - 0.95 * n)).toBeLessThan(4 * Math.sqrt(n * 0.0475));
    expect(Math.abs(squares / (4 * n) - 1)).toBeLessThan(0.3);
    // Once in a hundred.
    expect(doubtful).toBeLessThan(9);
  });

  test('a reading mistyped by a millimetre is doubted', () => {
    const line = near(premolar, [0.2, 0.2, 1, 1]);
    const callipers = readings(premolar, line, ALL, () => 0).map((c, i) =>
      i === 2 ? { ...c, value: c.value + 1 } : c,
    );
    expect(benchCheck(premolar, { diameter: DRILL, callipers, depth: null, sd: CALLIPER_SD })).toMatchObject({
      doubtful: true,
    });
  });

  test('walls alone leave place and lean mesiodistally as planned; contacts alone the lean', () => {
    const line = near(slab, [0, 0.4, 0, 3]);
    const walls = check(slab, line, WALLS, () => 0);
    expect(walls.held).toEqual(['mesiodistal-place', 'mesiodistal-angle']);
    expect(walls.line.mouth.f).toBeCloseTo(line.mouth.f, 4);
    expect(walls.line.tilt.faciopalatal).toBeCloseTo(line.tilt.faciopalatal, 3);
    const few = { diameter: DRILL, callipers: readings(slab, line, WALLS.slice(0, 1), () => 0), depth: null };
    expect(benchCheck(slab, { ...few, sd: CALLIPER_SD })).toBe('too-few');
    expect(benchCheck(socket, { ...few, sd: CALLIPER_SD })).toBe('fresh-socket');
  });

  test('deviation and its spread: on the slab the facial wall’s error is the entry’s', () => {
    const line = near(slab, [0, 0.5, 0, 0]);
    const found = check(slab, line, ALL, () => 0);
    expect(found.deviation.coronal.faciopalatal).toBeCloseTo(0.5, 4);
    expect(found.deviation.angle).toBeCloseTo(0, 3);
    expect(found.spread['platform-faciopalatal']).toBeCloseTo(found.sd.f, 2);
    // Six walls at 2, 5, 8 mm, a line through f and its slope per mm: by hand var f = 0.01 (1/6 + 25/36), var slope = 0.01/36.
    const perDegree = Math.PI / 180;
    const walls = check(slab, line, WALLS, () => 0);
    expect(walls.sd.f).toBeCloseTo(0.1 * Math.sqrt(1 / 6 + 25 / 36), 2);
    expect(walls.sd.faciopalatal * perDegree).toBeCloseTo(0.1 / 6, 3);
  });

  test('fit and covariance against ml-matrix: Gauss–Newton by pseudo-inverse, inverse of the normal matrix', () => {
    const gauss = normal(seeded(9));
    for (const plan of [premolar, thin]) {
      const line = near(plan, [0.3, -0.2, 2, -2]);
      const callipers = readings(plan, line, ALL, () => CALLIPER_SD * gauss());
      const lineOf = (x: readonly number[]): DrillPose => ({
        mouth: { m: x[0], f: x[1] },
        tilt: { mesiodistal: x[2], faciopalatal: x[3] },
      });
      const predict = (x: readonly number[]) => callipersAt(plan, DRILL, ALL, lineOf(x)) ?? [];
      const slopes = (x: readonly number[]) =>
        new Matrix(
          ALL.map((_, i) =>
            x.map((_, j) => {
              const h = j < 2 ? 5e-3 : 5e-2;
              const at = (way: number) => predict(x.map((v, k) => (k === j ? v + way * h : v)))[i];
              return (at(1) - at(-1)) / (2 * h);
            }),
          ),
        );
      let x = vector(drillPoseOf(plan.pose));
      for (let i = 0; i < 15; i++) {
        const lack = Matrix.columnVector(predict(x).map((p, k) => callipers[k].value - p));
        const step = pseudoInverse(slopes(x)).mmul(lack).to1DArray();
        x = x.map((v, k) => v + step[k]);
      }
      const found = check(plan, line, ALL, () => 0);
      const fit = benchCheck(plan, { diameter: DRILL, callipers, depth: null, sd: CALLIPER_SD });
      if (typeof fit === 'string') throw new Error(fit);
      vector(fit.line).forEach((v, i) => {
        expect(v).toBeCloseTo(x[i], 4);
      });
      const j = slopes(x);
      const covariance = mlInverse(j.transpose().mmul(j)).mul(CALLIPER_SD ** 2);
      const sd = [fit.sd.m, fit.sd.f, fit.sd.mesiodistal, fit.sd.faciopalatal];
      sd.forEach((s, i) => {
        expect(s).toBeCloseTo(Math.sqrt(covariance.get(i, i)), 4);
      });
      expect(found.residuals.every((r) => Math.abs(r) < 1e-4)).toBe(true);
    }
  });
});

describe('least squares', () => {
  test('a straight line by hand: 1, 3, 5, 7 and an error', () => {
    const t = [0, 1, 2, 3];
    const fit = leastSquares({
      predict: ([a, b]) => t.map((v) => a + b * v),
      measured: [1, 3, 5, 7.4],
      sd: 0.5,
      start: [0, 0],
      steps: [1e-3, 1e-3],
    });
    // Normal equations by hand: slope 10.6/5, intercept 4.1 − 1.5 · 2.12; var slope 0.25/5.
    expect(fit?.x[1]).toBeCloseTo(2.12, 9);
    expect(fit?.x[0]).toBeCloseTo(0.92, 9);
    expect(fit?.covariance[1][1]).toBeCloseTo(0.05, 9);
    expect(fit?.covariance[0][0]).toBeCloseTo(0.25 * (1 / 4 + 2.25 / 5), 9);
  });

  test('inverse against ml-matrix; none of a singular one', () => {
    const random = seeded(4);
    for (let i = 0; i < 50; i++) {
      const b = new Matrix(Array.from({ length: 6 }, () => Array.from({ length: 4 }, () => random() - 0.5)));
      const a = b.transpose().mmul(b);
      const want = mlInverse(a).to2DArray();
      inverse(a.to2DArray())?.forEach((row, r) => {
        row.forEach((v, c) => {
          expect(v / want[r][c]).toBeCloseTo(1, 6);
        });
      });
    }
    expect(
      inverse([
        [1, 1],
        [1, 1],
      ]),
    ).toBeNull();
    const flat = {
      predict: ([a]: readonly number[]) => [a, a],
      measured: [1, 1],
      sd: 1,
      start: [0, 0],
      steps: [1e-3, 1e-3],
    };
    expect(leastSquares(flat)).toBeNull();
    expect(jacobian(flat, [0, 0])).toEqual([
      [1, 0],
      [1, 0],
    ]);
  });
});

describe('a hand and its guesses (rule L11)', () => {
  const guess = (guessed: number, found: number) => ({ kind: 'lean' as const, guessed, found });

  test('errors by hand: 1, 3 and −1', () => {
    const [one] = guessSummaries([guess(2, 1), guess(5, 2), guess(0, 1)]);
    // Mean 1, SD 2, mean size 5/3.
    expect(one.error).toMatchObject({ n: 3, mean: 1, sd: 2, least: -1, most: 3 });
    expect(one.size).toBeCloseTo(5 / 3, 12);
  });

  test('the last few are told apart from the first, and the oldest are forgotten', () => {
    const many = Array.from({ length: 30 }, (_, i) => guess(i < 15 ? 4 : 1, 0));
    expect(guessSummaries(many)[0]).toMatchObject({ first: 4, last: 1 });
    const kept = Array.from({ length: 1000 }, () => guess(1, 0));
    expect(withGuess(kept, guess(7, 0))).toHaveLength(1000);
    expect(withGuess(kept, guess(7, 0)).at(-1)).toEqual(guess(7, 0));
  });

  test('what is no guess is left out of what was kept', () => {
    const kept = [guess(1, 2), { kind: 'score', guessed: 1, found: 2 }, null, guess(Number.NaN, 1), 'x'];
    expect(keptGuesses(kept, ['canal'])).toEqual([guess(1, 2)]);
    expect(keptGuesses({}, [])).toEqual([]);
  });

  test('attempts at the screen and at the bench are never pooled', () => {
    const deviation = { ...check(slab, near(slab, [0, 0.5, 0, 0]), ALL, () => 0).deviation };
    const attempts = [
      { way: 'bench' as const, deviation },
      { way: 'screen' as const, deviation: { ...deviation, angle: 9 } },
    ];
    expect(handSpread(attempts, 'bench')).toMatchObject({ n: 1, angle: { sd: null } });
    expect(handSpread(attempts, 'screen')?.angle.mean).toBe(9);
    expect(handSpread([], 'bench')).toBeNull();
  });
});
