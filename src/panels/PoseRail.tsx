import { memo } from 'react';
import type { Pivot } from '../core/plan/edits.ts';
import { PIVOTS } from '../state/session.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { say } from '../words/say.ts';
import { ComparePanel } from './ComparePanel.tsx';
import { FreedomField } from './FreedomField.tsx';
import { ADVANCE, SHIFT_F, SHIFT_M, TILT_FP, TILT_MD, TURN } from './freedoms.ts';
import { lettered } from './Lettered.tsx';
import { RailGroup } from './RailGroup.tsx';
import { ShapeSelects } from './ShapeSelects.tsx';
import { SnapWords } from './SnapWords.tsx';
import { StrayMenu } from './stray/StrayMenu.tsx';
import './rail.css';

function PivotSelect({ stores }: { stores: PlanStores }) {
  const { session } = stores;
  const pivot = useSelected(session, (state) => state.pivot);
  const choose = (value: string) => {
    const next = PIVOTS.find((one) => one === value);
    if (next) session.set({ pivot: next satisfies Pivot });
  };
  return (
    <>
      {say('rail.about')}{' '}
      <select
        className="rail-pivot"
        aria-label={say('rail.pivot')}
        value={pivot}
        onChange={(event) => choose(event.target.value)}
      >
        {PIVOTS.map((one) => (
          <option key={one} value={one}>
            {say(`pivot.${one}`)}
          </option>
        ))}
      </select>
    </>
  );
}

/** Shape, fixing and the six degrees of freedom of the pose, each as a field. */
export const PoseRail = memo(function PoseRail({ stores }: { stores: PlanStores }) {
  return (
    <div className="rail">
      <ShapeSelects stores={stores} />
      <RailGroup heading={say('rail.shift')} note={say('rail.shiftNote')}>
        <FreedomField
          stores={stores}
          freedom={SHIFT_M}
          name={say('rail.shiftMName')}
          label={lettered(say('rail.m'), say('rail.shiftM'))}
        />
        <FreedomField
          stores={stores}
          freedom={SHIFT_F}
          name={say('rail.shiftFName')}
          label={lettered(say('rail.f'), say('rail.shiftF'))}
        />
        <SnapWords stores={stores} snaps={['bone-faciopalatal', 'bone-mesiodistal']} />
      </RailGroup>
      <RailGroup heading={say('rail.tilt')} note={<PivotSelect stores={stores} />}>
        <FreedomField
          stores={stores}
          freedom={TILT_FP}
          name={say('rail.tiltFpName')}
          label={say('rail.tiltFp')}
        />
        <FreedomField
          stores={stores}
          freedom={TILT_MD}
          name={say('rail.tiltMdName')}
          label={say('rail.tiltMd')}
        />
        <SnapWords stores={stores} snaps={['ridge-axis', 'crown-axis', 'incisal-line']} />
      </RailGroup>
      <RailGroup heading={say('rail.advance')} note={say('rail.advanceNote')}>
        <FreedomField
          stores={stores}
          freedom={ADVANCE}
          name={say('rail.shoulderName')}
          label={say('rail.shoulder')}
        />
        <SnapWords stores={stores} snaps={['deeper-rung', 'higher-rung']} />
      </RailGroup>
      <RailGroup heading={say('rail.turn')} note={say('rail.turnNote')}>
        <FreedomField stores={stores} freedom={TURN} name={say('rail.markName')} label={say('rail.mark')} />
      </RailGroup>
      <RailGroup heading={say('rail.compare')} note={say('rail.compareNote')}>
        <ComparePanel stores={stores} />
        <StrayMenu stores={stores} />
      </RailGroup>
      <p className="rail-hint">{say('rail.hint')}</p>
    </div>
  );
});
