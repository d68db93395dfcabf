import type { ReactNode } from 'react';

/** A name with its italic letter before it, as on the handles of the stage. */
export const lettered = (letter: string, word: string): ReactNode => (
  <>
    <i className="letter" aria-hidden="true">
      {letter}
    </i>
    {word}
  </>
);
