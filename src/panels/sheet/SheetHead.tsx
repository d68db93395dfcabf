import { shortFingerprint } from '../../core/plan/fingerprint.ts';
import type { Plan } from '../../core/plan/plan.ts';
import { PROGRAM_VERSION } from '../../io/version.ts';
import { formatNumber } from '../../words/format.ts';
import { presentShape } from '../../words/presentShape.ts';
import { say } from '../../words/saySheet.ts';

export const count = (value: number): string => formatNumber({ value, unit: 'count' });
export const toothOf = (plan: Plan): string => count(plan.site.tooth);

interface SheetHeadProps {
  plan: Plan;
  sheet: number;
  sheets: number;
}

/** Head of a sheet: in full on the first, in one line on the others. */
export function SheetHead({ plan, sheet, sheets }: SheetHeadProps) {
  const program = say('sheet.program', { name: say('app.name'), version: PROGRAM_VERSION });
  const print = say('sheet.fingerprint', { fingerprint: shortFingerprint(plan) });
  const number = say('sheet.number', { sheet: count(sheet), sheets: count(sheets) });
  const title = say('sheet.title', { tooth: toothOf(plan) });
  if (sheet > 1)
    return (
      <header className="paper-head paper-head-short">
        <p>
          <b>{title}</b> {plan.title}
        </p>
        <p>
          {print} · {number}
        </p>
      </header>
    );
  return (
    <header className="paper-head">
      <div>
        <h2>{title}</h2>
        <p>{plan.title}</p>
        <p>
          {say('sheet.shape', {
            shape: presentShape(plan.implant),
            fixing: say(`fixing.${plan.fixing}`),
          })}
        </p>
      </div>
      <div className="paper-head-end">
        <b>{program}</b>
        <p data-fingerprint>{print}</p>
        <p>{number}</p>
      </div>
    </header>
  );
}
