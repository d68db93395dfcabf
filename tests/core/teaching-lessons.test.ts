import { describe, expect, test } from 'vitest';
import { costOf } from '../../src/core/teaching/cost.ts';
import { LESSON_BONES, LESSON_VIEWS } from '../../src/core/teaching/lesson.ts';
import { notInPlan } from '../../src/core/teaching/trajectories.ts';
import { parseLessonFile, printLessonFile } from '../../src/io/lessonFile.ts';
import { LESSONS } from '../../src/io/lessons.ts';
import { BONES, VIEWS } from '../../src/state/session.ts';
import { LESSON_FILES } from '../support/lessons.ts';

describe('lesson files (rule L13)', () => {
  test('print and parse are one', () => {
    for (const { lesson } of LESSON_FILES)
      expect(parseLessonFile(printLessonFile(lesson))).toEqual({ ok: true, value: lesson });
  });

  test('a step that names no plan, an unknown trajectory, an amount that is none, a foreign field: refused with the field', () => {
    const value = JSON.parse(printLessonFile(LESSON_FILES[0].lesson));
    const with1 = (part: object) => {
      const steps = value.steps.map((step: object, i: number) => (i === 1 ? { ...step, ...part } : step));
      const read = parseLessonFile(JSON.stringify({ ...value, steps }));
      return read.ok ? '' : read.faults[0].field;
    };
    expect(with1({ plan: 3 })).toBe('steps.1.plan');
    expect(with1({ trajectory: { id: 'too-fast', percent: 10 } })).toBe('steps.1.trajectory.id');
    expect(with1({ trajectory: { id: 'too-deep', percent: 101 } })).toBe('steps.1.trajectory.percent');
    expect(with1({ camera: 1 })).toBe('steps.1.camera');
    const none = parseLessonFile(
      JSON.stringify({ ...value, plans: [{ ...value.plans[0], crestMargin: -1 }] }),
    );
    expect(none).toMatchObject({ ok: false, faults: [{ field: 'plans.0.crestMargin' }] });
    expect(parseLessonFile('{').ok).toBe(false);
  });

  test('a lesson knows the views that the page has', () => {
    expect(LESSON_VIEWS).toEqual(VIEWS);
    expect(LESSON_BONES).toEqual(BONES);
  });
});

describe('the three lessons', () => {
  test('come with the program as they were written', () => {
    expect(LESSONS.map(({ id }) => id)).toEqual(LESSON_FILES.map(({ id }) => id));
    LESSONS.forEach(({ lesson }, i) => {
      expect(lesson).toEqual(LESSON_FILES[i].lesson);
    });
  });

  test('bring up trajectories that there are in their plans, most of which cost something', () => {
    for (const { id, lesson } of LESSONS) {
      const costs = lesson.steps.flatMap(({ plan, trajectory }) => {
        if (!trajectory) return [];
        expect(notInPlan(lesson.plans[plan], trajectory.id), `${id} ${trajectory.id}`).toBeNull();
        return [costOf(lesson.plans[plan], trajectory.id, trajectory.percent / 100)];
      });
      expect(costs.filter(({ nothing }) => !nothing).length).toBeGreaterThan(costs.length / 2);
    }
  });

  test('what their words take for granted is so', () => {
    const cost = (lesson: number, step: number) => {
      const { plans, steps } = LESSONS[lesson].lesson;
      const { plan, trajectory } = steps[step];
      if (!trajectory) throw new Error('a step without a trajectory');
      return costOf(plans[plan], trajectory.id, trajectory.percent / 100);
    };
    const beyond = (found: ReturnType<typeof cost>) =>
      found.worse.filter(({ after }) => after.status === 'beyond').map(({ after }) => after.id);
    // “Look at the crown: does it warn you?” “What does it cost?” along the crown: nothing.
    expect(cost(0, 5).silent?.after.id).toBe('incisal-line-offset');
    expect(cost(0, 7).nothing).toBe(true);
    expect(beyond(cost(0, 6))).toContain('root-distal');
    // “What lies there?” The canal.
    expect(beyond(cost(1, 6))).toContain('canal');
    // “No metal shows yet.”
    expect(cost(2, 1).signs.map(({ code }) => code)).not.toContain('shoulder-shows');
    expect(beyond(cost(2, 1))).toContain('shoulder-to-gum-margin');
    expect(beyond(cost(2, 2))).toEqual(['shoulder-to-gum-margin']);
    // “Fifteen degrees here”: nothing is beyond; too wide: a root, and no facial wall.
    expect(beyond(cost(2, 6))).toEqual([]);
    expect(beyond(cost(2, 8)).some((id) => id.startsWith('root-'))).toBe(true);
    expect(beyond(cost(2, 8)).some((id) => id.startsWith('facial-'))).toBe(false);
    expect(beyond(cost(2, 9))).toEqual([]);
  });
});
