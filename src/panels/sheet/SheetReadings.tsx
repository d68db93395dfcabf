import type { Reading, ReadingId } from '../../core/measure/reading.ts';
import { StatusGlyph } from '../../marks/StatusGlyph.tsx';
import { type PresentedReading, presentReading } from '../../words/presentReading.ts';
import { say } from '../../words/say.ts';
import type { ReadingGroup } from '../readingGroups.ts';
import { count } from './SheetHead.tsx';

/** The sources of the limits that the sheet shows, each with its number. */
export interface Sources {
  readonly numberOf: (shown: PresentedReading) => string;
  readonly list: readonly { readonly number: string; readonly source: string; readonly known: string }[];
}

/** Numbers the sources in the order in which the rows cite them. */
export function sourcesOf(readings: readonly Reading[], ids: readonly ReadingId[]): Sources {
  const list: { number: string; source: string; known: string }[] = [];
  const numbers = new Map<string, string>();
  for (const id of ids) {
    const reading = readings.find((one) => one.id === id);
    if (!reading || reading.value === null) continue;
    const { source, known } = presentReading(reading);
    if (source === '' || numbers.has(source)) continue;
    const number = count(list.length + 1);
    numbers.set(source, number);
    list.push({ number, source, known });
  }
  return { numberOf: ({ source }) => numbers.get(source) ?? '', list };
}

function Row({ reading, sources }: { reading: Reading; sources: Sources }) {
  const shown = presentReading(reading);
  const { id, label, level, number, quantity, mark, limit, strength, status, note } = shown;
  const unit = quantity === number ? '' : shown.unit;
  return (
    <tr data-sheet-reading={id} data-status={mark}>
      <td>
        <StatusGlyph mark={mark} size={13} />
      </td>
      <th scope="row">
        {level === '' ? label : say('finding.level', { reading: label, level })}
        {note !== '' && <small>{note}</small>}
      </th>
      <td className="paper-number" data-value={number}>
        {number}
        {unit !== say('unit.mm') && <small>{unit}</small>}
      </td>
      <td>{limit === '' ? say('limit.none') : say('limit.withStrength', { limit, strength })}</td>
      <td className="paper-source">{sources.numberOf(shown)}</td>
      <td>{status}</td>
    </tr>
  );
}

interface GroupProps {
  group: ReadingGroup;
  readings: readonly Reading[];
  sources: Sources;
}

/** The readings of a group: a row for each that has a value; the others in one sentence with their reasons. */
export function SheetReadings({ group: { heading, ids }, readings, sources }: GroupProps) {
  const all = ids.flatMap((id) => readings.find((one) => one.id === id) ?? []);
  const without = all
    .filter(({ value }) => value === null)
    .map((reading) => {
      const { label, reason } = presentReading(reading);
      return say('sheet.withoutOne', { reading: label, reason: reason.replace(/\.$/, '') });
    });
  const rows = all.filter(({ value }) => value !== null);
  const name = heading === 'readings.key' ? say('sheet.key') : say(heading).toLowerCase();
  return (
    <section>
      <table className="paper-table paper-readings">
        <caption>{say('sheet.readings', { group: name })}</caption>
        {rows.length > 0 && (
          <thead>
            <tr>
              <td />
              {(['reading', 'value', 'limit', 'source', 'status'] as const).map((column) => (
                <th key={column} scope="col">
                  {say(`sheet.col.${column}`)}
                </th>
              ))}
            </tr>
          </thead>
        )}
        <tbody>
          {rows.map((reading) => (
            <Row key={reading.id} reading={reading} sources={sources} />
          ))}
        </tbody>
      </table>
      {without.length > 0 && (
        <p className="paper-small">{say('sheet.without', { readings: without.join('; ') })}</p>
      )}
    </section>
  );
}

/** The sources by their numbers, and what the shapes say. */
export function SheetSources({ sources }: { sources: Sources }) {
  return (
    <section>
      <h3>{say('sheet.sources')}</h3>
      <div className="paper-columns paper-small">
        {sources.list.map(({ number, source, known }) => (
          <p key={number}>{say('sheet.sourceIs', { number, source, known })}</p>
        ))}
        <p>{say('sheet.shapes')}</p>
      </div>
    </section>
  );
}
