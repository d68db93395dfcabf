import { useEffect, useRef, useState } from 'react';
import { say } from '../words/say.ts';

const carriesFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false;

/** A file let go anywhere on the page is given to `onFile`; while one is held over the page, a hint lies over it. */
export function DropPlan({ onFile }: { onFile: (file: File) => void }) {
  const [over, setOver] = useState(false);
  const take = useRef(onFile);
  take.current = onFile;
  useEffect(() => {
    // Elements under the pointer come and go while a file is dragged; the last one left is the page.
    let inside = 0;
    const enter = (event: DragEvent) => {
      if (!carriesFiles(event)) return;
      inside += 1;
      setOver(true);
    };
    const leave = (event: DragEvent) => {
      if (!carriesFiles(event)) return;
      inside = Math.max(0, inside - 1);
      setOver(inside > 0);
    };
    const hold = (event: DragEvent) => {
      if (!carriesFiles(event)) return;
      event.preventDefault();
      if (event.dataTransfer) event.dataTransfer.dropEffect = 'copy';
    };
    const drop = (event: DragEvent) => {
      if (!carriesFiles(event)) return;
      event.preventDefault();
      inside = 0;
      setOver(false);
      const [file] = event.dataTransfer?.files ?? [];
      if (file) take.current(file);
    };
    const heard = { dragenter: enter, dragleave: leave, dragover: hold, drop } as const;
    const kinds = Object.keys(heard) as (keyof typeof heard)[];
    for (const kind of kinds) window.addEventListener(kind, heard[kind]);
    return () => {
      for (const kind of kinds) window.removeEventListener(kind, heard[kind]);
    };
  }, []);
  if (!over) return null;
  return (
    <div className="drop-hint" role="status">
      <p>{say('drop.hint')}</p>
    </div>
  );
}
