import { useId, useState } from 'react';
import { handOf } from '../core/plan/inHand.ts';
import { pressAgainst } from '../core/plan/rehearse.ts';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { say } from '../words/sayDrill.ts';
import { sayDepth } from '../words/sayTool.ts';
import { RailGroup } from './RailGroup.tsx';
import { SpinField } from './SpinField.tsx';

/** Azimuths from facial toward mesial, degrees. */
const WALLS = [
  { id: 'facial', toward: 0, way: 'way.facially' },
  { id: 'palatal', toward: 180, way: 'way.palatally' },
  { id: 'mesial', toward: 90, way: 'way.mesially' },
  { id: 'distal', toward: -90, way: 'way.distally' },
] as const;

/** Pressing the running drill against one wall of its hole: the whole drill sideways, or tipping about its bottom, as it would. */
export function PressWords({ stores }: { stores: PlanStores }) {
  const { document } = stores;
  const { depth } = handOf(usePlan(stores));
  const [wall, setWall] = useState<(typeof WALLS)[number]['id']>('palatal');
  const [by, setBy] = useState(0.3);
  const id = useId();
  const chosen = WALLS.find((one) => one.id === wall) ?? WALLS[0];
  const press = (tipping: boolean) =>
    document.edit(say('edit.pressWall', { by: sayDepth(by), way: say(chosen.way) }), (plan) =>
      pressAgainst(plan, { toward: chosen.toward, mouth: by, bottom: tipping ? 0 : by }),
    );
  return (
    <RailGroup
      heading={say('hand.press')}
      note={
        <>
          <label className="unseen" htmlFor={id}>
            {say('hand.pressToward')}
          </label>
          <select
            className="rail-pivot"
            id={id}
            value={wall}
            onChange={(event) => setWall(WALLS.find((one) => one.id === event.target.value)?.id ?? wall)}
          >
            {WALLS.map((one) => (
              <option key={one.id} value={one.id}>
                {say(`hand.toward.${one.id}`)}
              </option>
            ))}
          </select>
        </>
      }
    >
      <SpinField
        name={say('hand.pressByName')}
        label={say('hand.pressBy')}
        value={by}
        unit="mm"
        least={0.1}
        most={2}
        step={0.1}
        page={0.5}
        onCommit={setBy}
      />
      <div className="rail-words">
        <button type="button" className="rail-word" disabled={depth <= 0} onClick={() => press(false)}>
          {say('hand.pressShift')}
        </button>
        <button type="button" className="rail-word" disabled={depth <= 0} onClick={() => press(true)}>
          {say('hand.pressTip')}
        </button>
      </div>
    </RailGroup>
  );
}
