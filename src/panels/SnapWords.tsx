import { memo } from 'react';
import { type Snap, snapTo } from '../core/plan/snap.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { say } from '../words/say.ts';

/** Places that a pose can be brought to, as words: each press is one undo step; a place that is not there is not offered. */
export const SnapWords = memo(function SnapWords({
  stores,
  snaps,
}: {
  stores: PlanStores;
  snaps: readonly Snap[];
}) {
  const { document, session } = stores;
  const round = useSelected(document, ({ plan }) => plan.implant.index === 0);
  const press = (snap: Snap) => {
    const { pivot } = session.getState();
    document.edit(say(`edit.snap.${snap}`), (plan) => snapTo(plan, snap, pivot) ?? plan);
  };
  return (
    <div className="rail-words">
      {snaps.map((snap) => (
        <button
          key={snap}
          type="button"
          className="rail-word"
          aria-label={say(`edit.snap.${snap}`)}
          disabled={round && snap.endsWith('rung')}
          onClick={() => press(snap)}
        >
          {say(`snap.${snap}`)}
        </button>
      ))}
    </div>
  );
});
