import { useMemo } from 'react';
import { drilledAsPlanned } from '../core/plan/drillAsPlanned.ts';
import { passesShown, toolOf } from '../core/plan/inHand.ts';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { say } from '../words/saySeat.ts';
import { sayDepth, sayTool } from '../words/sayTool.ts';

/** Nothing is drilled, so there is no hole to set the implant to: the ways to one, by the hand or as planned. */
export function SeatDrillFirst({ stores }: { stores: PlanStores }) {
  const { document, session } = stores;
  const plan = usePlan(stores);
  const drilled = useMemo(() => drilledAsPlanned(plan), [plan]);
  return (
    <div className="rail seat">
      <div>
        <p className="seat-empty">{say('seat.drillFirst')}</p>
        <p className="rail-note">{say('seat.drillFirstMore')}</p>
        <button type="button" className="seat-go" onClick={() => session.set({ place: 'rehearse' })}>
          {say('seat.toRehearse')}
        </button>
      </div>
      {drilled && (
        <div className="seat-planned">
          <p className="seat-or">{say('seat.orAsPlanned')}</p>
          <ol className="seat-passes">
            {passesShown(drilled).map(({ tool, depth }) => {
              const taken = toolOf(drilled, tool);
              return (
                taken && (
                  <li key={`${tool.kind} ${tool.index}`}>
                    {say('hand.step', { tool: sayTool(taken), depth: sayDepth(depth) })}
                  </li>
                )
              );
            })}
          </ol>
          <button
            type="button"
            className="seat-as-planned"
            onClick={() => document.edit(say('edit.drillAsPlanned'), (now) => drilledAsPlanned(now) ?? now)}
          >
            {say('seat.drillAsPlanned')}
          </button>
          <p className="rail-note">{say('seat.asPlannedNote')}</p>
        </div>
      )}
    </div>
  );
}
