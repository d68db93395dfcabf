import { memo } from 'react';
import type { MendableUntil, Outlook } from '../core/drilling/outlook.ts';
import { budgetNow } from '../core/plan/budgetNow.ts';
import { passesShown } from '../core/plan/inHand.ts';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { useReport } from '../state/useReport.ts';
import { say } from '../words/sayDrill.ts';
import { sayDepth } from '../words/sayTool.ts';
import { BudgetAnswers } from './BudgetAnswers.tsx';
import { BudgetBar, MARK_OF } from './BudgetBar.tsx';
import { BudgetCircles } from './BudgetCircles.tsx';
import { MendTable, sayGap } from './BudgetMends.tsx';
import { BudgetRoom } from './BudgetRoom.tsx';
import './section.css';
import './strip.css';
import './budget.css';

function outlookText({ answer, gap, void: left }: Outlook): string {
  if (answer === 'round') return say('budget.outlook.round');
  if (answer === 'covered') return say('budget.outlook.covered', { gap: sayGap(gap) });
  return say('budget.outlook.open', { void: sayGap(left) });
}

/** What may still be put right: the pass against the plan, down to where it can be mended, what mends it, and the room left by depth. */
export const BudgetPanel = memo(function BudgetPanel({ stores }: { stores: PlanStores }) {
  const plan = usePlan(stores);
  const { report, fresh } = useReport(stores);
  const now = budgetNow(plan);
  if (!now) return <p className="calm">{say('strip.none')}</p>;
  const standing = report?.standing ?? null;
  const outlook = standing?.outlook ?? null;
  // A pilot as planned is taken up at every depth.
  const planned: MendableUntil = { round: now.fullDepth, covered: now.fullDepth };
  const until = standing ? standing.until : now.drilled ? null : planned;
  // A neck cutter gives the hole no direction.
  const directed = passesShown(plan).at(-1)?.tool.kind !== 'neck';
  const state = !now.drilled ? 'none' : fresh ? 'fresh' : 'working';
  const note = () => {
    if (!now.drilled) return say('budget.nothing');
    if (!fresh || !outlook) return say('budget.working');
    return outlookText(outlook);
  };
  return (
    <section className="budget" aria-label={say('budget.heading')} data-report={state}>
      <div className="budget-now">
        <div>
          <h3>{say('budget.heading')}</h3>
          <BudgetCircles now={now} outside={outlook && fresh ? MARK_OF[outlook.answer] : 'none'} />
          <p className="caption">{say('budget.circlesNote', { last: sayDepth(now.diameters.last) })}</p>
        </div>
        <div className={state === 'working' ? 'budget-until budget-stale' : 'budget-until'}>
          <p className="budget-outlook" role="status">
            {note()}
          </p>
          {until && directed && (
            <>
              <BudgetBar now={now} until={until} />
              <BudgetAnswers now={now} until={until} outlook={outlook} />
            </>
          )}
        </div>
      </div>
      {standing && (
        <div className={state === 'working' ? 'budget-stale' : undefined}>
          <MendTable stores={stores} mends={standing.mends} stale={!fresh} />
        </div>
      )}
      <BudgetRoom now={now} />
    </section>
  );
});
