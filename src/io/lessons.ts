import wall from '../../assets/lessons/lesson-1-facial-wall.json';
import socket from '../../assets/lessons/lesson-2-fresh-socket.json';
import depth from '../../assets/lessons/lesson-3-depth-and-drill.json';
import type { Lesson } from '../core/teaching/lesson.ts';
import { readLesson } from './lessonFile.ts';

/** Read like any other file: a lesson of ours that the reader refuses is a fault of ours, and said at once. */
function stored(id: string, value: unknown): { readonly id: string; readonly lesson: Lesson } {
  const read = readLesson(value);
  if (!read.ok) throw new Error(`assets/lessons/${id}.json: ${read.faults[0].code} ${read.faults[0].field}`);
  return { id, lesson: read.value };
}

/** The lessons that come with the program. */
export const LESSONS = [
  stored('lesson-1-facial-wall', wall),
  stored('lesson-2-fresh-socket', socket),
  stored('lesson-3-depth-and-drill', depth),
];
