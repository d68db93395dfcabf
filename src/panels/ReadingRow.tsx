import { type KeyboardEvent, memo, useEffect, useRef } from 'react';
import type { ReadingId } from '../core/measure/reading.ts';
import { type Mark, StatusGlyph } from '../marks/StatusGlyph.tsx';
import { say } from '../words/say.ts';

/** What a row does; the same functions for as long as the table lives. */
export interface RowActs {
  readonly light: (id: ReadingId | null) => void;
  readonly press: (id: ReadingId) => void;
  readonly step: (event: KeyboardEvent<HTMLElement>) => void;
}

/** A row's texts, one by one: a row whose texts have not changed is not drawn again. */
export interface ReadingRowProps {
  readonly id: ReadingId;
  readonly label: string;
  readonly level: string;
  readonly number: string;
  readonly unit: string;
  readonly limit: string;
  readonly strength: string;
  readonly strengthBrief: string;
  readonly source: string;
  readonly known: string;
  readonly status: string;
  readonly mark: Mark;
  readonly reason: string;
  readonly why: string;
  readonly note: string;
  readonly lit: boolean;
  readonly open: boolean;
  /** The one row of the table that the Tab key reaches. */
  readonly stop: boolean;
  readonly acts: RowActs;
}

/** What a reading is. Comes into sight when it unfolds. */
function Explanation(props: ReadingRowProps) {
  const row = useRef<HTMLTableRowElement>(null);
  useEffect(() => {
    row.current?.scrollIntoView({ block: 'nearest' });
  }, []);
  const { id, limit, strength, source, known, mark, reason, note } = props;
  return (
    <tr ref={row} className="explanation" id={`explain-${id}`}>
      <td className="explained" />
      <td className="explained" colSpan={4}>
        <p>{say(`about.${id}`)}</p>
        {note !== '' && <p>{note}</p>}
        <dl>
          {mark === 'none' && reason !== '' && (
            <>
              <dt>{say('readings.why')}</dt>
              <dd>{reason}</dd>
            </>
          )}
          <dt>{say('readings.limitLine')}</dt>
          <dd>{limit === '' ? say('readings.noLimit') : say('readings.limitIs', { limit, strength })}</dd>
          {source !== '' && (
            <>
              <dt>{say('readings.source')}</dt>
              <dd>{say('readings.sourceIs', { source, known })}</dd>
            </>
          )}
        </dl>
      </td>
    </tr>
  );
}

/** The limit and how the reading stands to it, or why it is not judged. */
function Judged({ limit, strengthBrief, status, mark, reason, why }: ReadingRowProps) {
  if (mark === 'none' && reason !== '')
    return (
      <td className="reading-limit reading-why" colSpan={2}>
        <span className="unseen">{status} </span>
        {why}
      </td>
    );
  return (
    <>
      <td className="reading-limit">
        {limit === '' ? say('limit.none') : say('limit.withStrength', { limit, strength: strengthBrief })}
      </td>
      <td className="reading-status">{status}</td>
    </>
  );
}

/** One reading; pressing it unfolds what it is, whose limit it has and how that is known. */
export const ReadingRow = memo(function ReadingRow(props: ReadingRowProps) {
  const { id, label, level, number, unit, mark, acts } = props;
  return (
    <>
      <tr
        className={props.lit ? 'reading reading-lit' : 'reading'}
        data-reading={id}
        data-status={mark}
        onPointerEnter={() => acts.light(id)}
        onPointerLeave={() => acts.light(null)}
      >
        <td>
          <StatusGlyph mark={mark} />
        </td>
        <th scope="row">
          <button
            type="button"
            tabIndex={props.stop ? 0 : -1}
            aria-expanded={props.open}
            aria-controls={props.open ? `explain-${id}` : undefined}
            onClick={() => acts.press(id)}
            onFocus={() => acts.light(id)}
            onBlur={() => acts.light(null)}
            onKeyDown={acts.step}
          >
            {level === '' ? label : say('finding.level', { reading: label, level })}
          </button>
        </th>
        <td className="reading-value" data-value={number}>
          {number}
          {unit !== say('unit.mm') && <small>{unit}</small>}
        </td>
        <Judged {...props} />
      </tr>
      {props.open && <Explanation {...props} />}
    </>
  );
});
