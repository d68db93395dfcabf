import { memo, useId, useMemo, useRef } from 'react';
import { fixingAnswer, fixingAnswers, withFixing } from '../core/plan/crownAnswer.ts';
import {
  type CrownNumber,
  crownNumbers,
  setCrownMaterial,
  setCrownNumber,
} from '../core/plan/crownFields.ts';
import { byPartTurns, depthTurns } from '../core/plan/partTurns.ts';
import { MATERIAL_NAMES } from '../core/restoration/material.ts';
import { StatusGlyph } from '../marks/StatusGlyph.tsx';
import { CROWN_LOOKS } from '../state/session.ts';
import type { PlanStores } from '../state/stores.ts';
import { useEvaluation, usePlan } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { formatQuantity } from '../words/format.ts';
import { briefGrinding, presentAnswer, presentTurns } from '../words/presentAnswer.ts';
import {
  aboutMaterial,
  leastOfMaterial,
  materialName,
  namePartTurns,
  presentCrownNumber,
} from '../words/presentCrown.ts';
import { say } from '../words/sayCrown.ts';
import { FreedomField } from './FreedomField.tsx';
import { ADVANCE, TILT_FP, TILT_MD } from './freedoms.ts';
import { RailGroup } from './RailGroup.tsx';
import { SnapWords } from './SnapWords.tsx';
import { SpinField } from './SpinField.tsx';
import './crown.css';
import './rail.css';

interface PanelProps {
  stores: PlanStores;
}

/** The three ways of fixing the crown, each with the state that this pose has for it. */
function Fixings({ stores }: PanelProps) {
  const name = useId();
  const { document } = stores;
  const evaluation = useEvaluation(stores);
  // While a hand drags, only the chosen way is judged anew: the others cost an evaluation each.
  const moving = useSelected(document, ({ gesture }) => gesture !== null);
  const still = useRef(evaluation);
  if (!moving) still.current = evaluation;
  const settled = still.current;
  const others = useMemo(() => fixingAnswers(settled), [settled]);
  const here = fixingAnswer(evaluation);
  const answers = others.map((answer) => {
    const shown = answer.fixing === here.fixing ? here : answer;
    return { ...presentAnswer(shown), fixing: shown.fixing };
  });
  const { fixing } = evaluation.plan;
  return (
    <div className="fixings" role="radiogroup" aria-label={say('rail.fixing')}>
      {answers.map(({ fixing: one, mark, name: words, brief }) => (
        <label key={one} className="fixing" data-fixing={one} data-answer={mark}>
          <input
            type="radio"
            name={name}
            checked={fixing === one}
            onChange={() =>
              document.edit(say('edit.fixing', { fixing: words }), (plan) => withFixing(plan, one))
            }
          />
          <StatusGlyph mark={mark} size={17} />
          <b>{words}</b>
          <small>{brief}</small>
        </label>
      ))}
    </div>
  );
}

function Looks({ stores }: PanelProps) {
  const { session } = stores;
  const look = useSelected(session, (state) => state.crownLook);
  return (
    // biome-ignore lint/a11y/useSemanticElements: words in a line, no form
    <div className="crown-looks" role="group" aria-label={say('crown.look')}>
      <span>{say('crown.look')}</span>
      {CROWN_LOOKS.map((one) => (
        <button
          key={one}
          type="button"
          className="layer"
          aria-pressed={look === one}
          onClick={() => session.set({ crownLook: one })}
        >
          {say(`crown.look.${one}`)}
        </button>
      ))}
    </div>
  );
}

/** The material, the least thickness it wants, and what has to come off a one-piece abutment for it. */
function MaterialSelect({ stores }: PanelProps) {
  const id = useId();
  const { document } = stores;
  const material = useSelected(document, ({ plan }) => plan.crown.material);
  const grinding = briefGrinding(useEvaluation(stores));
  const choose = (value: string) => {
    const next = MATERIAL_NAMES.find((one) => one === value);
    if (!next) return;
    document.edit(say('edit.crownMaterial', { material: materialName(next) }), (plan) =>
      setCrownMaterial(plan, next),
    );
  };
  return (
    <div className="crown-material">
      <label className="caption" htmlFor={id}>
        {say('crownField.material')}
      </label>
      <select id={id} value={material} onChange={(event) => choose(event.target.value)}>
        {MATERIAL_NAMES.map((one) => (
          <option key={one} value={one}>
            {materialName(one)}
          </option>
        ))}
      </select>
      <p className="rail-note" title={aboutMaterial(material)}>
        {leastOfMaterial(material)}
      </p>
      {grinding && (
        <p className="crown-grinding" data-grinding>
          {grinding}
        </p>
      )}
    </div>
  );
}

