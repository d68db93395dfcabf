import { useId } from 'react';
import { printAttemptFile } from '../../io/attemptFile.ts';
import { attemptOf, getUp, type Sitting } from '../../state/sitting.ts';
import type { PlanStores } from '../../state/stores.ts';
import { say } from '../../words/sayExercise.ts';
import { download } from '../files.ts';
import './exercise.css';

/** A label as part of a file's name. */
const fileSafe = (label: string): string => label.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '');

/** Over the page while an exercise is done: what is asked, and how it is handed in. It stands where the state of the pose is told otherwise. */
export default function ExerciseSentence({ stores, sitting }: { stores: PlanStores; sitting: Sitting }) {
  const id = useId();
  const { exercise, label } = sitting;
  const handIn = () => {
    const attempt = attemptOf(sitting, stores.document.getState().plan);
    const name = say('exercise.fileAttempt', { label: fileSafe(attempt.label) || '1' });
    download(name, printAttemptFile(exercise, attempt));
  };
  return (
    <div className="exercise-sentence" data-exercise={exercise.fingerprint}>
      <p>
        <strong>{say('exercise.sitting', { title: exercise.title })}</strong> {exercise.words}
      </p>
      <label htmlFor={id}>{say('exercise.label')}</label>
      <input
        id={id}
        value={label}
        maxLength={40}
        autoComplete="off"
        onChange={({ target }) => stores.live.set({ sitting: { ...sitting, label: target.value } })}
      />
      <button type="button" onClick={handIn}>
        {say('exercise.handIn')}
      </button>
      <button type="button" className="quiet" onClick={() => getUp(stores, say('edit.leaveExercise'))}>
        {say('exercise.leave')}
      </button>
    </div>
  );
}
