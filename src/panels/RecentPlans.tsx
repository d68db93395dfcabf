import { useEffect, useId, useState } from 'react';
import type { Plan } from '../core/plan/plan.ts';
import { parsePlanFile } from '../io/planFile.ts';
import type { Keeping } from '../state/kept.ts';
import { formatMoment } from '../words/moment.ts';
import { planTitle } from '../words/planTitle.ts';
import { say } from '../words/say.ts';

interface Before {
  readonly at: number;
  readonly plan: Plan;
}

/** Plans that lay on the table before and can be laid there again. Mounted anew whenever the menu opens. */
export function RecentPlans({ keeping, onOpen }: { keeping: Keeping; onOpen: (plan: Plan) => void }) {
  const id = useId();
  const [found, setFound] = useState<readonly Before[]>([]);
  useEffect(() => {
    let here = true;
    void keeping.recent().then((recent) => {
      const read = recent.map(({ text, at }) => ({ at, read: parsePlanFile(text) }));
      if (here) setFound(read.flatMap((one) => (one.read.ok ? [{ at: one.at, plan: one.read.plan }] : [])));
    });
    return () => {
      here = false;
    };
  }, [keeping]);
  if (found.length === 0) return null;
  return (
    <>
      <h2 className="caption" id={id}>
        {say('keep.recent')}
      </h2>
      <ul aria-labelledby={id} data-recent={found.length}>
        {found.map(({ at, plan }) => (
          <li key={at}>
            <button type="button" onClick={() => onOpen(plan)}>
              {planTitle(plan)} <small>{say('keep.moment', { moment: formatMoment(at) })}</small>
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
