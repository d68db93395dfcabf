import type { ReactNode } from 'react';
import { type Advice, applyEdit } from '../core/plan/advice.ts';
import type { PlanStores } from '../state/stores.ts';
import { useEvaluation } from '../state/usePlan.ts';
import { presentEdit, presentMending } from '../words/presentAdvice.ts';
import { say } from '../words/say.ts';
import { sayParts } from '../words/sayParts.ts';
import { useAdvice } from './useAdvice.ts';

/** What would mend the worst reading, in words that can be pressed: each is one edit and one undo step. */
export function AdviceLine({ stores }: { stores: PlanStores }) {
  const { readings } = useEvaluation(stores);
  const { result, stale } = useAdvice(stores);
  const button = (advice: Advice | undefined): ReactNode =>
    advice && (
      <button
        type="button"
        className="advice"
        disabled={stale}
        onClick={() => stores.document.edit(presentEdit(advice.edit), (plan) => applyEdit(plan, advice.edit))}
      >
        {presentMending(advice, readings)}
      </button>
    );
  const words = (): ReactNode => {
    if (!result || (stale && result.advice.length === 0)) return say('advice.searching');
    if (!result.worst) return say('advice.clear');
    const [first, second] = result.advice;
    if (!first) return say('advice.none');
    const parts = sayParts(second ? 'advice.two' : 'advice.one');
    return parts.map((part) =>
      typeof part === 'string' ? (
        part
      ) : (
        <span key={part.slot}>{button(part.slot === 'first' ? first : second)}</span>
      ),
    );
  };
  return (
    <p className="advice-line" data-advice={stale ? 'stale' : 'found'}>
      {words()}
    </p>
  );
}
