import { memo } from 'react';
import type { PassRow } from '../core/drilling/rehearsalSummary.ts';
import { kitOf, passesShown, rehearsalOf } from '../core/plan/inHand.ts';
import { StatusGlyph } from '../marks/StatusGlyph.tsx';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { drillingCautions } from '../words/presentDrilling.ts';
import { presentKitTitle } from '../words/presentKit.ts';
import {
  type FaultSetting,
  presentPass,
  presentVerdict,
  settingOf,
  verdictMark,
} from '../words/presentPasses.ts';
import { say } from '../words/say.ts';
import { FaultList } from './PassSummary.tsx';
import './rehearse.css';

/** What stands of each pass beside the plan. */
export const PASS_COLUMNS = ['depth', 'depthOff', 'crest', 'apex', 'angle', 'volume'] as const;

/** A pass as a row, and under it what went wrong. */
export function PassRows({ row, setting }: { row: PassRow; setting: FaultSetting }) {
  const { title, tool, state, rows, faults } = presentPass(row, setting);
  return (
    <>
      <tr data-printed-pass={row.index}>
        <th scope="row">
          {say('pass.named', { pass: title, tool })} {state !== '' && <small>{state}</small>}
        </th>
        {PASS_COLUMNS.map((column) => (
          <td key={column}>
            {rows.find(({ key }) => key === column)?.value ?? '–'}
            {column === 'apex' && row.carriedOn && <small> {say('pass.carried')}</small>}
          </td>
        ))}
      </tr>
      {faults.length > 0 && (
        <tr className="pass-faults">
          <td colSpan={PASS_COLUMNS.length + 1}>
            <FaultList faults={faults} notes />
          </td>
        </tr>
      )}
    </>
  );
}

/** The rehearsal as it is printed: verdict, every pass beside the plan, what went wrong and by whose threshold, what is left out. */
export const PrintedRehearsal = memo(function PrintedRehearsal({ stores }: { stores: PlanStores }) {
  const plan = usePlan(stores);
  const summary = useSelected(stores.live, ({ report }) => report?.summary ?? null);
  const guessing = useSelected(stores.live, (state) => state.guessing);
  const count = passesShown(plan).length;
  if (!summary || guessing || count === 0) return null;
  const setting = settingOf(plan);
  const own = rehearsalOf(plan).kit !== null;
  return (
    <section className="printed" aria-label={say('pass.printed')}>
      <h2>{say('pass.printed')}</h2>
      <p className="verdict">
        <StatusGlyph mark={verdictMark(summary)} />
        <span>{presentVerdict(summary)}</span>
      </p>
      <table className="passes">
        <thead>
          <tr>
            <th scope="col">{say('hand.pass')}</th>
            {PASS_COLUMNS.map((column) => (
              <th key={column} scope="col">
                {say(`pass.${column}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {summary.rows
            .filter(({ index }) => index < count)
            .map((row) => (
              <PassRows key={row.index} row={row} setting={setting} />
            ))}
        </tbody>
      </table>
      <p className="rail-note">{own ? presentKitTitle(kitOf(plan)) : say('kit.assumed')}</p>
      <p className="rail-note">{drillingCautions().join(' ')}</p>
    </section>
  );
});
