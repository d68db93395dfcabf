import { useEffect, useId, useRef } from 'react';
import { drillingOf } from '../core/plan/drilling.ts';
import { handOf, kitOf, restingDepth, toolOf } from '../core/plan/inHand.ts';
import {
  drilledUnder,
  drillTo,
  holdAt,
  lift,
  setSpeed,
  setWater,
  takeTool,
  toPlannedAxis,
} from '../core/plan/rehearse.ts';
import type { HandStores } from '../state/held.ts';
import { usePlan } from '../state/usePlan.ts';
import { say } from '../words/sayDrill.ts';
import { sayDepth, sayTool } from '../words/sayTool.ts';
import { dueDepth } from './DrillOrder.tsx';
import { FreedomField } from './FreedomField.tsx';
import { SHIFT_F, SHIFT_M, TILT_FP, TILT_MD } from './freedoms.ts';
import { lettered } from './Lettered.tsx';
import { RailGroup } from './RailGroup.tsx';
import { SpinField } from './SpinField.tsx';

/** How fast a pressed drill goes, mm a second: a rehearsal's pace, no force is modelled. */
const PACE = 1.6;
const MOST_DEPTH = 30;
const tidy = (value: number): number => Math.round(value * 100) / 100 + 0;

/** Drills for as long as it is pressed, by pointer or by key: one pass, one undo step. */
function RunButton({ stores }: { stores: HandStores }) {
  const { document } = stores.planned;
  const frame = useRef(0);
  const stop = () => {
    if (frame.current === 0) return;
    cancelAnimationFrame(frame.current);
    frame.current = 0;
    const { depth } = handOf(document.getState().plan);
    document.endGesture(say('edit.drillTo', { depth: sayDepth(depth) }));
  };
  const run = () => {
    if (frame.current !== 0) return;
    const { plan } = document.getState();
    const from = Math.max(0, handOf(plan).depth);
    document.beginGesture(say('edit.drillTo', { depth: sayDepth(from) }));
    let began: number | null = null;
    const go = (now: number) => {
      began ??= now;
      const depth = tidy(Math.min(MOST_DEPTH, from + (PACE * (now - began)) / 1000));
      document.updateGesture((start) => drillTo(start, depth));
      frame.current = requestAnimationFrame(go);
    };
    frame.current = requestAnimationFrame(go);
  };
  const latest = useRef(stop);
  latest.current = stop;
  useEffect(() => () => latest.current(), []);
  const isKey = (key: string) => key === ' ' || key === 'Enter';
  return (
    <button
      type="button"
      className="drill-run"
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        run();
      }}
      onPointerUp={stop}
      onPointerCancel={stop}
      onLostPointerCapture={stop}
      onKeyDown={(event) => {
        if (isKey(event.key)) {
          event.preventDefault();
          run();
        }
      }}
      onKeyUp={(event) => isKey(event.key) && stop()}
      onBlur={stop}
      onContextMenu={(event) => event.preventDefault()}
    >
      {say('hand.run')}
    </button>
  );
}

/** Where the tool goes by single presses: deeper, to the next stop, up again. */
function DepthWords({ stores }: { stores: HandStores }) {
  const { document } = stores.planned;
  const plan = usePlan(stores.planned);
  const hand = handOf(plan);
  const chain = drillingOf(plan)?.chain;
  const full = hand.tool.kind === 'neck' ? chain?.neck?.base : chain?.fullDepth;
  const due = dueDepth(plan, hand.tool) ?? full ?? null;
  const drill = (depth: number) =>
    document.edit(say('edit.drillTo', { depth: sayDepth(depth) }), (now) => drillTo(now, depth));
  return (
    <div className="rail-words">
      <button type="button" className="rail-word" onClick={() => drill(tidy(Math.max(0, hand.depth) + 1))}>
        {say('hand.deeper')}
      </button>
      {due !== null && (
        <button
          type="button"
          className="rail-word"
          disabled={hand.depth >= due - 1e-6}
          onClick={() => drill(tidy(due))}
        >
          {say('hand.toStop', { depth: sayDepth(due) })}
        </button>
      )}
      <button type="button" className="rail-word" onClick={() => document.edit(say('edit.lift'), lift)}>
        {say('hand.lift')}
      </button>
    </div>
  );
}

