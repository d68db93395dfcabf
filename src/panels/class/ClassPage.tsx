import { type ChangeEvent, type DragEvent, useMemo, useRef } from 'react';
import { type Answered, answeredPlan } from '../../core/teaching/mark.ts';
import { classCsv } from '../../io/classTable.ts';
import { BYTE_ORDER_MARK } from '../../io/csv.ts';
import { gathered, type MarkedFile } from '../../io/markFiles.ts';
import type { Classroom } from '../../state/classroom.ts';
import type { PlanStores } from '../../state/stores.ts';
import { formatNumber } from '../../words/format.ts';
import { presentBroken, presentOver, sayCount } from '../../words/presentMark.ts';
import { say } from '../../words/sayTeach.ts';
import { download } from '../files.ts';
import { RoomHead } from '../teach/RoomHead.tsx';
import { ClassTable } from './ClassTable.tsx';
import { PublishedSpreads } from './PublishedSpreads.tsx';
import { SpreadStrip } from './SpreadStrip.tsx';
import { SpreadTarget } from './SpreadTarget.tsx';
import { type ClassDesk, useClassroom } from './useClassroom.ts';
import './class.css';

const STRIPS = ['platform-depth', 'apex-depth', 'angle'] as const;

const count = (value: number): string => formatNumber({ value, unit: 'count' });

/** A button that lets files be chosen. */
function Choose({ words, many, take }: { words: string; many: boolean; take: ClassDesk['take'] }) {
  const input = useRef<HTMLInputElement>(null);
  const chosen = (event: ChangeEvent<HTMLInputElement>) => {
    const files = [...(event.target.files ?? [])];
    if (input.current) input.current.value = '';
    void take(files);
  };
  return (
    <>
      <button type="button" onClick={() => input.current?.click()}>
        {words}
      </button>
      <input
        ref={input}
        type="file"
        accept=".json,application/json"
        multiple={many}
        hidden
        data-take={many ? 'attempts' : 'exercise'}
        onChange={chosen}
      />
    </>
  );
}

/** What all attempts have in common, in sentences. */
function ClassWords({ room: { exercise, files } }: { room: Classroom }) {
  const { report } = useMemo(() => gathered(files), [files]);
  if (!exercise) return null;
  const over = presentOver(report, exercise);
  const lists = [
    { heading: say('class.brokenHeading'), lines: presentBroken(report) },
    { heading: say('class.overHeading'), lines: over },
  ].filter(({ lines }) => lines.length > 0);
  return (
    <>
      {lists.map(({ heading, lines }) => (
        <section key={heading} className="class-list">
          <h3>{heading}</h3>
          <ul>
            {lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </section>
      ))}
      <p className="class-note">{say('class.noScore')}</p>
      <PublishedSpreads />
    </>
  );
}

/** How far the class is off the plan, drawn: both ends from above, depth and angle as strips. */
function ClassSpread({ files }: { files: Classroom['files'] }) {
  const marks = useMemo(() => files.flatMap(({ mark }) => mark ?? []), [files]);
  const { report } = useMemo(() => gathered(files), [files]);
  if (marks.length === 0) return null;
  return (
    <>
      <div className="spread-targets">
        <SpreadTarget end="platform" marks={marks} report={report} />
        <SpreadTarget end="apex" marks={marks} report={report} />
      </div>
      <ul className="spread-key">
        <li data-key="done">{say('classPage.done')}</li>
        <li data-key="open">{say('classPage.open')}</li>
        <li data-key="mean">{say('classPage.mean')}</li>
        <li data-key="published">{say('classPage.beginners')}</li>
      </ul>
      <div className="spread-strips">
        {STRIPS.map((id) => (
          <SpreadStrip key={id} id={id} marks={marks} report={report} />
        ))}
      </div>
    </>
  );
}

/** Puts the teacher's plan on the table, as one undo step, with the attempt as the pose that is kept beside it. */
function showBeside({ document, session }: PlanStores, exercise: Answered, { mark }: MarkedFile): void {
  if (!mark) return;
  const plan = answeredPlan(exercise);
  document.open(say('edit.attempt', { label: mark.label }), plan);
  session.set({ kept: { pose: mark.pose, implant: plan.implant }, place: 'place' });
}

/** The page of a class: the teacher's exercise, the attempts at it, each marked, and what they have in common. Nothing leaves the machine. */
export default function ClassPage({ stores }: { stores: PlanStores }) {
  const { room, refused, take } = useClassroom(stores);
  const { exercise, files, waiting } = room;
  const drop = (event: DragEvent) => {
    if (event.dataTransfer.files.length === 0) return;
    event.preventDefault();
    void take([...event.dataTransfer.files]);
  };
  const all = files.length + waiting;
  const state =
    waiting > 0
      ? say('classPage.marking', { done: count(files.length), all: count(all) })
      : exercise && files.length > 0
        ? sayCount(gathered(files).report, files.length, exercise)
        : '';
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: files may be let go anywhere; the buttons do the same
    <div className="class-page" onDrop={drop} data-waiting={waiting}>
      <RoomHead stores={stores}>
        <div className="class-open">
          <Choose words={say('classPage.exercise')} many={false} take={take} />
          {exercise && <Choose words={say('classPage.attempts')} many take={take} />}
          {exercise && files.length > 0 && (
            <button
              type="button"
              className="quiet"
              onClick={() =>
                download('class.csv', BYTE_ORDER_MARK + classCsv(exercise, { files }), 'text/csv')
              }
            >
              {say('classPage.csv')}
            </button>
          )}
        </div>
        <p className="class-state" role="status">
          {exercise ? <strong>{say('classPage.named', { title: exercise.title })}</strong> : null} {state}
        </p>
        {refused !== '' && (
          <p className="class-refused" role="alert">
            {refused}
          </p>
        )}
      </RoomHead>
      {exercise && files.length > 0 ? (
        <div className="class-body">
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys */}
          <section className="class-attempts" aria-label={say('classPage.table')} tabIndex={0}>
            <h2 className="unseen">{say('classPage.table')}</h2>
            <ClassTable
              files={files}
              exercise={exercise}
              onShow={(one) => showBeside(stores, exercise, one)}
            />
          </section>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys */}
          <section className="class-spread" aria-label={say('classPage.summary')} tabIndex={0}>
            <h2 className="unseen">{say('classPage.summary')}</h2>
            <ClassSpread files={files} />
            <ClassWords room={room} />
          </section>
        </div>
      ) : (
        <div className="calm class-begin">
          <p>{say(exercise ? 'classPage.then' : 'classPage.begin')}</p>
        </div>
      )}
    </div>
  );
}
