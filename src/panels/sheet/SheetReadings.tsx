import type { Reading } from '../../core/measure/reading.ts';
import { StatusGlyph } from '../../marks/StatusGlyph.tsx';
import { type PresentedReading, presentReading } from '../../words/presentReading.ts';
import { say } from '../../words/saySheet.ts';
import type { ReadingGroup } from '../readingGroups.ts';
import { count } from './SheetHead.tsx';

/** The sources of the limits that the sheet shows, each with its number. */
export interface Sources {
  readonly numberOf: (shown: PresentedReading) => string;
  readonly list: readonly { readonly number: string; readonly source: string; readonly known: string }[];
}

/** Numbers the sources in the order in which the rows cite them. */
export function sourcesOf({ judged }: SortedReadings): Sources {
  const list: { number: string; source: string; known: string }[] = [];
  const numbers = new Map<string, string>();
  for (const { source, known } of judged.flatMap(({ rows }) => rows)) {
    if (numbers.has(source)) continue;
    const number = count(list.length + 1);
    numbers.set(source, number);
    list.push({ number, source, known });
  }
  return { numberOf: ({ source }) => numbers.get(source) ?? '', list };
}

/** A reading's name, with the level where a search found it. */
const nameOf = ({ label, level }: PresentedReading): string =>
  level === '' ? label : say('finding.level', { reading: label, level });

function Value({ shown }: { shown: PresentedReading }) {
  const { number, quantity, unit } = shown;
  return (
    <span className="paper-number" data-value={number}>
      {number}
      {quantity !== number && unit !== say('unit.mm') && <small>{unit}</small>}
    </span>
  );
}

/** A reading that has a limit. */
function Row({ shown, sources }: { shown: PresentedReading; sources: Sources }) {
  const { id, mark, limit, strength, status, note } = shown;
  return (
    <>
      <tr data-sheet-reading={id} data-status={mark}>
        <td>
          <StatusGlyph mark={mark} size={13} />
        </td>
        <th scope="row">{nameOf(shown)}</th>
        <td>
          <Value shown={shown} />
        </td>
        <td>{say('limit.withStrength', { limit, strength })}</td>
        <td className="paper-source">{sources.numberOf(shown)}</td>
        <td>{status}</td>
      </tr>
      {note !== '' && (
        <tr className="paper-aside">
          <td />
          <td colSpan={5}>{note}</td>
        </tr>
      )}
    </>
  );
}

/** The readings that a sheet shows, sorted: judged ones by group, unjudged ones, and those without a value. */
export interface SortedReadings {
  readonly judged: readonly {
    readonly heading: ReadingGroup['heading'];
    readonly rows: readonly PresentedReading[];
  }[];
  readonly unjudged: readonly PresentedReading[];
  readonly without: readonly PresentedReading[];
}

export function sortedReadings(
  groups: readonly ReadingGroup[],
  readings: readonly Reading[],
): SortedReadings {
  const byId = new Map(readings.map((reading) => [reading.id, reading]));
  const inGroups = groups.map(({ heading, ids }) => ({
    heading,
    all: ids.flatMap((id) => byId.get(id) ?? []),
  }));
  const all = inGroups.flatMap((group) => group.all);
  const withValue = ({ value }: Reading): boolean => value !== null;
  return {
    judged: inGroups
      .map(({ heading, all: own }) => ({
        heading,
        rows: own.filter((one) => withValue(one) && one.limit !== null).map(presentReading),
      }))
      .filter(({ rows }) => rows.length > 0),
    unjudged: all.filter((one) => withValue(one) && one.limit === null).map(presentReading),
    without: all.filter((one) => !withValue(one)).map(presentReading),
  };
}

const COLUMNS = ['value', 'limit', 'source', 'status'] as const;

interface JudgedProps {
  group: SortedReadings['judged'][number];
  sources: Sources;
  first: boolean;
}

/** The readings of a group that have a limit; each group is a block of its own, so that a page may end between two. */
export function JudgedReadings({ group: { heading, rows }, sources, first }: JudgedProps) {
  return (
    <section>
      {first && (
        <h3>
          {say('sheet.readings')} <small>{say('sheet.shapes')}</small>
        </h3>
      )}
      <table className="paper-table paper-readings">
        <thead>
          <tr>
            <td />
            <th scope="col" className="paper-group">
              {say(heading)}
            </th>
            {COLUMNS.map((column) => (
              <th key={column} scope="col">
                {say(`sheet.col.${column}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((shown) => (
            <Row key={shown.id} shown={shown} sources={sources} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** Readings that have no limit, two beside one another, and in one sentence the ones that have no value here and why. */
export function OtherReadings({ sorted: { unjudged, without } }: { sorted: SortedReadings }) {
  const reasons = [...new Set(without.map(({ reason }) => reason))];
  const lacking = reasons.map((reason) =>
    say('sheet.withoutFor', {
      reason: reason.replace(/\.$/, ''),
      readings: without
        .filter((one) => one.reason === reason)
        .map(({ label }) => label)
        .join('; '),
    }),
  );
  return (
    <section>
      <h3>{say('sheet.noLimit')}</h3>
      <dl className="paper-unjudged">
        {unjudged.map((shown) => (
          <div key={shown.id} data-sheet-reading={shown.id}>
            <dt>
              {nameOf(shown)} {shown.note !== '' && <small>{shown.note}</small>}
            </dt>
            <dd>
              <Value shown={shown} />
            </dd>
          </div>
        ))}
      </dl>
      {lacking.length > 0 && (
        <p className="paper-small paper-lacking">
          {say('sheet.without')} {lacking.join(' ')}
        </p>
      )}
    </section>
  );
}

/** The sources by their numbers. */
export function SheetSources({ sources }: { sources: Sources }) {
  return (
    <section>
      <h3>{say('sheet.sources')}</h3>
      <div className="paper-columns paper-small">
        {sources.list.map(({ number, source, known }) => (
          <p key={number}>
            {source.includes(known)
              ? say('sheet.sourceOurs', { number, source })
              : say('sheet.sourceIs', { number, source, known })}
          </p>
        ))}
      </div>
    </section>
  );
}
