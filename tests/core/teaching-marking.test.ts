import { Matrix, SVD } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import { EMPTY_REHEARSAL } from '../../src/core/drilling/rehearsal.ts';
import { type Pose, platformOf } from '../../src/core/geometry/pose.ts';
import type { Vec3 } from '../../src/core/geometry/vec.ts';
import { libraryShape } from '../../src/core/implant/library.ts';
import { totalLength } from '../../src/core/implant/shape.ts';
import { advance, shift } from '../../src/core/plan/edits.ts';
import { deviation } from '../../src/core/spread/deviation.ts';
import { summaryOf } from '../../src/core/spread/summary.ts';
import { classReport } from '../../src/core/teaching/classReport.ts';
import { fingerprintOf, forStudents } from '../../src/core/teaching/exercise.ts';
import { markAttempt, placedPose } from '../../src/core/teaching/mark.ts';
import { MEASURE_IDS } from '../../src/core/teaching/measures.ts';
import { passesAsPlanned } from '../../src/core/teaching/move.ts';
import { parseAttemptFile } from '../../src/io/attemptFile.ts';
import { newSalt, parseExerciseFile } from '../../src/io/exerciseFile.ts';
import { gathered, markFile } from '../../src/io/markFiles.ts';
import { attemptAt, attemptText, brokenFiles, filesOf, normal, SALT, seeded } from '../support/classFiles.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';

const [lateral, , premolar, , slab] = SITES_DEMO.map(({ plan }) => plan);

const poseAt = ([m, f, c]: Vec3, fp = 0, md = 0): Pose => ({
  platform: { m, f, c },
  tilt: { faciopalatal: fp, mesiodistal: md },
  roll: 0,
});

describe('deviations (rule L9)', () => {
  test('the worked example: 0.7810, 0.4000, 0.6708 and 0.6397, 1.5448, 5.000', () => {
    // Source: reference values 6.2, with u pointing down the axis: A at the origin, B (0.6, 0.3, 0.4) along it, tilted by 5°, L = 10.
    const { exercise } = filesOf({
      ...slab,
      implant: libraryShape('parallel-straight-35x11') ?? slab.implant,
    });
    const at: typeof exercise = { ...exercise, answer: poseAt([0, 0, 0]) };
    const placed = poseAt([0.6, 0.3, -0.4], 0, -5);
    const found = deviation(at.answer, placed, 10, 0);
    expect(found.coronal.global).toBeCloseTo(0.781, 4);
    expect(found.coronal.depth).toBeCloseTo(0.4, 9);
    expect(found.coronal.lateral).toBeCloseTo(0.6708, 4);
    expect(found.apical.global).toBeCloseTo(1.5448, 4);
    expect(found.angle).toBeCloseTo(5, 9);
    const mark = markAttempt(at, { label: '', pose: placed, rehearsal: null });
    expect(mark.inShoulderPlane).toBeCloseTo(0.6397, 4);
    expect(mark.measures['platform-mesiodistal']).toBeCloseTo(0.6, 9);
    expect(mark.measures['platform-faciopalatal']).toBeCloseTo(0.3, 9);
  });

  test('300 pairs of poses against ml-matrix: projections, lengths, angles', () => {
    const random = seeded(11);
    const any = (most: number) => (2 * random() - 1) * most;
    const column = (v: Vec3) => Matrix.columnVector([...v]);
    const downAxis = ({ tilt }: Pose) => {
      const t = [tilt.mesiodistal, tilt.faciopalatal].map((d) => Math.tan((d * Math.PI) / 180));
      const v = Matrix.columnVector([-t[0], -t[1], -1]);
      return v.div(v.norm());
    };
    for (let i = 0; i < 300; i++) {
      const planned = poseAt([any(3), any(3), any(3)], 20 + any(20), any(20));
      const placed = poseAt([any(3), any(3), any(3)], 20 + any(20), any(20));
      const length = 8 + 6 * random();
      const found = deviation(planned, placed, length, 0);
      const [u, v] = [downAxis(planned), downAxis(placed)];
      const across = Matrix.sub(Matrix.eye(3), u.mmul(u.transpose()));
      // The frame across the axis: f and then m, projected and made orthogonal.
      const f = across.mmul(Matrix.columnVector([0, 1, 0]));
      f.div(f.norm());
      const m = Matrix.sub(across, f.mmul(f.transpose())).mmul(Matrix.columnVector([1, 0, 0]));
      m.div(m.norm());
      const [a, b] = [platformOf(planned), platformOf(placed)].map(column);
      const ends = [
        [found.coronal, Matrix.sub(b, a)],
        [
          found.apical,
          Matrix.sub(Matrix.add(b, Matrix.mul(v, length)), Matrix.add(a, Matrix.mul(u, length))),
        ],
      ] as const;
      for (const [offset, w] of ends) {
        expect(offset.global).toBeCloseTo(w.norm(), 10);
        expect(offset.depth).toBeCloseTo(u.transpose().mmul(w).get(0, 0), 10);
        expect(offset.lateral).toBeCloseTo(across.mmul(w).norm(), 10);
        expect(offset.faciopalatal).toBeCloseTo(f.transpose().mmul(w).get(0, 0), 10);
        expect(offset.mesiodistal).toBeCloseTo(m.transpose().mmul(w).get(0, 0), 10);
        expect(offset.lateral ** 2 + offset.depth ** 2).toBeCloseTo(offset.global ** 2, 10);
      }
      // The angle between two unit columns from the singular values of the pair: s1² − s2² = 2 |cos|.
      const [s1, s2] = new SVD(new Matrix([u.to1DArray(), v.to1DArray()]).transpose()).diagonal;
      expect(found.angle).toBeCloseTo((Math.acos(Math.min(1, (s1 ** 2 - s2 ** 2) / 2)) * 180) / Math.PI, 5);
    }
  });
});

