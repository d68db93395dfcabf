import { Fragment, memo, useEffect, useRef } from 'react';
import { drillPoseOf, passesShown, rehearsalOf, toolOf } from '../core/plan/inHand.ts';
import { leanFrom, showPasses, standIn, startAnew } from '../core/plan/rehearse.ts';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { formatNumber, formatQuantity } from '../words/format.ts';
import { say } from '../words/sayDrill.ts';
import { sayTool } from '../words/sayTool.ts';
import { FaultRow, PassSummary } from './PassSummary.tsx';
import { RailGroup } from './RailGroup.tsx';

/** Time a pass is shown in a replay, ms. */
const BEAT = 900;
const count = (value: number): string => formatNumber({ value, unit: 'count' });
const mm = (value: number): string => formatNumber({ value, unit: 'mm', signed: true });

/** Shows the passes one after the other; ends where it began, so that it leaves no step behind. */
function ReplayButton({ stores }: { stores: PlanStores }) {
  const { document } = stores;
  const timer = useRef(0);
  const end = () => {
    if (timer.current === 0) return;
    window.clearInterval(timer.current);
    timer.current = 0;
    document.cancelGesture();
  };
  const play = () => {
    end();
    const total = rehearsalOf(document.getState().plan).passes.length;
    let shown = 0;
    document.beginGesture(say('hand.replay'));
    timer.current = window.setInterval(() => {
      shown += 1;
      if (shown > total) end();
      else document.updateGesture((plan) => showPasses(plan, shown));
    }, BEAT);
  };
  const latest = useRef(end);
  latest.current = end;
  useEffect(() => () => latest.current(), []);
  return (
    <button type="button" className="rail-word" onClick={play}>
      {say('hand.replay')}
    </button>
  );
}

/** Every pass made, with how far it is off the plan; stepping back and forth, standing a tool in it. */
export const PassList = memo(function PassList({ stores }: { stores: PlanStores }) {
  const { document } = stores;
  const plan = usePlan(stores);
  const { passes } = rehearsalOf(plan);
  const shown = passesShown(plan).length;
  const summary = useSelected(stores.live, ({ report }) => report?.summary ?? null);
  const guessing = useSelected(stores.live, (state) => state.guessing);
  if (passes.length === 0) return null;
  const planned = drillPoseOf(plan.pose);
  const step = (to: number, label: string) => document.edit(label, (now) => showPasses(now, to));
  return (
    <RailGroup heading={say('hand.made')} note={say('hand.madeNote')}>
      <table className="passes">
        <thead>
          <tr>
            <th scope="col">{say('hand.pass')}</th>
            <th scope="col">{say('hand.passDepth')}</th>
            <th scope="col">{say('hand.passMouth')}</th>
            <th scope="col">{say('hand.passLean')}</th>
          </tr>
        </thead>
        <tbody>
          {passes.map((pass, i) => {
            const tool = toolOf(plan, pass.tool);
            const number = count(i + 1);
            const off = pass.pose.mouth.f - planned.mouth.f;
            return (
              <Fragment key={number}>
                <tr data-pass={i} data-shown={i < shown}>
                  <th scope="row">
                    <button
                      type="button"
                      className="rail-word"
                      title={say('hand.stand')}
                      aria-label={say('hand.standPass', { pass: number })}
                      onClick={() =>
                        document.edit(say('edit.standIn', { pass: number }), (now) => standIn(now, i))
                      }
                    >
                      {tool ? sayTool(tool) : ''}
                    </button>
                    {pass.press && <small> {say('hand.pressed')}</small>}
                  </th>
                  <td>{formatNumber({ value: pass.depth, unit: 'mm' })}</td>
                  <td>{mm(off)}</td>
                  <td>{formatQuantity({ value: leanFrom(pass.pose, planned).total, unit: 'deg' })}</td>
                </tr>
                {!guessing && (
                  <FaultRow row={summary?.rows.find(({ index }) => index === i)} plan={plan} columns={4} />
                )}
              </Fragment>
            );
          })}
        </tbody>
      </table>
      <div className="rail-words">
        <button
          type="button"
          className="rail-word"
          disabled={shown === 0}
          onClick={() => step(shown - 1, say('hand.back'))}
        >
          {say('hand.back')}
        </button>
        <button
          type="button"
          className="rail-word"
          disabled={shown === passes.length}
          onClick={() => step(shown + 1, say('hand.forth'))}
        >
          {say('hand.forth')}
        </button>
        <ReplayButton stores={stores} />
        <button
          type="button"
          className="rail-word"
          onClick={() => document.edit(say('edit.anew'), startAnew)}
        >
          {say('hand.anew')}
        </button>
      </div>
      {shown < passes.length && (
        <p className="rail-note">
          {say('hand.shownUpTo', { pass: count(shown), passes: count(passes.length) })}
        </p>
      )}
      {guessing ? <p className="rail-note">{say('guess.hidden')}</p> : <PassSummary stores={stores} />}
    </RailGroup>
  );
});
