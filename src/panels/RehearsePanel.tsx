import { USUAL_SPEED } from '../core/drilling/genericKit.ts';
import type { HandStores } from '../state/held.ts';
import { formatNumber } from '../words/format.ts';
import { say } from '../words/sayDrill.ts';
import { DrillOrder } from './DrillOrder.tsx';
import { GuessPanel } from './GuessPanel.tsx';
import { HandFields } from './HandFields.tsx';
import { KitPanel } from './KitPanel.tsx';
import { PassList } from './PassList.tsx';
import { PressWords } from './PressWords.tsx';
import { RailGroup } from './RailGroup.tsx';
import { ReachPanel } from './ReachPanel.tsx';
import { WanderFields } from './WanderFields.tsx';
import './rail.css';
import './rehearse.css';

const rpm = (value: number): string => formatNumber({ value, unit: 'count' });

/** The rehearsal's rail: order of drilling, the tool in the hand, the passes made. */
export function RehearsePanel({ stores }: { stores: HandStores }) {
  const { planned } = stores;
  return (
    <div className="rail rehearse">
      <RailGroup heading={say('hand.order')} note={say('hand.orderNote')}>
        <DrillOrder stores={planned} />
      </RailGroup>
      <HandFields stores={stores} />
      <GuessPanel stores={stores} />
      <PressWords stores={planned} />
      <PassList stores={planned} />
      <ReachPanel stores={planned} />
      <KitPanel stores={planned} />
      <WanderFields stores={planned} />
      <p className="rail-hint">
        {say('hand.noForce', { low: rpm(USUAL_SPEED.low), high: rpm(USUAL_SPEED.high) })}
      </p>
    </div>
  );
}