describe('a mark', () => {
  test('the answer itself: no deviation, nothing broken, done', () => {
    const { exercise } = filesOf(premolar);
    const mark = markAttempt(exercise, { label: 'a', pose: premolar.pose, rehearsal: null });
    for (const id of MEASURE_IDS) expect(mark.measures[id] ?? 0).toBeCloseTo(0, 9);
    expect(mark).toMatchObject({ over: [], broken: [], done: true });
  });

  test('on the slab by hand: 1.2 facially and 0.5 too deep', () => {
    const { exercise } = filesOf(slab, {
      tolerances: { 'platform-lateral': 1, 'platform-depth': 0.5, angle: 5 },
    });
    const { pose } = advance(shift(slab, 0, 1.2), 0.5);
    const mark = markAttempt(exercise, { label: 'a', pose, rehearsal: null });
    expect(mark.measures).toMatchObject({ angle: 0, roll: 0 });
    expect(mark.measures['platform-lateral']).toBeCloseTo(1.2, 9);
    expect(mark.measures['platform-depth']).toBeCloseTo(0.5, 9);
    expect(mark.over).toEqual(['platform-lateral']);
    // 2.0 − 1.2 is under 1.
    expect(mark.broken).toContain('facial-wall-1mm');
    expect(mark.broken).not.toContain('palatal-wall-1mm');
    expect(mark.done).toBe(false);
  });

  test('a rehearsal is marked by where its hole stands: as planned, and 0.5 beside it, and 1 mm too shallow', () => {
    const { exercise } = filesOf(premolar, { task: 'rehearse', done: 'drilled' });
    const passes = passesAsPlanned(premolar);
    const drilled = { ...EMPTY_REHEARSAL, passes };
    const attempt = { label: '', pose: premolar.pose, rehearsal: drilled };
    const on = markAttempt(exercise, attempt);
    for (const id of MEASURE_IDS) expect(on.measures[id] ?? 0).toBeCloseTo(0, 6);
    expect(on.done).toBe(true);
    const moved = passes.map((p) => ({
      ...p,
      pose: { ...p.pose, mouth: { ...p.pose.mouth, m: p.pose.mouth.m + 0.5 } },
    }));
    const beside = markAttempt(exercise, { ...attempt, rehearsal: { ...drilled, passes: moved } });
    expect(beside.measures['platform-mesiodistal']).toBeCloseTo(0.5, 2);
    const shallow = passes.map((p) => ({ ...p, depth: p.depth - 1 }));
    const short = markAttempt(exercise, { ...attempt, rehearsal: { ...drilled, passes: shallow } });
    expect(short.measures['apex-depth']).toBeCloseTo(-1, 6);
    expect(short.done).toBe(false);
    expect(placedPose(exercise, { ...attempt, rehearsal: null })).toBe(premolar.pose);
    expect(totalLength(premolar.implant)).toBe(11);
  });
});