/** How deep the tool stands; a number deeper than the hole drills there, one less deep holds it there. */
function DepthField({ stores }: { stores: HandStores }) {
  const { document, live } = stores.planned;
  const plan = usePlan(stores.planned);
  const { depth, tool } = handOf(plan);
  const under = drilledUnder(plan);
  const held = toolOf(plan, tool);
  const least = tidy(Math.min(depth, held ? restingDepth(plan, held) : 0, -12));
  const hole = Math.max(0, under ?? 0);
  const set = (value: number) => {
    const deeper = value > hole + 1e-6;
    document.edit(say(deeper ? 'edit.drillTo' : 'edit.hold', { depth: sayDepth(value) }), (now) =>
      deeper ? drillTo(now, value) : holdAt(now, value),
    );
  };
  return (
    <>
      <SpinField
        name={say('hand.depthName')}
        label={say('hand.depth')}
        value={tidy(depth)}
        unit="mm"
        least={least}
        most={MOST_DEPTH}
        step={0.1}
        page={1}
        signed
        onCommit={set}
        onFocused={(focused) => live.set({ hover: focused ? 'advance' : null })}
      />
      {depth > hole + 0.05 && (
        <p className="rail-note">{say('hand.undrilled', { by: sayDepth(depth - hole) })}</p>
      )}
    </>
  );
}

function ToolSelect({ stores }: { stores: HandStores }) {
  const { document } = stores.planned;
  const plan = usePlan(stores.planned);
  const { tool } = handOf(plan);
  const kit = kitOf(plan);
  const id = useId();
  const refs = [
    ...kit.drills.map((one, index) => ({ ref: { kind: 'drill', index } as const, one })),
    ...kit.necks.map((one, index) => ({ ref: { kind: 'neck', index } as const, one })),
  ];
  const choose = (value: string) => {
    const found = refs.find(({ ref }) => `${ref.kind}${ref.index}` === value);
    if (found)
      document.edit(say('edit.takeTool', { tool: sayTool(found.one) }), (now) => takeTool(now, found.ref));
  };
  return (
    <div className="hand-tool">
      <label className="unseen" htmlFor={id}>
        {say('hand.tool')}
      </label>
      <select id={id} value={`${tool.kind}${tool.index}`} onChange={(event) => choose(event.target.value)}>
        {refs.map(({ ref, one }) => (
          <option key={`${ref.kind}${ref.index}`} value={`${ref.kind}${ref.index}`}>
            {sayTool(one)}
          </option>
        ))}
      </select>
    </div>
  );
}

/** Speed and water of the next pass. */
function Dials({ stores }: { stores: HandStores }) {
  const { document } = stores.planned;
  const { speed, irrigated } = handOf(usePlan(stores.planned));
  const dial = (what: string) => say('edit.dial', { what });
  return (
    <>
      <SpinField
        name={say('hand.speedName')}
        label={say('hand.speed')}
        value={speed}
        unit="rpm"
        least={0}
        most={3000}
        step={50}
        page={200}
        onCommit={(value) => document.edit(dial(say('hand.speed')), (now) => setSpeed(now, value))}
      />
      <label className="hand-water">
        <input
          type="checkbox"
          checked={irrigated}
          onChange={(event) => {
            const { checked } = event.target;
            document.edit(dial(say('hand.water')), (now) => setWater(now, checked));
          }}
        />
        {say('hand.water')}
      </label>
    </>
  );
}

/** The tool in the hand: which, where, how deep; and the press that drills. */
export function HandFields({ stores }: { stores: HandStores }) {
  const { document } = stores.planned;
  return (
    <RailGroup heading={say('hand.tool')} note={<ToolSelect stores={stores} />}>
      <RunButton stores={stores} />
      <DepthWords stores={stores} />
      <DepthField stores={stores} />
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
      <div className="rail-words">
        <button
          type="button"
          className="rail-word"
          onClick={() => document.edit(say('edit.toAxis'), toPlannedAxis)}
        >
          {say('hand.toAxis')}
        </button>
      </div>
      <Dials stores={stores} />
    </RailGroup>
  );
}
