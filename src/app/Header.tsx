import type { ReactNode } from 'react';
import { PLACES, type Place } from '../state/session.ts';
import { say } from '../words/say.ts';

export interface HeaderProps {
  place: Place;
  onPlace: (place: Place) => void;
  /** Name of the step that can be taken back, or null. */
  undoLabel: string | null;
  redoLabel: string | null;
  onUndo: () => void;
  onRedo: () => void;
  projector: boolean;
  onProjector: () => void;
  /** What stands between the places and the history: plans and files. */
  children?: ReactNode;
}

const BACK = 'M6 2 2 6l4 4M2 6h8a4 4 0 0 1 0 8H7';

export function Header(props: HeaderProps) {
  const { place, onPlace, undoLabel, redoLabel, onUndo, onRedo, projector, onProjector, children } = props;
  return (
    <header className="header">
      <h1 className="wordmark">{say('app.name')}</h1>
      <nav className="places" aria-label={say('place.navigation')}>
        {PLACES.map((one) => (
          <button
            key={one}
            type="button"
            aria-current={one === place ? 'page' : undefined}
            onClick={() => onPlace(one)}
          >
            {say(`place.${one}`)}
          </button>
        ))}
      </nav>
      {children}
      <button type="button" className="quiet full-screen" aria-pressed={projector} onClick={onProjector}>
        {say('header.fullScreen')}
      </button>
      <div className="history">
        <button type="button" className="quiet" disabled={undoLabel === null} onClick={onUndo}>
          <svg viewBox="0 0 16 16" aria-hidden="true">
            <path d={BACK} />
          </svg>
          <b>{say('history.undo')}</b>
          <span>{undoLabel}</span>
        </button>
        <button type="button" className="quiet" disabled={redoLabel === null} onClick={onRedo}>
          <svg viewBox="0 0 16 16" aria-hidden="true">
            <path d={BACK} transform="matrix(-1 0 0 1 16 0)" />
          </svg>
          <b>{say('history.redo')}</b>
          <span>{redoLabel}</span>
        </button>
      </div>
    </header>
  );
}
