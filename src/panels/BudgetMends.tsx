import type { Mend, Mends } from '../core/drilling/mend.ts';
import { mended } from '../core/plan/rehearse.ts';
import { StatusGlyph } from '../marks/StatusGlyph.tsx';
import type { PlanStores } from '../state/stores.ts';
import { formatNumber, formatQuantity } from '../words/format.ts';
import { say } from '../words/sayDrill.ts';
import { sayDepth } from '../words/sayTool.ts';
import { MARK_OF } from './BudgetBar.tsx';
import { offOf } from './BudgetCircles.tsx';

const mm = (value: number): string => formatNumber({ value, unit: 'mm' });
/** A gap, never shown as none where there is one. */
export const sayGap = (value: number): string => formatQuantity({ value, unit: 'mm', limits: [0] });
const angle = (value: number): string => formatQuantity({ value, unit: 'deg' });

interface MendRowProps {
  stores: PlanStores;
  mend: Mend;
  best: boolean;
  stale: boolean;
}

function MendRow({ stores, mend, best, stale }: MendRowProps) {
  const { outlook, left } = mend;
  const name = say(`budget.mend.${mend.kind}`);
  const crest = offOf(left.crest);
  const apex = offOf(left.apex);
  const label = say('budget.mendLabel', {
    mend: name,
    crest: sayDepth(crest),
    apex: sayDepth(apex),
    angle: angle(left.angle),
    gap: sayGap(outlook.gap),
  });
  return (
    <tr data-mend={mend.kind}>
      <td>
        <StatusGlyph mark={MARK_OF[outlook.answer]} size={14} />
      </td>
      <th scope="row">
        <button
          type="button"
          disabled={stale}
          aria-label={label}
          onClick={() =>
            stores.document.edit(say('edit.mend', { mend: name }), (plan) => mended(plan, mend.edits))
          }
        >
          {name}
        </button>
        {best && <small>{say('budget.nearest')}</small>}
      </th>
      <td>{formatNumber({ value: outlook.gap, unit: 'mm', limits: [0] })}</td>
      <td>{mm(crest)}</td>
      <td>{mm(apex)}</td>
      <td>{angle(left.angle)}</td>
    </tr>
  );
}

interface MendTableProps {
  stores: PlanStores;
  mends: Mends;
  stale: boolean;
}

/** The ways to go on from the last pass; pressing one puts the hand there. Each says what it leaves against the plan. */
export function MendTable({ stores, mends, stale }: MendTableProps) {
  return (
    <table className="budget-table budget-mends">
      <caption>{say('budget.mends')}</caption>
      <thead>
        <tr>
          <td />
          <th scope="col">{say('budget.mendHand')}</th>
          <th scope="col">{say('budget.mendGap')}</th>
          <th scope="col">{say('budget.mendCrest')}</th>
          <th scope="col">{say('budget.mendApex')}</th>
          <th scope="col">{say('budget.mendAngle')}</th>
        </tr>
      </thead>
      <tbody>
        {mends.all.map((mend) => (
          <MendRow key={mend.kind} stores={stores} mend={mend} best={mend === mends.best} stale={stale} />
        ))}
      </tbody>
    </table>
  );
}
