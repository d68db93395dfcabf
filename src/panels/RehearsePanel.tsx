import { drillTo, lift } from '../core/plan/rehearse.ts';
import type { PlanStores } from '../state/stores.ts';

export default function RehearsePanel({ stores }: { stores: PlanStores }) {
  const { document } = stores;
  return (
    <div>
      <button type="button" onClick={() => document.edit('drill', (plan) => drillTo(plan, 6))}>
        Drill 6
      </button>
      <button type="button" onClick={() => document.edit('lift', lift)}>
        Lift
      </button>
    </div>
  );
}
