import type { ReactNode } from 'react';
import { isKept, type Way } from '../../core/spread/hand.ts';
import { screenAttempt } from '../../core/teaching/ownAttempt.ts';
import type { PlanStores } from '../../state/stores.ts';
import { usePlan } from '../../state/usePlan.ts';
import { useSelected } from '../../state/useSelected.ts';
import { say } from '../../words/sayTeach.ts';
import { PublishedSpreads } from '../class/PublishedSpreads.tsx';
import { OwnGuesses } from '../OwnGuesses.tsx';
import { RoomHead } from '../teach/RoomHead.tsx';
import { BenchPanel } from './BenchPanel.tsx';
import { HandWay } from './HandWay.tsx';
import '../class/class.css';
import './hand.css';

/** Takes the rehearsal on the table into the own hand, or says why it is no attempt. */
function AddScreen({ stores, children }: { stores: PlanStores; children: ReactNode }) {
  const { own } = stores;
  const attempts = useSelected(own, (state) => state.attempts);
  const attempt = screenAttempt(usePlan(stores));
  const why = typeof attempt === 'string' ? attempt : isKept(attempts, attempt) ? 'kept' : null;
  return (
    <>
      <button
        type="button"
        disabled={why !== null}
        onClick={() => typeof attempt !== 'string' && own.addAttempt(attempt)}
      >
        {say('ownHand.addScreen')}
      </button>
      {children}
      {why && (
        <p className="hand-note hand-why" role="status" data-why={why}>
          {say(`ownHand.why.${why}`)}
        </p>
      )}
    </>
  );
}

function DropNewest({ stores: { own }, way }: { stores: PlanStores; way: Way }) {
  const any = useSelected(own, (state) => state.attempts.some((attempt) => attempt.way === way));
  if (!any) return null;
  return (
    <button type="button" className="quiet" onClick={() => own.dropNewest(way)}>
      {say('ownHand.dropNewest')}
    </button>
  );
}

/** Published spreads, what they are not, and the own guesses. */
function Beside({ stores: { own } }: { stores: PlanStores }) {
  const any = useSelected(own, (state) => state.attempts.length + state.guesses.length > 0);
  return (
    <section className="hand-beside" aria-label={say('ownHand.beside')}>
      <PublishedSpreads />
      <OwnGuesses own={own} />
      {any && (
        <button type="button" className="quiet" onClick={own.forgetAll}>
          {say('ownHand.forget')}
        </button>
      )}
    </section>
  );
}

/** The page of the user's own hand: the bench check, which makes a hole at a bench an attempt, and the spread of the attempts so far. */
export default function HandPage({ stores }: { stores: PlanStores }) {
  const attempts = useSelected(stores.own, (state) => state.attempts);
  return (
    <div className="hand-page">
      <RoomHead stores={stores}>
        <p className="hand-say">
          <strong>{say('ownHand.apart')}</strong> {say('ownHand.kept')}
        </p>
      </RoomHead>
      <div className="hand-body">
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys */}
        <section className="hand-bench" aria-label={say('bench.heading')} tabIndex={0}>
          <h2>{say('bench.heading')}</h2>
          <BenchPanel stores={stores} />
        </section>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys */}
        <section className="hand-own" aria-label={say('ownHand.label')} tabIndex={0}>
          <h2 className="unseen">{say('ownHand.label')}</h2>
          <HandWay way="bench" all={attempts}>
            <p className="hand-note">{say('ownHand.benchNote')}</p>
            <div className="hand-words">
              <DropNewest stores={stores} way="bench" />
            </div>
          </HandWay>
          <HandWay way="screen" all={attempts}>
            <p className="hand-note">{say('ownHand.screenNote')}</p>
            <div className="hand-words">
              <AddScreen stores={stores}>
                <DropNewest stores={stores} way="screen" />
              </AddScreen>
            </div>
          </HandWay>
          <Beside stores={stores} />
        </section>
      </div>
    </div>
  );
}
