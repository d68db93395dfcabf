import { memo, useMemo } from 'react';
import type { Drill, NeckCutter } from '../core/drilling/kit.ts';
import { bodiesInPlane } from '../core/drilling/outline.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';
import { handOf, isDrill, passBodies, toolOf } from '../core/plan/inHand.ts';
import { planeOf } from '../paper/sectionPlane.ts';
import { evaluationOf } from '../state/evaluation.ts';
import type { HandStores } from '../state/held.ts';
import { useEvaluation, usePlan } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { say } from '../words/sayDrill.ts';
import { sayTool } from '../words/sayTool.ts';
import { KeptImplant } from './KeptImplant.tsx';
import { Section, type SectionHand } from './Section.tsx';
import { AxisLine, HEADING } from './SectionAxis.tsx';
import { PlannedAxis, SectionTool } from './SectionTool.tsx';
import { yOf } from './scale.ts';

/** Where a drawn tool is cut off, px from the top. */
const TOOL_TOP = HEADING - 6;

interface HeldProps {
  evaluation: Evaluation;
  planned: Evaluation;
  tool: Drill | NeckCutter;
  kind: 'faciopalatal' | 'mesiodistal';
}

/** The tool in the hand over the planned implant's ghost and axis. */
function Held({ evaluation, planned, tool, kind }: HeldProps) {
  const { placement, plan } = evaluation;
  const bottom = placement.tP + (isDrill(tool) ? placement.length : plan.implant.transmucosalLength);
  return (
    <>
      <SectionTool tool={tool} bottom={bottom} top={TOOL_TOP} />
      <AxisLine top={TOOL_TOP} foot={yOf(bottom)} />
      <KeptImplant kept={planned} evaluation={evaluation} kind={kind} />
      <PlannedAxis planned={planned} evaluation={evaluation} kind={kind} />
    </>
  );
}

/** The section where something else stands in the planned implant's place, with what has been drilled; an implant gone wrong brings the passes that led to it. */
export const HandSection = memo(function HandSection({ stores }: { stores: HandStores }) {
  const { session, held } = stores;
  const evaluation = useEvaluation(stores);
  const kind = useSelected(session, (state) => state.section);
  const level = useSelected(session, (state) => state.sectionLevel);
  const plan = usePlan(stores.planned);
  const planned = evaluationOf(plan);
  const bodies = passBodies(held === 'wrong' ? evaluation.plan : plan);
  const hole = useMemo(
    () => bodiesInPlane(bodies, planeOf(evaluation, kind, level)),
    [bodies, evaluation, kind, level],
  );
  const tool = held === 'tool' ? toolOf(plan, handOf(plan).tool) : null;
  const hand: SectionHand = {
    planned,
    wrong: held === 'wrong',
    hole,
    tool: tool && {
      label: say('hole.sectionLabel', { tool: sayTool(tool) }),
      drawing: kind !== 'across' && (
        <Held evaluation={evaluation} planned={planned} tool={tool} kind={kind} />
      ),
    },
  };
  return <Section stores={stores} hand={hand} />;
});
