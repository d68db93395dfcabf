import { type KeyboardEvent, memo, useMemo, useState } from 'react';
import type { Reading, ReadingId } from '../core/measure/reading.ts';
import { StatusGlyph } from '../marks/StatusGlyph.tsx';
import { litReading } from '../state/litReading.ts';
import type { PlanStores } from '../state/stores.ts';
import { useEvaluation } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { presentReading } from '../words/presentReading.ts';
import { say } from '../words/say.ts';
import { ReadingRow, type RowActs } from './ReadingRow.tsx';
import { applyingFirst, readingGroups } from './readingGroups.ts';
import './readings.css';

const STEPS: Readonly<Record<string, number>> = { ArrowDown: 1, ArrowUp: -1, Home: -Infinity, End: Infinity };

/** Arrow keys go from row to row, Home and End to the first and the last. */
function step(event: KeyboardEvent<HTMLElement>): void {
  const by = STEPS[event.key];
  if (by === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
  const rows = [
    ...(event.currentTarget.closest('table')?.querySelectorAll<HTMLElement>('th > button') ?? []),
  ];
  const at = rows.indexOf(event.currentTarget) + by;
  event.preventDefault();
  rows[Math.min(rows.length - 1, Math.max(0, at))]?.focus();
}

/** The worst state among the rows of a group, drawn beside its heading: what lies below the fold is not lost. */
function GroupMark({ readings }: { readings: readonly (Reading | undefined)[] }) {
  const worst = (['beyond', 'near'] as const).find((status) => readings.some((r) => r?.status === status));
  return (
    worst && (
      <span className="group-mark">
        <StatusGlyph mark={worst} size={14} />
        {say(`status.${worst}`)}
      </span>
    )
  );
}

/** Every reading of the pose in one table: the ones a hand watches first, then the rest by what they are about. */
export const ReadingsTable = memo(function ReadingsTable({ stores }: { stores: PlanStores }) {
  const { session, live } = stores;
  const { plan, readings } = useEvaluation(stores);
  const open = useSelected(session, (state) => state.selectedReading);
  const hover = useSelected(live, (state) => litReading(state, session.getState()));
  const [last, setLast] = useState<ReadingId>('facial-wall-1mm');
  const ofCrown = useSelected(session, ({ place }) => place === 'crown');
  const groups = useMemo(() => readingGroups(plan.fixing, ofCrown), [plan.fixing, ofCrown]);
  const byId = useMemo(() => new Map(readings.map((reading) => [reading.id, reading])), [readings]);

  const acts: RowActs = useMemo(
    () => ({
      light: (id) => {
        live.set({ hover: id });
        if (id !== null) setLast(id);
      },
      press: (id) => session.set({ selectedReading: session.getState().selectedReading === id ? null : id }),
      step,
    }),
    [live, session],
  );

  return (
    <table className="readings">
      <caption className="unseen">{say('readings.caption')}</caption>
      <thead>
        <tr>
          <td />
          <th scope="col">
            {say('readings.reading')}
            <span className="readings-hint"> {say('readings.pressForLimit')}</span>
          </th>
          <th scope="col" className="reading-value">
            {say('unit.mm')}
          </th>
          <th scope="col">{say('readings.limit')}</th>
          <th scope="col">{say('readings.status')}</th>
        </tr>
      </thead>
      {groups.map(({ heading, ids }, index) => (
        <tbody key={heading}>
          {index > 0 && (
            <tr className="reading-group">
              <td />
              <th className="group-heading" scope="rowgroup" colSpan={4}>
                {say(heading)}
                <GroupMark readings={ids.map((id) => byId.get(id))} />
              </th>
            </tr>
          )}
          {applyingFirst(ids, byId).map((id) => {
            const reading = byId.get(id);
            if (!reading) return null;
            const shown = presentReading(reading);
            return (
              <ReadingRow
                key={id}
                {...shown}
                id={id}
                unit={shown.quantity === shown.number ? '' : shown.unit}
                reason={reading.reason === 'no-limit' ? '' : shown.reason}
                lit={hover === id}
                open={open === id}
                stop={last === id}
                acts={acts}
              />
            );
          })}
        </tbody>
      ))}
    </table>
  );
});
