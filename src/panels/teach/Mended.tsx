import type { Cost } from '../../core/teaching/cost.ts';
import { StatusGlyph } from '../../marks/StatusGlyph.tsx';
import type { TeachStores } from '../../state/teach.ts';
import { usePlan } from '../../state/usePlan.ts';
import { useSelected } from '../../state/useSelected.ts';
import { type PresentedMending, presentMending, sayWayBack } from '../../words/presentTeach.ts';
import { say } from '../../words/sayTeach.ts';

/** What each pass of the hole gone wrong leaves, for who asks. */
function DrillByDrill({ steps }: Pick<PresentedMending, 'steps'>) {
  return (
    <details className="mended-drills">
      <summary>{say('mend.drills')}</summary>
      <ol className="mended-steps">
        {steps.map(({ mark, step, answer }) => (
          <li key={step}>
            <StatusGlyph mark={mark} size={15} />
            <span>{step}</span>
            <small>{answer}</small>
          </li>
        ))}
      </ol>
    </details>
  );
}

/** Whether and until which drill it could have been mended, and the way back: pressed, the dial goes it. */
export function Mended({ stores, cost }: { stores: TeachStores; cost: Cost }) {
  const plan = usePlan(stores.planned);
  const mending = useSelected(stores.found, (state) => state.mending);
  // Where the hole alone has gone wrong, nothing leads back.
  const returns = cost.plan.pose !== plan.pose || cost.plan.implant !== plan.implant;
  const told = mending && presentMending(plan, mending);
  return (
    <div className="cost-part mended">
      <h3>{say('mend.heading')}</h3>
      {told ? (
        <>
          <p className="mended-text" data-mended={told.mark}>
            <StatusGlyph mark={told.mark} size={18} />
            <span>{told.text}</span>
          </p>
          {told.steps.length > 0 && <DrillByDrill steps={told.steps} />}
        </>
      ) : (
        <p className="mended-text">{say('teach.working')}</p>
      )}
      {cost.amount > 0 && !cost.notHere && (
        <p className="mended-back">
          {sayWayBack(plan, cost.plan)}{' '}
          {returns && (
            <button type="button" onClick={() => stores.player.playTo(0)}>
              {say('teach.showBack')}
            </button>
          )}
        </p>
      )}
    </div>
  );
}