const STEPS = { mm: { step: 0.1, page: 0.5 }, deg: { step: 1, page: 5 } } as const;

/** A number that is chosen for the crown, with what is usual beside it. */
function CrownField({ stores, number }: PanelProps & { number: CrownNumber }) {
  const { document } = stores;
  const { path, unit, value, usual, low, high } = number;
  const { label, usual: usualText, about } = presentCrownNumber(number);
  const set = (next: number) => {
    const change = (plan: Parameters<typeof setCrownNumber>[0]) => {
      const edit = setCrownNumber(plan, path, next);
      return edit.ok ? edit.plan : plan;
    };
    if (document.getState().gesture) document.updateGesture(change);
    else
      document.edit(
        say('edit.crownNumber', {
          field: label,
          value: formatQuantity({ value: next, unit, exact: true }),
        }),
        change,
      );
  };
  const onHold = (phase: 'begin' | 'end') => {
    if (phase === 'begin') document.beginGesture(label);
    else document.endGesture(label);
  };
  return (
    <div className="crown-field" data-crown-field={path} title={about}>
      <SpinField
        name={label}
        value={value}
        unit={unit}
        least={low}
        most={high}
        {...(path === 'cementGap' ? { step: 0.01, page: 0.05 } : STEPS[unit])}
        onCommit={set}
        onHold={onHold}
        beside={
          <button
            type="button"
            className="site-mean"
            disabled={Math.abs(value - usual) < 1e-9}
            aria-label={say('crownField.reset', { field: label, value: usualText })}
            onClick={() => set(usual)}
          >
            {say('crown.usual', { value: usualText })}
          </button>
        }
      />
    </div>
  );
}

/** What the part-turns of the neck would do for the depth: a press for one each way, and one for as many as mend it. */
function PartTurns({ stores }: PanelProps) {
  const turns = depthTurns(useEvaluation(stores));
  const judged = turns.find(({ promise }) => promise !== null);
  const mend = judged?.promise?.turns ?? 0;
  const name = namePartTurns(mend, judged?.degrees ?? 0);
  return (
    <>
      <p className="rail-note" data-part-turns>
        {presentTurns(turns)}
      </p>
      <div className="rail-words">
        {turns.length > 0 && <SnapWords stores={stores} snaps={['deeper-rung', 'higher-rung']} />}
        {Math.abs(mend) > 1 && (
          <button
            type="button"
            className="rail-word"
            onClick={() => stores.document.edit(name, (plan) => byPartTurns(plan, mend))}
          >
            {name}
          </button>
        )}
      </div>
    </>
  );
}

/** *Crown*: its fixing and what that means, its form and material, the axis and the depth it asks for, the distances kept about it. */
export const CrownPanel = memo(function CrownPanel({ stores }: PanelProps) {
  const numbers = crownNumbers(usePlan(stores));
  const fields = (group: CrownNumber['group']) =>
    numbers
      .filter((number) => number.group === group)
      .map((number) => <CrownField key={number.path} stores={stores} number={number} />);
  return (
    <div className="rail crown-rail">
      <RailGroup heading={say('crown.fixing')} note={say('crown.fixingNote')}>
        <Fixings stores={stores} />
      </RailGroup>
      <RailGroup heading={say('crown.pose')} note={say('crown.poseNote')}>
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
        <SnapWords stores={stores} snaps={['crown-axis', 'incisal-line']} />
        <FreedomField
          stores={stores}
          freedom={ADVANCE}
          name={say('rail.shoulderName')}
          label={say('rail.shoulder')}
        />
        <PartTurns stores={stores} />
      </RailGroup>
      <RailGroup heading={say('crown.form')} note={say('crown.formNote')}>
        <Looks stores={stores} />
        <MaterialSelect stores={stores} />
        {fields('form')}
      </RailGroup>
      <details className="rail-group crown-kept">
        <summary>
          <h3>{say('crown.kept')}</h3>
          <span className="caption">{say('crown.keptNote')}</span>
        </summary>
        {fields('kept')}
      </details>
    </div>
  );
});
