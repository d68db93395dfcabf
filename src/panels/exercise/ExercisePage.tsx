import { type ReactNode, useId, useMemo, useState } from 'react';
import { DONE, type Hidden, TASKS } from '../../core/teaching/exercise.ts';
import { type MeasureId, unitOfMeasure } from '../../core/teaching/measures.ts';
import { newSalt, printExerciseFiles } from '../../io/exerciseFile.ts';
import { addressWith } from '../../io/link/address.ts';
import { exerciseHash } from '../../io/link/exerciseLink.ts';
import type { Setting } from '../../state/sitting.ts';
import type { PlanStores } from '../../state/stores.ts';
import { usePlan } from '../../state/usePlan.ts';
import { useSelected } from '../../state/useSelected.ts';
import { sayMeasure } from '../../words/presentMark.ts';
import { say } from '../../words/sayTeach.ts';
import { download } from '../files.ts';
import { SpinField } from '../SpinField.tsx';
import { RoomHead } from '../teach/RoomHead.tsx';
import './exercise.css';

/** What can be marked, and how much of it is let pass unless the teacher says otherwise; assumed, to be set. */
const MARKED = [
  ['platform-lateral', 1],
  ['platform-depth', 1],
  ['apex-lateral', 1.5],
  ['angle', 5],
] as const satisfies readonly (readonly [MeasureId, number])[];

const HIDES = ['readings', 'section', 'profile', 'target'] as const satisfies readonly (keyof Hidden)[];
const STARTS = ['blank', 'plan'] as const;
const MOST: Readonly<Record<'mm' | 'deg', number>> = { mm: 10, deg: 45 };

function Group({ heading, children }: { heading: string; children: ReactNode }) {
  return (
    <fieldset className="exercise-group">
      <legend>{heading}</legend>
      {children}
    </fieldset>
  );
}

interface ChoiceProps {
  kind: 'radio' | 'checkbox';
  name: string;
  checked: boolean;
  words: string;
  onChange: (checked: boolean) => void;
}

function Choice({ kind, name, checked, words, onChange }: ChoiceProps) {
  return (
    <label className="exercise-choice">
      <input type={kind} name={name} checked={checked} onChange={({ target }) => onChange(target.checked)} />
      <span>{words}</span>
    </label>
  );
}

interface SettingProps {
  setting: Setting;
  change: (part: Partial<Setting>) => void;
}

/** What is to be done: in the teacher's words, as a task, from where. */
function Asked({ setting, change }: SettingProps) {
  const [title, words] = [useId(), useId()];
  return (
    <div className="exercise-column">
      <label htmlFor={title}>{say('exercise.title')}</label>
      <input
        id={title}
        value={setting.title}
        maxLength={120}
        onChange={({ target }) => change({ title: target.value })}
      />
      <label htmlFor={words}>{say('exercise.words')}</label>
      <textarea
        id={words}
        value={setting.words}
        maxLength={2000}
        rows={5}
        onChange={({ target }) => change({ words: target.value })}
      />
      <Group heading={say('exercise.task')}>
        {TASKS.map((task) => (
          <Choice
            key={task}
            kind="radio"
            name="task"
            checked={setting.task === task}
            words={say(`exercise.task.${task}`)}
            onChange={() => change({ task })}
          />
        ))}
      </Group>
      <Group heading={say('exercise.start')}>
        {STARTS.map((start) => (
          <Choice
            key={start}
            kind="radio"
            name="start"
            checked={setting.start === start}
            words={say(`exercise.start.${start}`)}
            onChange={() => change({ start })}
          />
        ))}
      </Group>
    </div>
  );
}

