import { type ChangeEvent, useRef, useState } from 'react';
import { parseLessonFile } from '../../io/lessonFile.ts';
import { LESSONS } from '../../io/lessons.ts';
import type { TeachStores } from '../../state/teach.ts';
import { presentFault } from '../../words/presentFault.ts';
import { say } from '../../words/sayTeach.ts';
import { textOf } from '../files.ts';
import { showStep, takeView } from './lesson.ts';

/** A lesson from a file; one that cannot be used says why. */
function OpenLesson({ stores }: { stores: TeachStores }) {
  const input = useRef<HTMLInputElement>(null);
  const [refused, setRefused] = useState('');
  const open = async (event: ChangeEvent<HTMLInputElement>) => {
    const [file] = event.target.files ?? [];
    if (!file) return;
    const text = await textOf(file);
    if (input.current) input.current.value = '';
    const tell = (fault: string) => setRefused(say('lesson.refused', { file: file.name, fault }));
    if (text === null) return tell(say('plans.unreadable'));
    const read = parseLessonFile(text);
    if (read.ok) showStep(stores, read.value, 0);
    else tell(presentFault(read.faults[0]));
  };
  return (
    <>
      <button type="button" onClick={() => input.current?.click()}>
        {say('lesson.open')}
      </button>
      <input
        ref={input}
        type="file"
        accept=".json,application/json"
        aria-label={say('lesson.open')}
        hidden
        onChange={(event) => void open(event)}
      />
      <p className="lesson-notice" role="alert">
        {refused}
      </p>
    </>
  );
}

/** The lessons that come with the program, one from a file, or one of one's own. */
export function LessonStart({ stores }: { stores: TeachStores }) {
  return (
    <>
      <h3>{say('lesson.ready')}</h3>
      <ul className="lesson-list">
        {LESSONS.map(({ id, lesson }) => (
          <li key={id}>
            <button type="button" data-lesson={id} onClick={() => showStep(stores, lesson, 0)}>
              {lesson.title}
            </button>
            <p className="caption">{lesson.words}</p>
          </li>
        ))}
      </ul>
      <h3>{say('lesson.own')}</h3>
      <div className="lesson-list">
        <button type="button" onClick={() => takeView(stores, say('lesson.untitled'), 'after')}>
          {say('lesson.begin')}
        </button>
        <OpenLesson stores={stores} />
      </div>
    </>
  );
}
