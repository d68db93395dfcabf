import { memo } from 'react';
import { kitOf, passesShown, rehearsalOf } from '../core/plan/inHand.ts';
import { StatusGlyph } from '../marks/StatusGlyph.tsx';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { drillingCautions } from '../words/presentDrilling.ts';
import { presentKitTitle } from '../words/presentKit.ts';
import { presentVerdict, settingOf, verdictMark } from '../words/presentPasses.ts';
import { say } from '../words/sayDrill.ts';
import { PassTable } from './PassTable.tsx';
import './rehearse.css';

/** The rehearsal as it is printed: verdict, every pass beside the plan, what went wrong and by whose threshold, what is left out. */
const PrintedRehearsal = memo(function PrintedRehearsal({ stores }: { stores: PlanStores }) {
  const plan = usePlan(stores);
  const summary = useSelected(stores.live, ({ report }) => report?.summary ?? null);
  const guessing = useSelected(stores.live, (state) => state.guessing);
  const count = passesShown(plan).length;
  if (!summary || guessing || count === 0) return null;
  const own = rehearsalOf(plan).kit !== null;
  return (
    <section className="printed" aria-label={say('pass.printed')}>
      <h2>{say('pass.printed')}</h2>
      <p className="verdict">
        <StatusGlyph mark={verdictMark(summary)} />
        <span>{presentVerdict(summary)}</span>
      </p>
      <PassTable
        rows={summary.rows.filter(({ index }) => index < count)}
        setting={settingOf(plan)}
        className="passes"
      />
      <p className="rail-note">{own ? presentKitTitle(kitOf(plan)) : say('kit.assumed')}</p>
      <p className="rail-note">{drillingCautions().join(' ')}</p>
    </section>
  );
});

export default PrintedRehearsal;
