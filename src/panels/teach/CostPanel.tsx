import { useState } from 'react';
import type { Breaks } from '../../core/teaching/breaks.ts';
import type { Cost } from '../../core/teaching/cost.ts';
import { StatusGlyph } from '../../marks/StatusGlyph.tsx';
import type { TeachStores } from '../../state/teach.ts';
import { useSelected } from '../../state/useSelected.ts';
import { formatNumber } from '../../words/format.ts';
import { type PresentedChange, presentCost, sayEnds, sayRule } from '../../words/presentTeach.ts';
import { say } from '../../words/sayTeach.ts';
import { Mended } from './Mended.tsx';
import { MouthSigns } from './MouthSigns.tsx';

/** Rows shown before the rest is asked for. */
const FIRST = 4;

/** A reading in the plan and here, with what it lacks; pressed, by whose paper. */
function CostRow({ row }: { row: PresentedChange }) {
  const [open, setOpen] = useState(false);
  return (
    <li className="cost-row" data-cost-reading={row.id} data-mark={row.mark}>
      <StatusGlyph mark={row.mark} size={22} />
      <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
        {row.label}
      </button>
      <p className="cost-numbers">
        <span className="cost-before">{row.before}</span>
        <span aria-hidden="true"> → </span>
        <b>{row.after}</b>
      </p>
      <p className="cost-note">
        <span>{row.note}</span> {row.breaks !== '' && <small>{row.breaks}</small>}
      </p>
      {open && <p className="cost-by">{row.by}</p>}
    </li>
  );
}

/** The readings that stand worse, the worst first. */
function CostRows({ cost, breaks }: { cost: Cost; breaks: Breaks | null }) {
  const [all, setAll] = useState(false);
  const rows = presentCost(cost, breaks);
  const count = formatNumber({ value: rows.length, unit: 'count' });
  return (
    <>
      <ul className="cost-rows">
        {(all ? rows : rows.slice(0, FIRST)).map((row) => (
          <CostRow key={row.id} row={row} />
        ))}
      </ul>
      {rows.length > FIRST && (
        <button type="button" className="cost-all" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? say('teach.fewer') : say('teach.all', { count })}
        </button>
      )}
    </>
  );
}

/** Rules of drilling and seating that are broken. */
function Rules({ cost }: { cost: Cost }) {
  if (cost.rules.length === 0) return null;
  return (
    <ul className="cost-rules">
      {cost.rules.map((rule) => (
        <li key={rule.code} data-rule={rule.code}>
          <StatusGlyph mark="beyond" size={18} />
          <span>
            {sayRule(rule)} <small>{say('rule.ours')}</small>
          </span>
        </li>
      ))}
    </ul>
  );
}

/** At nothing of a trajectory: that this is the plan, and how to leave it. */
function AtThePlan() {
  return (
    <div className="cost" data-cost="worked-out">
      <div className="cost-part">
        <h3>{say('cost.heading')}</h3>
        <p className="cost-nothing">{say('cost.atPlan')}</p>
      </div>
    </div>
  );
}

/** What the trajectory costs here, what would be seen of it, and until when it could have been mended. */
export function CostPanel({ stores }: { stores: TeachStores }) {
  const hidden = useSelected(stores.live, (state) => state.answerHidden);
  const cost = useSelected(stores.found, (state) => state.cost);
  const breaks = useSelected(stores.found, (state) => state.breaks);
  const fresh = useSelected(stores.found, (state) => state.fresh);
  if (hidden) {
    return (
      <div className="calm">
        <p className="asked">{say('teach.ask')}</p>
        <button type="button" className="answer" onClick={() => stores.live.set({ answerHidden: false })}>
          {say('teach.answer')}
        </button>
      </div>
    );
  }
  if (!cost) return <p className="calm">{say('teach.working')}</p>;
  if (fresh && cost.amount <= 0 && !cost.notHere) return <AtThePlan />;
  return (
    <div className="cost" data-cost={fresh ? 'worked-out' : 'working'}>
      <div className="cost-part">
        <div className="cost-heading">
          <h3>{say('cost.heading')}</h3>
          <span className="caption">{say('cost.columns')}</span>
        </div>
        {cost.nothing && <p className="cost-nothing">{sayEnds(cost)}</p>}
        <CostRows key={cost.id} cost={cost} breaks={breaks} />
        <Rules cost={cost} />
      </div>
      <MouthSigns cost={cost} />
      <Mended stores={stores} cost={cost} />
    </div>
  );
}
