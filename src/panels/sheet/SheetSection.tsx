import type { Evaluation } from '../../core/plan/evaluate.ts';
import { CHECK_BAR, checkBar } from '../../paper/rulers.ts';
import { bareSection, walledSection } from '../../paper/section.ts';
import { presentPose } from '../../words/presentSheet.ts';
import { say } from '../../words/saySheet.ts';
import { PaperDrawing } from './PaperDrawing.tsx';
import { count } from './SheetHead.tsx';
import { SheetLines } from './SheetLines.tsx';

/** How much larger the second drawing is. */
const LARGER = 3;
const BAR = checkBar();

/** The section in true scale over the bar to check it by, and beside it the same three times as large with its walls. */
export function SheetSection({ evaluation }: { evaluation: Evaluation }) {
  return (
    <div className="paper-pair paper-pair-section">
      <section className="paper-stack">
        <h3>{say('sheet.section')}</h3>
        <PaperDrawing drawing={bareSection(evaluation, 1)} name="section" />
        <div className="paper-check">
          <PaperDrawing drawing={BAR} name="check-bar" />
          <p>{say('sheet.checkBar', { length: count(CHECK_BAR) })}</p>
        </div>
        <SheetLines lines={presentPose(evaluation.plan)} />
      </section>
      <section className="paper-stack">
        <h3>{say('sheet.walls', { scale: count(LARGER) })}</h3>
        <PaperDrawing drawing={walledSection(evaluation, LARGER)} name="walls" />
      </section>
    </div>
  );
}
