import type { TeachStores } from '../../state/teach.ts';
import { useSelected } from '../../state/useSelected.ts';
import { formatNumber } from '../../words/format.ts';
import { say } from '../../words/sayTeach.ts';
import { stepLesson } from './lesson.ts';

const count = (value: number): string => formatNumber({ value, unit: 'count' });

/** A step back, which step this is, a step on. */
export function LessonPresses({ stores }: { stores: TeachStores }) {
  const lesson = useSelected(stores.live, (state) => state.lesson);
  const step = useSelected(stores.live, (state) => state.lessonStep);
  const hidden = useSelected(stores.live, (state) => state.answerHidden);
  if (!lesson) return null;
  const last = step === lesson.steps.length - 1 && !hidden;
  return (
    <div className="lesson-presses">
      <button
        type="button"
        aria-label={say('lesson.previous')}
        disabled={step === 0}
        onClick={() => stepLesson(stores, -1)}
      >
        ‹
      </button>
      <span data-lesson-step={step}>
        {say('lesson.place', { step: count(step + 1), steps: count(lesson.steps.length) })}
      </span>
      <button
        type="button"
        aria-label={say('lesson.next')}
        disabled={last}
        onClick={() => stepLesson(stores, 1)}
      >
        ›
      </button>
    </div>
  );
}
