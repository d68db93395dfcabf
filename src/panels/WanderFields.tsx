import { rehearsalOf } from '../core/plan/inHand.ts';
import { setWander } from '../core/plan/rehearse.ts';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { say } from '../words/sayDrill.ts';
import { SpinField } from './SpinField.tsx';

/** What the teacher dials in: the next pass goes there instead of where the hand holds the drill. */
export function WanderFields({ stores }: { stores: PlanStores }) {
  const { document } = stores;
  const { wander } = rehearsalOf(usePlan(stores));
  const set = (change: Partial<typeof wander>, what: string) =>
    document.edit(say('edit.dial', { what }), (plan) => setWander(plan, { ...wander, ...change }));
  return (
    <details className="rail-group">
      <summary>
        {say('hand.wander')} <span className="caption">{say('hand.wanderNote')}</span>
      </summary>
      <SpinField
        name={say('hand.skidName')}
        label={say('hand.skid')}
        value={wander.skid}
        unit="mm"
        least={0}
        most={2}
        step={0.1}
        page={0.5}
        onCommit={(skid) => set({ skid }, say('hand.skid'))}
      />
      <SpinField
        name={say('hand.driftName')}
        label={say('hand.drift')}
        value={wander.drift}
        unit="mm"
        least={0}
        most={2}
        step={0.1}
        page={0.5}
        onCommit={(drift) => set({ drift }, say('hand.drift'))}
      />
    </details>
  );
}
