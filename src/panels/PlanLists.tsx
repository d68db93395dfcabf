import { useId } from 'react';
import type { Plan } from '../core/plan/plan.ts';
import { DEMO_PLANS, MEAN_PLANS, type StoredPlan } from '../io/plans.ts';
import { useSelected } from '../state/useSelected.ts';
import { say } from '../words/say.ts';
import { LastingWords } from './LastingWords.tsx';
import type { PlanSources } from './PlansMenu.tsx';
import { RecentPlans } from './RecentPlans.tsx';

interface ListProps {
  heading: string;
  plans: readonly StoredPlan[];
  onOpen: (plan: Plan) => void;
  className?: string;
}

function PlanList({ heading, plans, onOpen, className }: ListProps) {
  const id = useId();
  return (
    <>
      <h2 className="caption" id={id}>
        {heading}
      </h2>
      <ul aria-labelledby={id} className={className}>
        {plans.map((stored) => (
          <li key={stored.id}>
            <button type="button" data-plan={stored.id} onClick={() => onOpen(stored.plan)}>
              {stored.plan.title}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

/** What the page leaves on this machine, or that it leaves nothing. */
function MachineWords({ keeping, offline }: PlanSources) {
  const never = useSelected(keeping, ({ status }) => status === 'never');
  const { ready, newer } = useSelected(offline, (state) => state);
  return (
    <>
      <h2 className="caption">{say('keep.heading')}</h2>
      {never ? <p className="caption">{say('portable.note')}</p> : <LastingWords />}
      {ready && <p className="caption">{say('offline.ready')}</p>}
      {newer && (
        <>
          <p className="caption">{say('offline.note')}</p>
          <button type="button" className="plans-ask" onClick={offline.takeNewer}>
            {say('offline.take')}
          </button>
        </>
      )}
    </>
  );
}

interface PlanListsProps extends PlanSources {
  onOpen: (plan: Plan) => void;
}

/** The plans that can be laid on the table: those of before, and those that come with the program; then what the page leaves on this machine. */
export default function PlanLists({ keeping, offline, onOpen }: PlanListsProps) {
  return (
    <>
      <RecentPlans keeping={keeping} onOpen={onOpen} />
      <PlanList heading={say('plans.scenarios')} plans={DEMO_PLANS} onOpen={onOpen} />
      <PlanList className="plans-sites" heading={say('plans.sites')} plans={MEAN_PLANS} onOpen={onOpen} />
      <p className="caption">{say('plans.note')}</p>
      <MachineWords keeping={keeping} offline={offline} />
    </>
  );
}
