import { shortFingerprint } from '../../core/plan/fingerprint.ts';
import type { Plan } from '../../core/plan/plan.ts';
import { PROGRAM_VERSION } from '../../io/version.ts';
import { drillingCautions } from '../../words/presentDrilling.ts';
import { say } from '../../words/saySheet.ts';
import { count, toothOf } from './SheetHead.tsx';

function Cell({ heading, value }: { heading: string; value: string }) {
  return (
    <div className="paper-cell">
      <p className="paper-small">{heading}</p>
      <p>
        <b>{value}</b>
      </p>
    </div>
  );
}

/** Last of all: the cautions, and the title block. */
export function SheetFoot({ plan, sheet, sheets }: { plan: Plan; sheet: number; sheets: number }) {
  const cautions = [
    say('title.cautionText'),
    say('sheet.caution.check'),
    say('sheet.caution.hand'),
    ...drillingCautions(),
  ];
  const scenario = plan.title === '' ? say('title.site', { tooth: toothOf(plan) }) : plan.title;
  return (
    <div className="paper-foot">
      <section className="paper-cautions">
        <h3>{say('sheet.cautions')}</h3>
        {cautions.map((caution) => (
          <p key={caution} className="paper-small">
            {caution}
          </p>
        ))}
      </section>
      <div className="paper-title">
        <Cell heading={say('sheet.drawnFor')} value={scenario} />
        <Cell heading={say('sheet.scale')} value={say('sheet.scaleIs')} />
        <Cell heading={say('sheet.plan')} value={shortFingerprint(plan)} />
        <div className="paper-title-two">
          <Cell heading={say('sheet.version')} value={PROGRAM_VERSION} />
          <Cell
            heading={say('sheet.sheet')}
            value={say('title.sheetNumber', { sheet: count(sheet), sheets: count(sheets) })}
          />
        </div>
        <Cell heading={say('sheet.checked')} value="" />
      </div>
    </div>
  );
}
