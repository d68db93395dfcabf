import type { Answered } from '../core/teaching/mark.ts';
import { type MarkedFile, markFile } from '../io/markFiles.ts';
import { inSlices } from './inSlices.ts';
import type { LiveStore } from './live.ts';

/** A file as it was read; null: it could not be. */
export interface FileText {
  readonly name: string;
  readonly text: string | null;
}

/** As many files are marked between two looks of the page at them. */
const AT_ONCE = 20;

function* marking(exercise: Answered, texts: readonly FileText[]): Generator<MarkedFile, void> {
  for (const { name, text } of texts) yield markFile(exercise, name, text);
}

/** One file a name: an attempt that comes again takes the place of the one before it. */
function joined(known: readonly MarkedFile[], more: readonly MarkedFile[]): MarkedFile[] {
  const names = new Set(more.map(({ file }) => file));
  return [...known.filter(({ file }) => !names.has(file)), ...more].sort((a, b) =>
    a.file < b.file ? -1 : Number(a.file > b.file),
  );
}

/** Marks the files while nothing else is to be done, and shows them as they come. What it returns stops it. */
export function markInTurn(live: LiveStore, exercise: Answered, texts: readonly FileText[]): () => void {
  let batch: MarkedFile[] = [];
  let waiting = texts.length;
  const show = () => {
    const { files } = live.getState().classroom;
    live.set({ classroom: { exercise, files: joined(files, batch), waiting } });
    batch = [];
  };
  show();
  return inSlices(marking(exercise, texts), {
    each: (marked) => {
      batch.push(marked);
      waiting -= 1;
      if (batch.length >= AT_ONCE) show();
    },
    done: show,
  });
}