describe('exercise files (rules L7, L8)', () => {
  test('teacher and students have one fingerprint; the students have no answer, in clear or otherwise', () => {
    const { teacher, student, exercise } = filesOf(lateral);
    const read = parseExerciseFile(student);
    expect(read).toMatchObject({ ok: true, value: { answer: null, fingerprint: exercise.fingerprint } });
    expect(exercise.answer).toEqual(lateral.pose);
    expect(teacher).toContain(SALT);
    expect(student).not.toContain(SALT);
    const { pose } = read.ok ? read.value.plan : lateral;
    expect(pose.platform).not.toEqual(lateral.pose.platform);
    expect(student).not.toContain(String(lateral.pose.tilt.faciopalatal));
    expect(JSON.parse(student)).toEqual(JSON.parse(JSON.stringify(forStudents(JSON.parse(teacher)))));
  });

  test('whatever is changed but the answer is another exercise; an answer that is changed is refused', () => {
    const { teacher, exercise } = filesOf(premolar);
    const value = JSON.parse(teacher);
    const changes = [
      { title: 'Other' },
      { done: 'handed-in' },
      { tolerances: {} },
      { hidden: { ...value.hidden, section: true } },
    ];
    for (const change of changes)
      expect(fingerprintOf({ ...value, ...change })).not.toBe(exercise.fingerprint);
    const turned = JSON.stringify({ ...value, answer: { ...value.answer, salt: SALT.replace('0', '1') } });
    const moved = JSON.stringify({ ...value, answer: { salt: SALT, pose: shift(premolar, 0.1, 0).pose } });
    for (const text of [turned, moved])
      expect(parseExerciseFile(text)).toMatchObject({ ok: false, faults: [{ code: 'answer-changed' }] });
  });

  test('a salt is 32 digits by chance, and a file without enough of it is refused', () => {
    const [one, other] = [newSalt(), newSalt()];
    expect(one).toMatch(/^[0-9a-f]{32}$/);
    expect(one).not.toBe(other);
    const { teacher } = filesOf(premolar);
    const value = JSON.parse(teacher);
    const weak = JSON.stringify({ ...value, answer: { ...value.answer, salt: '12' } });
    expect(parseExerciseFile(weak).ok).toBe(false);
  });

  test('unknown fields, wrong plans and keys that hide are refused with the field', () => {
    const { student } = filesOf(premolar);
    const value = JSON.parse(student);
    const fieldOf = (text: string) => {
      const read = parseExerciseFile(text);
      return read.ok ? '' : read.faults[0].field;
    };
    expect(fieldOf(JSON.stringify({ ...value, note: '' }))).toBe('note');
    expect(fieldOf(JSON.stringify({ ...value, plan: { ...value.plan, crestMargin: 9 } }))).toBe(
      'plan.crestMargin',
    );
    expect(fieldOf(student.replace('"tolerances": {', '"tolerances": {"__proto__": 1,'))).toBe(
      'tolerances.__proto__',
    );
    expect(fieldOf(JSON.stringify({ ...value, tolerances: { score: 1 } }))).toMatch(/^tolerances/);
  });
});

describe('attempt files', () => {
  const { exercise } = filesOf(premolar);
  const gauss = normal(seeded(5));

  test('print and parse are one, over 50 attempts', () => {
    for (let i = 0; i < 50; i++) {
      const attempt = attemptAt(premolar, gauss, `student ${i}`);
      expect(parseAttemptFile(attemptText(exercise, attempt), exercise)).toEqual({
        ok: true,
        value: attempt,
      });
    }
  });

  test('an attempt at another exercise is refused by its fingerprint', () => {
    const other = filesOf(slab).exercise;
    const text = attemptText(other, attemptAt(slab, gauss, 'a'));
    expect(parseAttemptFile(text, exercise)).toMatchObject({
      ok: false,
      faults: [{ code: 'other-exercise' }],
    });
    expect(parseAttemptFile(text, other).ok).toBe(true);
  });

  test('of a class with twenty broken files every other is marked, and each broken one says why', () => {
    const sound = attemptText(exercise, attemptAt(premolar, gauss, 'a'));
    const texts = [sound, ...brokenFiles(sound), sound];
    const { files, report } = gathered(texts.map((text, i) => markFile(exercise, `${i}.json`, text)));
    expect(files.map(({ mark }) => mark !== null)).toEqual([true, ...Array(20).fill(false), true]);
    expect(report.attempts).toBe(2);
    expect(markFile(exercise, 'gone.json', null).fault).toBe('unreadable');
  });
});

describe('a class (rule L10)', () => {
  test('mean and SD against ml-matrix, and what was put in comes out', () => {
    const { exercise } = filesOf(slab);
    const gauss = normal(seeded(3));
    const marks = Array.from({ length: 120 }, () => markAttempt(exercise, attemptAt(slab, gauss, '')));
    const report = classReport(marks);
    for (const id of MEASURE_IDS) {
      const values = new Matrix(marks.map(({ measures }) => [measures[id] ?? 0]));
      expect(report.measures[id]?.mean).toBeCloseTo(values.mean('column')[0], 10);
      expect(report.measures[id]?.sd).toBeCloseTo(
        values.standardDeviation('column', { unbiased: true })[0],
        10,
      );
    }
    // The slab is upright, so platform offsets are those put in: 0.3 facially, 0.4 too deep, SD 0.6 and 0.5; within four standard errors.
    const off = (id: 'platform-faciopalatal' | 'platform-depth') => report.measures[id]?.mean ?? 0;
    expect(Math.abs(off('platform-faciopalatal') - 0.3)).toBeLessThan((4 * 0.6) / Math.sqrt(120));
    expect(Math.abs(off('platform-depth') - 0.4)).toBeLessThan((4 * 0.5) / Math.sqrt(120));
    const counts = report.broken.map(({ count }) => count);
    expect(counts).toEqual([...counts].sort((p, q) => q - p));
    const [first] = report.broken;
    expect(first.count).toBe(marks.filter(({ broken }) => broken.includes(first.reading)).length);
  });

  test('numbers far from 0 keep their spread; one has none', () => {
    expect(summaryOf([1e9 + 1, 1e9 + 2, 1e9 + 3])).toMatchObject({ mean: 1e9 + 2, sd: 1 });
    expect(summaryOf([4])).toEqual({ n: 1, mean: 4, sd: null, least: 4, most: 4 });
    expect(summaryOf([])).toBeNull();
  });
});
