import { type ReactNode, Suspense, useId, useRef, useState } from 'react';
import './popover.css';

interface RailDialogProps {
  /** The word of the rail that opens it, and its name. */
  readonly word: string;
  /** Said until what it holds is loaded. */
  readonly waiting: string;
  /** Class of the dialog; the word's own is `<name>-open`. */
  readonly name: string;
  /** What it holds, there only while it is open: so a search in it runs only then. */
  readonly children: (close: () => void) => ReactNode;
}

/** A word of the rail that opens a dialog. */
export function RailDialog({ word, waiting, name, children }: RailDialogProps) {
  const id = useId();
  const menu = useRef<HTMLDivElement>(null);
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" className={`rail-word ${name}-open`} popoverTarget={id}>
        {word}
      </button>
      <div
        className={`popover ${name}-menu`}
        id={id}
        ref={menu}
        popover="auto"
        role="dialog"
        aria-label={word}
        onToggle={({ newState }) => setOpen(newState === 'open')}
      >
        {open && (
          <Suspense fallback={<p>{waiting}</p>}>{children(() => menu.current?.hidePopover())}</Suspense>
        )}
      </div>
    </>
  );
}
