import { memo, type ReactNode, useId } from 'react';
import type { Pivot } from '../core/plan/edits.ts';
import { PIVOTS } from '../state/session.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { say } from '../words/say.ts';
import { ComparePanel } from './ComparePanel.tsx';
import { FreedomField } from './FreedomField.tsx';
import { ADVANCE, SHIFT_F, SHIFT_M, TILT_FP, TILT_MD, TURN } from './freedoms.ts';
import { ShapeSelects } from './ShapeSelects.tsx';
import { SnapWords } from './SnapWords.tsx';
import './rail.css';

interface GroupProps {
  heading: string;
  note: ReactNode;
  children: ReactNode;
}

function Group({ heading, note, children }: GroupProps) {
  const id = useId();
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset's legend cannot share a line with the note
    <div className="rail-group" role="group" aria-labelledby={id}>
      <div className="rail-heading">
        <h3 id={id}>{heading}</h3>
        <span className="caption">{note}</span>
      </div>
      {children}
    </div>
  );
}

const lettered = (letter: string, word: string): ReactNode => (
  <>
    <i className="letter" aria-hidden="true">
      {letter}
    </i>
    {word}
  </>
);

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
      <Group heading={say('rail.shift')} note={say('rail.shiftNote')}>
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
      </Group>
      <Group heading={say('rail.tilt')} note={<PivotSelect stores={stores} />}>
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
      </Group>
      <Group heading={say('rail.advance')} note={say('rail.advanceNote')}>
        <FreedomField
          stores={stores}
          freedom={ADVANCE}
          name={say('rail.shoulderName')}
          label={say('rail.shoulder')}
        />
        <SnapWords stores={stores} snaps={['deeper-rung', 'higher-rung']} />
      </Group>
      <Group heading={say('rail.turn')} note={say('rail.turnNote')}>
        <FreedomField stores={stores} freedom={TURN} name={say('rail.markName')} label={say('rail.mark')} />
      </Group>
      <Group heading={say('rail.compare')} note={say('rail.compareNote')}>
        <ComparePanel stores={stores} />
      </Group>
      <p className="rail-hint">{say('rail.hint')}</p>
    </div>
  );
});
