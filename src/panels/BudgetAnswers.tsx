import { type Answer, type MendableUntil, type Outlook, VOID_ALLOWED } from '../core/drilling/outlook.ts';
import type { BudgetNow } from '../core/plan/budgetNow.ts';
import { StatusGlyph } from '../marks/StatusGlyph.tsx';
import { formatNumber } from '../words/format.ts';
import { say } from '../words/sayDrill.ts';
import { sayDepth } from '../words/sayTool.ts';
import { ANSWERS, MARK_OF, stretches } from './BudgetBar.tsx';

/** What each answer means, with its depths. */
function meaning(answer: Answer, { round, covered }: MendableUntil, now: BudgetNow): string {
  const last = sayDepth(now.diameters.last);
  const full = now.fullDepth - 1e-6;
  const [r, c] = [round ?? 0, covered ?? 0];
  if (answer === 'round') {
    if (round === null) return say('budget.roundNever');
    return r >= full
      ? say('budget.roundAlways', { last })
      : say('budget.roundTo', { round: sayDepth(r), last });
  }
  if (answer === 'covered') {
    if (covered === null || r >= full || c - r < 1e-6) return say('budget.coveredNone');
    return say('budget.coveredTo', {
      round: formatNumber({ value: r, unit: 'mm' }),
      covered: sayDepth(c),
      void: sayDepth(VOID_ALLOWED),
    });
  }
  return c >= full ? say('budget.openNone') : say('budget.openFrom', { covered: sayDepth(c) });
}

interface AnswersProps {
  now: BudgetNow;
  until: MendableUntil;
  /** How the hole ends as it stands; null: not known. */
  outlook: Outlook | null;
}

/** Whether this direction ends so at some depth. */
const reached = (answer: Answer, until: MendableUntil, full: number): boolean =>
  stretches(until, full).some((one) => one.answer === answer);

/** The three answers in words; the one that holds as it stands is framed. */
export function BudgetAnswers({ now, until, outlook }: AnswersProps) {
  return (
    <ul className="budget-answers">
      {ANSWERS.map((answer) => (
        <li key={answer} data-answer={answer} aria-current={outlook?.answer === answer || undefined}>
          <StatusGlyph mark={MARK_OF[answer]} size={16} />
          <span>
            <b>{say(`budget.${answer}`)}</b>
            <small>
              {outlook?.answer === answer && !reached(answer, until, now.fullDepth)
                ? say('budget.earlier')
                : meaning(answer, until, now)}
            </small>
          </span>
        </li>
      ))}
    </ul>
  );
}
