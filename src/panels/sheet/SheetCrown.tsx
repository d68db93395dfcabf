import { fixingAnswer } from '../../core/plan/crownAnswer.ts';
import type { Evaluation } from '../../core/plan/evaluate.ts';
import { depthTurns } from '../../core/plan/partTurns.ts';
import { StatusGlyph } from '../../marks/StatusGlyph.tsx';
import { presentAnswer } from '../../words/presentAnswer.ts';
import { materialName, presentDepthTurns } from '../../words/presentCrown.ts';
import { say } from '../../words/saySheet.ts';

/** What the pose means for the crown and its fixing, and room for notes beside it, under the plan's own note. */
export function SheetCrown({ evaluation }: { evaluation: Evaluation }) {
  const { plan } = evaluation;
  const { mark, lead, axis, depth } = presentAnswer(fixingAnswer(evaluation));
  return (
    <div className="paper-pair paper-pair-crown">
      <section>
        <h3>{say('sheet.crown')}</h3>
        <p className="paper-verdict">
          <StatusGlyph mark={mark} size={15} />
          <b>{lead}</b>
        </p>
        <p>
          {axis} {depth}
        </p>
        <p className="paper-small">
          {say('sheet.material', { material: materialName(plan.crown.material) })}
        </p>
        {depthTurns(evaluation).map((turns) => (
          <p key={turns.reading} className="paper-small">
            {presentDepthTurns(turns)}
          </p>
        ))}
      </section>
      <section>
        <h3>{say('sheet.note')}</h3>
        {plan.note !== '' && <p>{plan.note}</p>}
        <div className="paper-rules" />
      </section>
    </div>
  );
}
