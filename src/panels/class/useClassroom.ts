import { useCallback, useEffect, useRef, useState } from 'react';
import { parseExerciseFile } from '../../io/exerciseFile.ts';
import { type Classroom, NO_CLASS } from '../../state/classroom.ts';
import { markInTurn } from '../../state/marking.ts';
import type { PlanStores } from '../../state/stores.ts';
import { useSelected } from '../../state/useSelected.ts';
import { presentFault } from '../../words/presentFault.ts';
import { say } from '../../words/sayTeach.ts';
import { textOf } from '../files.ts';

export interface ClassDesk {
  readonly room: Classroom;
  /** Why a file was not taken, or ''. */
  readonly refused: string;
  /** Any files: an exercise opens it, the rest are attempts. */
  readonly take: (files: Iterable<File>) => Promise<void>;
}

/** The teacher's file among files that were let go together: it holds an answer, which no attempt does. */
const isExercise = (text: string): boolean => /"format":\s*"ridgewright-exercise"/.test(text);

/** Takes exercise and attempts on to the table and has them marked while nothing else is to be done. */
export function useClassroom({ live }: PlanStores): ClassDesk {
  const room = useSelected(live, (state) => state.classroom);
  const [refused, setRefused] = useState('');
  const stop = useRef<() => void>(undefined);
  useEffect(() => () => stop.current?.(), []);

  const take = useCallback(
    async (files: Iterable<File>) => {
      setRefused('');
      const texts = await Promise.all(
        [...files].map(async (file) => ({ name: file.name, text: await textOf(file) })),
      );
      const task = texts.find(({ text }) => text !== null && isExercise(text));
      const attempts = texts.filter((one) => one !== task);
      let { exercise } = live.getState().classroom;
      if (task) {
        const no = (fault: string) => setRefused(say('classPage.refused', { file: task.name, fault }));
        const read = parseExerciseFile(task.text ?? '');
        if (!read.ok) return no(presentFault(read.faults[0]));
        const { answer } = read.value;
        if (!answer) return no(say('classPage.noAnswer'));
        stop.current?.();
        exercise = { ...read.value, answer };
        live.set({ classroom: { ...NO_CLASS, exercise } });
      }
      if (!exercise) return setRefused(say('classPage.begin'));
      if (attempts.length > 0) stop.current = markInTurn(live, exercise, attempts);
    },
    [live],
  );
  return { room, refused, take };
}
