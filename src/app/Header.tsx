import type { ReactNode } from 'react';
import { PLACES, type Place } from '../state/session.ts';
import { say } from '../words/say.ts';

export interface HeaderProps {
  place: Place;
  onPlace: (place: Place) => void;
  /** Places that may be gone to; null: all. */
  open: readonly Place[] | null;
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

const ALL = 'M2 6V2h4M10 2h4v4M14 10v4h-4M6 14H2v-4';

interface StepProps {
  name: string;
  label: string | null;
  forward?: boolean;
  onPress: () => void;
}

/** A step of the history: an arrow, whose words stand beside it where there is room and are its name everywhere. */
function Step({ name, label, forward = false, onPress }: StepProps) {
  return (
    <button
      type="button"
      className="quiet"
      disabled={label === null}
      title={label === null ? undefined : say('history.step', { name, step: label })}
      onClick={onPress}
    >
      <svg viewBox="0 0 16 16" aria-hidden="true">
        <path d={BACK} transform={forward ? 'matrix(-1 0 0 1 16 0)' : undefined} />
      </svg>
      <b>{name}</b>
      <span>{label}</span>
    </button>
  );
}

export function Header(props: HeaderProps) {
  const { place, onPlace, open, undoLabel, redoLabel, onUndo, onRedo, projector, onProjector, children } =
    props;
  return (
    <header className="header">
      <h1 className="wordmark">{say('app.name')}</h1>
      <nav className="places" aria-label={say('place.navigation')}>
        {PLACES.map((one) => (
          <button
            key={one}
            type="button"
            aria-current={one === place ? 'page' : undefined}
            disabled={open !== null && !open.includes(one)}
            title={open !== null && !open.includes(one) ? say('exercise.notHere') : undefined}
            onClick={() => onPlace(one)}
          >
            {say(`place.${one}`)}
          </button>
        ))}
      </nav>
      {children}
      <button
        type="button"
        className="quiet full-screen"
        aria-pressed={projector}
        title={say('header.fullScreen')}
        onClick={onProjector}
      >
        <svg viewBox="0 0 16 16" aria-hidden="true">
          <path d={ALL} />
        </svg>
        <span>{say('header.fullScreen')}</span>
      </button>
      <div className="history">
        <Step name={say('history.undo')} label={undoLabel} onPress={onUndo} />
        <Step name={say('history.redo')} label={redoLabel} forward onPress={onRedo} />
      </div>
    </header>
  );
}
