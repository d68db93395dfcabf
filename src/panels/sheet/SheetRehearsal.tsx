import type { DrillReport } from '../../core/plan/drillReport.ts';
import { kitOf, passesShown, rehearsalOf } from '../../core/plan/inHand.ts';
import type { Plan } from '../../core/plan/plan.ts';
import { seatNow } from '../../core/plan/seat.ts';
import { StatusGlyph } from '../../marks/StatusGlyph.tsx';
import { presentKitTitle } from '../../words/presentKit.ts';
import { presentVerdict, settingOf, verdictMark } from '../../words/presentPasses.ts';
import { presentSeatSummary } from '../../words/presentSeating.ts';
import { say } from '../../words/saySheet.ts';
import { PassTable } from '../PassTable.tsx';

/** So many passes stand on one sheet; more go on another. */
export const PASSES_A_BLOCK = 7;

/** How many blocks the rehearsal of a plan takes; 0 where there is none to show. */
export const rehearsalBlocks = (plan: Plan, report: DrillReport | null): number =>
  report?.summary ? Math.ceil(passesShown(plan).length / PASSES_A_BLOCK) : 0;

interface SheetRehearsalProps {
  plan: Plan;
  report: DrillReport;
  /** Which block of it this is, from 0. */
  part: number;
}

/** A part of the rehearsal: the verdict first, some passes beside the plan, how it was seated last. */
export function SheetRehearsal({ plan, report, part }: SheetRehearsalProps) {
  const { summary } = report;
  if (!summary) return null;
  const from = part * PASSES_A_BLOCK;
  const rows = summary.rows.filter(({ index }) => index >= from && index < from + PASSES_A_BLOCK);
  const last = part + 1 === rehearsalBlocks(plan, report);
  const seat = last && rehearsalOf(plan).seating.length > 0 ? seatNow(plan) : null;
  return (
    <section>
      <h3>{say('sheet.rehearsal')}</h3>
      {part === 0 && (
        <p className="paper-verdict">
          <StatusGlyph mark={verdictMark(summary)} size={15} />
          <b>{presentVerdict(summary)}</b>
          <small>{say('sheet.kit', { kit: presentKitTitle(kitOf(plan)) })}</small>
        </p>
      )}
      <PassTable rows={rows} setting={settingOf(plan)} className="paper-table paper-passes" />
      {seat && (
        <p>
          {say('sheet.rehearsalSeat')} {presentSeatSummary(seat.setting, seat.state)}
        </p>
      )}
    </section>
  );
}
