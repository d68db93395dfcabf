import type { SheetLine } from '../../words/presentSheet.ts';

/** Lines of the sheet as names and what they are. */
export function SheetLines({ lines }: { lines: readonly SheetLine[] }) {
  return (
    <dl className="paper-lines">
      {lines.map(({ key, label, value, note }) => (
        <div key={key} data-sheet-line={key}>
          <dt>{label}</dt>
          <dd>
            {value} {note !== '' && <small>{note}</small>}
          </dd>
        </div>
      ))}
    </dl>
  );
}
