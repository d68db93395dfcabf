import { memo, useRef, useState } from 'react';
import { handOf, toolOf } from '../core/plan/inHand.ts';
import type { Plan } from '../core/plan/plan.ts';
import { type ReachNow, reachNow } from '../core/plan/reachNow.ts';
import { StatusGlyph } from '../marks/StatusGlyph.tsx';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { presentOpening, presentReach, reachMark } from '../words/presentDrilling.ts';
import { say } from '../words/sayDrill.ts';
import { sayTool } from '../words/sayTool.ts';

/** The reach of a plan once no gesture is going on; the last one until then. */
function useReach(plan: Plan, moving: boolean): { plan: Plan; reach: ReachNow } {
  const kept = useRef<{ plan: Plan; reach: ReachNow } | null>(null);
  if (!kept.current || (!moving && kept.current.plan !== plan))
    kept.current = { plan, reach: reachNow(plan) };
  return kept.current;
}

function ReachRows({ stores }: { stores: PlanStores }) {
  const moving = useSelected(stores.document, (state) => state.gesture !== null);
  const { plan, reach } = useReach(usePlan(stores), moving);
  const tool = toolOf(plan, handOf(plan).tool);
  const { hand, planned } = reach;
  const rows = [
    ...(hand && tool ? [{ of: hand, words: presentReach(hand, sayTool(tool)) }] : []),
    ...(planned?.reaches ?? []).map((of) => ({ of, words: presentReach(of) })),
  ];
  return (
    <>
      <dl className="reach">
        {rows.map(({ of, words: { key, label, value, note } }) => (
          <div className="reach-row" key={key} data-reach={key} data-code={of.code}>
            <dt>{label}</dt>
            <dd>
              <StatusGlyph mark={reachMark(of)} size={14} />
              <span>
                {value} <small>{note}</small>
              </span>
            </dd>
          </div>
        ))}
      </dl>
      {planned && <p className="rail-note">{presentOpening(planned.opening)}</p>}
      <p className="rail-note">{say('reach.caution')}</p>
    </>
  );
}

/** Whether head, driver and wrench come down between the crowns: worked out while it is open. */
export const ReachPanel = memo(function ReachPanel({ stores }: { stores: PlanStores }) {
  const [open, setOpen] = useState(false);
  return (
    <details className="rail-group" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        {say('reach.heading')} <span className="caption">{say('reach.note')}</span>
      </summary>
      {open && <ReachRows stores={stores} />}
    </details>
  );
});