/** What is kept from the students, when they are done, and what is marked. */
function Judged({ setting, change }: SettingProps) {
  const { hidden, tolerances } = setting;
  return (
    <div className="exercise-column">
      <Group heading={say('exercise.hide')}>
        {HIDES.map((part) => (
          <Choice
            key={part}
            kind="checkbox"
            name={part}
            checked={hidden[part]}
            words={say(`exercise.hide.${part}`)}
            onChange={(on) => change({ hidden: { ...hidden, [part]: on } })}
          />
        ))}
      </Group>
      <Group heading={say('exercise.done')}>
        {DONE.map((done) => (
          <Choice
            key={done}
            kind="radio"
            name="done"
            checked={setting.done === done}
            words={say(`done.${done}`)}
            onChange={() => change({ done })}
          />
        ))}
      </Group>
      <Group heading={say('exercise.tolerances')}>
        {MARKED.map(([id, usual]) => (
          <Tolerance
            key={id}
            id={id}
            value={tolerances[id]}
            usual={usual}
            onChange={(value) => change({ tolerances: { ...tolerances, [id]: value } })}
          />
        ))}
      </Group>
    </div>
  );
}

interface ToleranceProps {
  id: MeasureId;
  /** Undefined: it is shown and not marked. */
  value: number | undefined;
  usual: number;
  onChange: (value: number | undefined) => void;
}

function Tolerance({ id, value, usual, onChange }: ToleranceProps) {
  const unit = unitOfMeasure(id);
  const measure = sayMeasure(id);
  return (
    <div className="exercise-tolerance">
      <input
        type="checkbox"
        aria-label={say('exercise.measure', { measure })}
        checked={value !== undefined}
        onChange={({ target }) => onChange(target.checked ? usual : undefined)}
      />
      <SpinField
        name={measure}
        value={value ?? usual}
        unit={unit}
        least={0.1}
        most={MOST[unit]}
        step={unit === 'mm' ? 0.1 : 1}
        page={unit === 'mm' ? 0.5 : 5}
        onCommit={onChange}
      />
    </div>
  );
}

/** Tolerances that were unticked are left out of the file. */
const written = (setting: Setting): Setting => ({
  ...setting,
  tolerances: Object.fromEntries(
    Object.entries(setting.tolerances).filter(([, value]) => value !== undefined),
  ),
});

/** The teacher sets an exercise from the plan on the table and gives it out. */
export default function ExercisePage({ stores }: { stores: PlanStores }) {
  const plan = usePlan(stores);
  const setting = useSelected(stores.live, (state) => state.setting);
  const change = (part: Partial<Setting>) => stores.live.set({ setting: { ...setting, ...part } });
  // One salt for as long as nothing changes: teacher's and students' file are then of one exercise.
  const files = useMemo(() => printExerciseFiles({ ...written(setting), plan }, newSalt()), [setting, plan]);
  const ready = setting.title.trim() !== '';
  return (
    <div className="exercise-page">
      <RoomHead stores={stores}>
        <h2>{say('exercise.heading')}</h2>
      </RoomHead>
      <div className="exercise-body">
        <p className="exercise-intro">{say('exercise.intro')}</p>
        <div className="exercise-columns">
          <Asked setting={setting} change={change} />
          <Judged setting={setting} change={change} />
          <GiveOut files={files} ready={ready} />
        </div>
      </div>
    </div>
  );
}

/** The two files and the link. */
function GiveOut({ files, ready }: { files: { teacher: string; student: string }; ready: boolean }) {
  const id = useId();
  const link = useMemo(() => exerciseHash(files.student), [files]);
  const [taken, setTaken] = useState(false);
  const give = (name: string, text: string) => {
    download(name, text);
    setTaken(true);
  };
  return (
    <div className="exercise-column">
      <h3>{say('exercise.giveOut')}</h3>
      {!ready && <p role="status">{say('exercise.untitled')}</p>}
      <button
        type="button"
        disabled={!ready}
        onClick={() => give(say('exercise.fileTeacher'), files.teacher)}
      >
        {say('exercise.teacherFile')}
      </button>
      <button
        type="button"
        disabled={!ready}
        onClick={() => give(say('exercise.fileStudent'), files.student)}
      >
        {say('exercise.studentFile')}
      </button>
      {ready && link && (
        <>
          <label htmlFor={id}>{say('exercise.link')}</label>
          <textarea
            id={id}
            readOnly
            rows={4}
            value={addressWith(window.location.href, link)}
            onFocus={({ target }) => target.select()}
          />
        </>
      )}
      {ready && !link && <p>{say('exercise.noLink')}</p>}
      {taken && <p role="status">{say('exercise.salted')}</p>}
    </div>
  );
}
