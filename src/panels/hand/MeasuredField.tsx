import { useId, useState } from 'react';
import { formatNumber, formatQuantity, unitSymbol } from '../../words/format.ts';
import { parseNumber } from '../../words/parse.ts';
import { say } from '../../words/sayTeach.ts';

const LEAST = 0;
const MOST = 30;

interface MeasuredFieldProps {
  name: string;
  /** The name is not drawn: the field stands in a grid with its names at the edges. */
  inGrid?: boolean;
  /** mm; null: not measured. */
  value: number | null;
  /** What it would be as planned, mm; null where a calliper meets nothing. */
  planned: number | null;
  onCommit: (value: number | null) => void;
}

/** A length that was measured, typed: an empty field was not measured. Text that is no length leaves the value alone and says so. */
export function MeasuredField({ name, inGrid = false, value, planned, onCommit }: MeasuredFieldProps) {
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const [problem, setProblem] = useState('');
  const commit = () => {
    if (draft === null) return;
    setDraft(null);
    if (draft.trim() === '') return onCommit(null);
    const typed = parseNumber(draft, 'mm');
    if (typed !== null && typed >= LEAST && typed <= MOST) return onCommit(typed);
    const [least, most] = [LEAST, MOST].map((v) => formatQuantity({ value: v, unit: 'mm', exact: true }));
    setProblem(say('ownHand.notANumber', { text: draft.trim(), least, most }));
  };
  return (
    <div className={inGrid ? 'measured in-grid' : 'measured'}>
      <label htmlFor={id} className={inGrid ? 'unseen' : undefined}>
        {name}
      </label>
      <div className="field-box">
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          spellCheck={false}
          aria-invalid={problem !== ''}
          aria-describedby={`${id}-problem`}
          placeholder={planned === null ? '' : formatNumber({ value: planned, unit: 'mm' })}
          value={draft ?? (value === null ? '' : formatNumber({ value, unit: 'mm', exact: true }))}
          onChange={(event) => {
            setDraft(event.target.value);
            // Gone before the field is left: a press that leaves it must not find its button moved.
            setProblem('');
          }}
          onBlur={commit}
          onKeyDown={(event) => {
            if (event.key === 'Enter') commit();
            if (event.key === 'Escape') setDraft(null);
          }}
        />
        <span aria-hidden="true">{unitSymbol('mm')}</span>
      </div>
      <p className="field-problem" id={`${id}-problem`} aria-live="polite">
        {problem}
      </p>
    </div>
  );
}
