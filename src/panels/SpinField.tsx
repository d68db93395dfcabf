import { type KeyboardEvent, type MouseEvent, type ReactNode, useId, useState } from 'react';
import { formatNumber, formatQuantity, type Unit, unitSymbol } from '../words/format.ts';
import { parseNumber } from '../words/parse.ts';
import { say } from '../words/say.ts';
import './field.css';

export interface SpinFieldProps {
  /** The name of the value, as text: what a screen reader says. */
  name: string;
  /** How the name is drawn, where that differs (an italic letter before it). */
  label?: ReactNode;
  value: number;
  unit: Unit;
  least: number;
  most: number;
  /** What an arrow key or a button adds; a tenth of it with Shift. Usually 0.1 mm or 1°. */
  step: number;
  /** What a Page key adds. Usually 0.5 mm or 5°. */
  page: number;
  signed?: boolean;
  /** What stands after the field, in its row. */
  beside?: ReactNode;
  /** What is wrong with the value, as its owner sees it. */
  complaint?: string;
  /** A new value, inside the range, finished: one per press, per Enter, per leaving the field. */
  onCommit: (value: number) => void;
  /** The field gets the focus, or loses it. */
  onFocused?: (focused: boolean) => void;
  /** A held arrow key begins and ends: what is committed between is one gesture. */
  onHold?: (phase: 'begin' | 'end') => void;
}

const ARROWS: Readonly<Record<string, number>> = { ArrowUp: 1, ArrowDown: -1 };
const PAGES: Readonly<Record<string, number>> = { PageUp: 1, PageDown: -1 };

/** Sums of tenths and hundredths, without the noise of binary fractions. */
const tidy = (value: number): number => Math.round(value * 1e6) / 1e6 + 0;

/**
 * A number that can be typed, stepped and clicked: a text field in the spin-button pattern between two
 * buttons. Text that is no number, or outside the range, leaves the value alone and says so.
 */
export function SpinField(props: SpinFieldProps) {
  const {
    name,
    label = name,
    value,
    unit,
    least,
    most,
    step,
    page,
    signed,
    onCommit,
    onFocused,
    onHold,
    beside,
    complaint = '',
  } = props;
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const [problem, setProblem] = useState('');
  const [held, setHeld] = useState(false);

  const show = (number: number) => formatNumber({ value: number, unit, signed, exact: true });
  const speak = (number: number) => formatQuantity({ value: number, unit, signed, exact: true });

  const restore = () => {
    setDraft(null);
    setProblem('');
  };

  const commit = () => {
    if (draft === null) return;
    const typed = parseNumber(draft, unit);
    setDraft(null);
    if (typed === null) {
      setProblem(say('field.notANumber', { text: draft.trim(), kept: speak(value) }));
    } else if (typed < least || typed > most) {
      const range = { least: speak(least), most: speak(most) };
      setProblem(say('field.outOfRange', { text: speak(typed), ...range, kept: speak(value) }));
    } else {
      setProblem('');
      if (typed !== value) onCommit(typed);
    }
  };

  const stepBy = (amount: number) => {
    const from = (draft === null ? null : parseNumber(draft, unit)) ?? value;
    const next = Math.min(most, Math.max(least, tidy(from + amount)));
    restore();
    if (next !== value) onCommit(next);
  };

  const endHold = () => {
    if (held) onHold?.('end');
    setHeld(false);
  };

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const fine = event.shiftKey ? 0.1 : 1;
    const amount = (ARROWS[event.key] ?? 0) * step * fine + (PAGES[event.key] ?? 0) * page;
    if (amount !== 0) {
      event.preventDefault();
      if (event.repeat && !held) {
        onHold?.('begin');
        setHeld(true);
      }
      stepBy(amount);
    } else if (event.key === 'Enter') commit();
    else if (event.key === 'Escape') restore();
  };

  const press = (sign: 1 | -1) => (event: MouseEvent) => stepBy(sign * step * (event.shiftKey ? 0.1 : 1));

  return (
    <div className="field">
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      <button type="button" tabIndex={-1} aria-label={say('field.less', { field: name })} onClick={press(-1)}>
        −
      </button>
      <div className="field-box">
        <input
          id={id}
          role="spinbutton"
          inputMode="decimal"
          autoComplete="off"
          spellCheck={false}
          aria-label={name}
          aria-valuenow={value}
          aria-valuemin={least}
          aria-valuemax={most}
          aria-valuetext={speak(value)}
          aria-invalid={(problem || complaint) !== ''}
          aria-describedby={`${id}-problem`}
          data-draft={draft === null ? undefined : ''}
          value={draft ?? show(value)}
          onChange={(event) => setDraft(event.target.value)}
          onKeyDown={onKeyDown}
          onKeyUp={endHold}
          onFocus={(event) => {
            event.target.select();
            onFocused?.(true);
          }}
          onBlur={() => {
            endHold();
            commit();
            onFocused?.(false);
          }}
        />
        <span aria-hidden="true">{unitSymbol(unit)}</span>
      </div>
      <button type="button" tabIndex={-1} aria-label={say('field.more', { field: name })} onClick={press(1)}>
        +
      </button>
      {beside}
      <p className="field-problem" id={`${id}-problem`} aria-live="polite">
        {problem || complaint}
      </p>
    </div>
  );
}
