import { useState } from 'react';
import { isSaved } from '../state/document.ts';
import type { Keeping, KeptStatus } from '../state/kept.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { type PlainKey, say } from '../words/say.ts';

interface KeptProps {
  stores: PlanStores;
  keeping: Keeping;
}

const UNKEPT: readonly KeptStatus[] = ['full', 'refused', 'never'];

/** Whether the plan on the table is kept, in a word or two: on this machine, or else as a file. */
export function KeptWord({ stores, keeping }: KeptProps) {
  const status = useSelected(keeping, (state) => state.status);
  const filed = useSelected(stores.document, isSaved) && UNKEPT.includes(status);
  return (
    <span className="plans-state" role="status" data-status={status}>
      {say(filed && status !== 'never' ? 'kept.file' : `kept.${status}`)}
    </span>
  );
}

const NOTICES: Partial<Record<KeptStatus, PlainKey>> = {
  full: 'kept.fullNotice',
  refused: 'kept.refusedNotice',
  shown: 'kept.shownNotice',
  free: 'kept.freeNotice',
};

/** Says at length what hinders keeping, with the press that helps. Put away, it comes back when a change is refused. */
export function KeptNotice({ stores, keeping, onSave }: KeptProps & { onSave: () => void }) {
  const status = useSelected(keeping, (state) => state.status);
  const damaged = useSelected(keeping, (state) => state.damaged);
  const keptBack = useSelected(keeping, (state) => state.keptBack);
  const refused = useSelected(stores.document, (state) => state.refused);
  const cause = `${NOTICES[status] ?? ''} ${refused}`;
  const [putAway, setPutAway] = useState<string | null>(null);
  const notice = NOTICES[status] ?? (damaged ? 'kept.recovered' : undefined);
  if (!notice || putAway === cause) return null;
  return (
    <div className="notice" role="alert">
      <p>{say(keptBack ? 'kept.keptBack' : notice)}</p>
      <div className="notice-acts">
        {(status === 'full' || status === 'refused') && (
          <button type="button" className="notice-act" onClick={onSave}>
            {say('plans.save')}
          </button>
        )}
        {(status === 'free' || status === 'shown') && (
          <button
            type="button"
            className="notice-act"
            onClick={() => void keeping.takeOver(say('kept.take'))}
          >
            {say(status === 'free' ? 'kept.takeOver' : 'kept.workHere')}
          </button>
        )}
        <button type="button" onClick={() => setPutAway(cause)}>
          {say('plans.dismiss')}
        </button>
      </div>
    </div>
  );
}
