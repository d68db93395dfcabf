import { useEffect, useRef } from 'react';
import type { Plan } from '../../core/plan/plan.ts';
import type { Cost } from '../../core/teaching/cost.ts';
import { notInPlan } from '../../core/teaching/trajectories.ts';
import { type Mark, StatusGlyph } from '../../marks/StatusGlyph.tsx';
import { evaluationOf } from '../../state/evaluation.ts';
import type { TeachStores } from '../../state/teach.ts';
import { usePlan } from '../../state/usePlan.ts';
import { useSelected } from '../../state/useSelected.ts';
import { presentSummary } from '../../words/presentSummary.ts';
import { sayEnds, sayGoneWrong } from '../../words/presentTeach.ts';
import { say } from '../../words/sayTeach.ts';
import '../sentence.css';
import { LessonPresses } from './LessonPresses.tsx';
import { PresentingWords } from './PresentingWords.tsx';
import { RoomHead } from './RoomHead.tsx';

/** What a trajectory comes to: its worst reading, a broken rule, or else how the plan itself stands. */
function markOf(cost: Cost, planned: Plan): Mark {
  const status = cost.worse[0]?.after.status;
  if (cost.rules.length > 0) return 'beyond';
  if (status === 'near' || status === 'beyond') return status;
  return presentSummary(evaluationOf(planned)).mark;
}

/** How it ends; at nothing of it, how the plan stands. */
function endOf(cost: Cost, planned: Plan): string {
  return cost.amount > 0 ? sayEnds(cost) : presentSummary(evaluationOf(planned)).lead;
}

/** What goes wrong, in one sentence: how far off the plan, and how it ends. Where the answer is hidden, it asks. */
export function TeachSentence({ stores }: { stores: TeachStores }) {
  const { live, found, planned: own } = stores;
  useEffect(() => found.follow(), [found]);
  const planned = usePlan(own);
  const wrong = usePlan(stores);
  const id = useSelected(live, (state) => state.trajectory);
  const amount = useSelected(live, (state) => state.amount);
  const hidden = useSelected(live, (state) => state.answerHidden);
  const moving = useSelected(live, (state) => state.dragging !== null);
  const cost = useSelected(found, (state) => state.cost);
  const lead = sayGoneWrong(planned, { id, amount, plan: wrong, notHere: notInPlan(planned, id) });
  const shown = hidden ? null : cost;
  const rest = hidden ? say('teach.ask') : shown ? endOf(shown, planned) : '';
  const mark = shown ? markOf(shown, planned) : 'none';
  const spoken = useRef('');
  const step = useSelected(live, ({ lesson, lessonStep }) => lesson?.steps[lessonStep] ?? null);
  const inLesson = useSelected(stores.session, (state) => state.teaching === 'lesson');
  const words = inLesson ? (step?.words ?? '') : '';
  if (!moving) spoken.current = `${words} ${lead} ${rest}`;
  return (
    <>
      <RoomHead stores={own}>
        <PresentingWords stores={stores} />
      </RoomHead>
      <div className="sentence-drawn teach-sentence" data-summary={mark} data-moving={moving}>
        <StatusGlyph mark={mark} size={32} />
        <div className="teach-words" aria-hidden="true">
          {words !== '' && <p className="lesson-words">{words}</p>}
          <p className="gone-words">
            <strong>{lead}</strong> {rest}
          </p>
        </div>
        {inLesson && <LessonPresses stores={stores} />}
      </div>
      <p className="unseen" role="status" aria-label={say('sentence.label')}>
        {spoken.current}
      </p>
    </>
  );
}
