import { useState } from 'react';
import type { Lesson, LessonStep } from '../../core/teaching/lesson.ts';
import { printLessonFile } from '../../io/lessonFile.ts';
import type { TeachStores } from '../../state/teach.ts';
import { useSelected } from '../../state/useSelected.ts';
import { formatNumber, formatQuantity } from '../../words/format.ts';
import { sayTrajectory } from '../../words/presentTeach.ts';
import { say } from '../../words/sayTeach.ts';
import { download } from '../files.ts';
import { showStep, takeOut, takeView, withWords } from './lesson.ts';

/** What a step shows, as its line in the list has it. */
function nameOf({ trajectory }: LessonStep): string {
  if (!trajectory) return say('lesson.plan');
  const percent = formatQuantity({ value: trajectory.percent, unit: 'percent' });
  return say('lesson.wrong', { trajectory: sayTrajectory(trajectory.id), percent });
}

interface LessonProps {
  stores: TeachStores;
  lesson: Lesson;
}

/** The steps in order, the one shown marked. */
function Steps({ stores, lesson }: LessonProps) {
  const here = useSelected(stores.live, (state) => state.lessonStep);
  return (
    <ol className="lesson-steps" aria-label={say('lesson.steps')}>
      {lesson.steps.map((step, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place in the list
        <li key={i}>
          <button
            type="button"
            aria-current={i === here ? 'step' : undefined}
            onClick={() => showStep(stores, lesson, i)}
          >
            <span>{formatNumber({ value: i + 1, unit: 'count' })}</span>
            <span>
              {nameOf(step)} {step.ask && <small>{say('lesson.asks')}</small>}
            </span>
          </button>
        </li>
      ))}
    </ol>
  );
}

/** The title, what is said at the step shown, and what can be done with the steps. */
function Writing({ stores, lesson }: LessonProps) {
  const { live } = stores;
  const here = useSelected(live, (state) => state.lessonStep);
  const [full, setFull] = useState(false);
  const take = (where: 'after' | 'here') => setFull(!takeView(stores, lesson.title, where));
  return (
    <>
      <label className="lesson-field">
        {say('lesson.words')}
        <textarea
          rows={3}
          maxLength={300}
          value={lesson.steps[here].words}
          onChange={({ target }) => live.set({ lesson: withWords(lesson, here, target.value) })}
        />
      </label>
      <label className="lesson-field">
        {say('lesson.title')}
        <input
          type="text"
          maxLength={120}
          value={lesson.title}
          onChange={({ target }) => live.set({ lesson: { ...lesson, title: target.value } })}
        />
      </label>
      <p className="lesson-notice" role="alert">
        {full && say('lesson.full')}
      </p>
      <div className="lesson-presses-rail">
        <button type="button" onClick={() => take('after')}>
          {say('lesson.add')}
        </button>
        <button type="button" onClick={() => take('here')}>
          {say('lesson.put')}
        </button>
        <button type="button" onClick={() => takeOut(stores)}>
          {say('lesson.remove')}
        </button>
        <button type="button" onClick={() => download(say('lesson.fileName'), printLessonFile(lesson))}>
          {say('lesson.save')}
        </button>
      </div>
    </>
  );
}

/** An open lesson: its steps, its words, and the way out. */
export function LessonSteps({ stores, lesson }: LessonProps) {
  const close = () => stores.live.set({ lesson: null, lessonStep: 0, answerHidden: false });
  return (
    <>
      <h3>{lesson.title}</h3>
      <Steps stores={stores} lesson={lesson} />
      <div className="lesson-list">
        <button type="button" onClick={close}>
          {say('lesson.close')}
        </button>
      </div>
      <details className="lesson-writing">
        <summary>{say('lesson.write')}</summary>
        <Writing stores={stores} lesson={lesson} />
      </details>
    </>
  );
}
