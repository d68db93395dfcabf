import { memo } from 'react';
import type { PassRow } from '../core/drilling/rehearsalSummary.ts';
import type { Plan } from '../core/plan/plan.ts';
import { StatusGlyph } from '../marks/StatusGlyph.tsx';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { drillingCautions } from '../words/presentDrilling.ts';
import {
  type FaultSetting,
  type PresentedFault,
  presentPass,
  presentPassFaults,
  presentVerdict,
  settingOf,
  verdictMark,
} from '../words/presentPasses.ts';
import { say } from '../words/sayDrill.ts';

interface FaultListProps {
  faults: readonly PresentedFault[];
  /** Whether what stands behind each is told as well. */
  notes?: boolean;
}

/** Each fault in a sentence behind its glyph. */
export function FaultList({ faults, notes = false }: FaultListProps) {
  return (
    <ul className="faults">
      {faults.map(({ key, mark, text, mended, note }) => (
        <li key={key} data-fault={key}>
          <StatusGlyph mark={mark} size={14} />
          <span>
            {text} {mended} {notes && note !== '' && <small>{note}</small>}
          </span>
        </li>
      ))}
    </ul>
  );
}

/** What went wrong with a pass, as a row under it; nothing where nothing did. */
export function FaultRow({ row, plan, columns }: { row: PassRow | undefined; plan: Plan; columns: number }) {
  if (!row || row.faults.length === 0) return null;
  return (
    <tr className="pass-faults">
      <td colSpan={columns}>
        <FaultList faults={presentPassFaults(row, settingOf(plan))} />
      </td>
    </tr>
  );
}

function PassNumbers({ row, setting }: { row: PassRow; setting: FaultSetting }) {
  const { title, tool, state, rows, faults } = presentPass(row, setting);
  return (
    <section className="pass-numbers" data-pass-numbers={row.index}>
      <h4>{say('pass.named', { pass: title, tool })}</h4>
      {state !== '' && <p className="rail-note">{state}</p>}
      <dl>
        {rows.map(({ key, label, value }) => (
          <div className="pass-row" key={key}>
            <dt>{label}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <FaultList faults={faults} notes />
    </section>
  );
}

/** How the rehearsal stands, and every pass beside the plan in numbers. */
export const PassSummary = memo(function PassSummary({ stores }: { stores: PlanStores }) {
  const plan = usePlan(stores);
  const summary = useSelected(stores.live, ({ report }) => report?.summary ?? null);
  const working = useSelected(stores.live, ({ report }) => report === null);
  const setting = settingOf(plan);
  if (!summary) return <p className="rail-note">{say(working ? 'rehearse.working' : 'rehearse.nothing')}</p>;
  const rows = summary.rows.filter(({ index }) => index < setting.passes.length);
  return (
    <>
      <p className="verdict" data-verdict={summary.verdict}>
        <StatusGlyph mark={verdictMark(summary)} />
        <span>{presentVerdict(summary)}</span>
      </p>
      <details className="pass-by-pass">
        <summary>
          {say('pass.heading')} <span className="caption">{say('pass.headingNote')}</span>
        </summary>
        {rows.map((row) => (
          <PassNumbers key={row.index} row={row} setting={setting} />
        ))}
        {drillingCautions().map((caution) => (
          <p className="rail-note" key={caution}>
            {caution}
          </p>
        ))}
      </details>
    </>
  );
});
