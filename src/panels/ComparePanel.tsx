import { memo } from 'react';
import { totalLength } from '../core/implant/shape.ts';
import { withKept } from '../core/plan/compare.ts';
import { deviation } from '../core/spread/deviation.ts';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { presentDeviation } from '../words/presentDeviation.ts';
import { say } from '../words/say.ts';

/** Keeps a pose and says how far the one on the table is from it. */
export const ComparePanel = memo(function ComparePanel({ stores }: { stores: PlanStores }) {
  const { document, session } = stores;
  const kept = useSelected(session, (state) => state.kept);
  const { pose, implant } = usePlan(stores);
  const keep = () => session.set({ kept: { pose, implant } });
  const swap = () => {
    if (!kept) return;
    session.set({ kept: { pose, implant } });
    document.edit(say('edit.kept'), (plan) => withKept(plan, kept));
  };
  if (!kept) {
    return (
      <button type="button" className="rail-word" onClick={keep}>
        {say('compare.keep')}
      </button>
    );
  }
  const apart = deviation(kept.pose, pose, totalLength(implant), implant.index);
  return (
    <>
      <dl className="compare">
        {presentDeviation(apart).map(({ key, label, value }) => (
          <div key={key} data-compare={key}>
            <dt>{label}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <div className="rail-words">
        <button type="button" className="rail-word" onClick={swap}>
          {say('compare.swap')}
        </button>
        <button type="button" className="rail-word" onClick={() => session.set({ kept: null })}>
          {say('compare.forget')}
        </button>
      </div>
    </>
  );
});
