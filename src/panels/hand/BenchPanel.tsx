import { Fragment, useEffect, useMemo, useRef, useState } from 'react';
import { drillingOf } from '../../core/plan/drilling.ts';
import { drillPoseOf, kitOf } from '../../core/plan/inHand.ts';
import type { Plan } from '../../core/plan/plan.ts';
import { isKept } from '../../core/spread/hand.ts';
import {
  type BenchCheck,
  type BenchFault,
  type BenchInput,
  benchCheck,
  callipersAt,
} from '../../core/teaching/bench.ts';
import { BENCH_PLACES, type CalliperPlace } from '../../core/teaching/benchPlaces.ts';
import { type BenchDraft, benchInput, NO_BENCH } from '../../state/benchDraft.ts';
import type { PlanStores } from '../../state/stores.ts';
import { usePlan } from '../../state/usePlan.ts';
import { useSelected } from '../../state/useSelected.ts';
import { formatQuantity } from '../../words/format.ts';
import { presentBench, presentBenchPose, sayCalliper } from '../../words/presentBench.ts';
import { say } from '../../words/sayTeach.ts';
import { SpinField } from '../SpinField.tsx';
import { MeasuredField } from './MeasuredField.tsx';

/** What was asked, and what came of it. */
interface Asked {
  readonly plan: Plan;
  readonly draft: BenchDraft;
  readonly input: BenchInput;
  readonly answer: BenchCheck | BenchFault;
}

/** Two fields of the form, one for each side, and what they have in common. */
interface GridRow {
  readonly name: string;
  readonly places: readonly CalliperPlace[];
}

function wallRows(): GridRow[] {
  const walls = BENCH_PLACES.filter((place) => place.kind !== 'pin');
  const depths = [...new Set(walls.map(({ depth }) => depth))];
  return depths.map((depth) => ({
    name: formatQuantity({ value: depth, unit: 'mm', exact: true }),
    places: walls.filter((wall) => wall.depth === depth),
  }));
}

/** Mesial before distal, as the places are listed. */
function pinRows(): GridRow[] {
  const pins = BENCH_PLACES.filter((place) => place.kind === 'pin');
  return (['contact', 'neck'] as const).map((at) => ({
    name: say(`ownHand.pin.${at}`),
    places: pins.filter(({ point }) => point.endsWith(at)),
  }));
}

/** Diameter of the plan's last drill, or of the kit's narrowest where none is narrow enough, mm. */
const plannedDiameter = (plan: Plan): number =>
  kitOf(plan).drills[drillingOf(plan)?.plan.last?.index ?? 0].diameter;

/** The pose that was found, how sure it is, and how far it is off the plan. */
function Found({ stores, asked, check }: { stores: PlanStores; asked: Asked; check: BenchCheck }) {
  const { own } = stores;
  const attempts = useSelected(own, (state) => state.attempts);
  const { rows, notes } = presentBench(check, asked.input.callipers);
  const attempt = { way: 'bench', deviation: check.deviation } as const;
  const box = useRef<HTMLDivElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new answer is brought into sight
  useEffect(() => {
    box.current?.scrollIntoView({ block: 'nearest' });
  }, [asked]);
  const lists = [
    { heading: say('ownHand.pose'), rows: presentBenchPose(check, drillPoseOf(asked.plan.pose)) },
    { heading: say('ownHand.off'), rows },
  ];
  return (
    <div ref={box} className="bench-found" data-bench="found">
      {notes.map((note) => (
        <p key={note} className="bench-note">
          {note}
        </p>
      ))}
      {isKept(attempts, attempt) ? (
        <p role="status">{say('ownHand.isIn')}</p>
      ) : (
        <button type="button" onClick={() => own.addAttempt(attempt)}>
          {say('ownHand.add')}
        </button>
      )}
      {lists.map((list) => (
        <section key={list.heading}>
          <h3>{list.heading}</h3>
          <ul>
            {list.rows.map(({ id, text }) => (
              <li key={id} data-found={id}>
                {text}
              </li>
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}

/** The bench check: what a calliper reads at a drilled practice ridge, typed; the pose of the hole by least squares. */
export function BenchPanel({ stores }: { stores: PlanStores }) {
  const { live } = stores;
  const plan = usePlan(stores);
  const draft = useSelected(live, (state) => state.bench);
  const [asked, setAsked] = useState<Asked | null>(null);
  const diameter = draft.diameter ?? plannedDiameter(plan);
  const planned = useMemo(() => {
    const line = drillPoseOf(plan.pose);
    return BENCH_PLACES.map((place) => callipersAt(plan, diameter, [place], line)?.[0] ?? null);
  }, [plan, diameter]);
  const set = (change: Partial<BenchDraft>) => live.set({ bench: { ...draft, ...change } });
  const find = () => {
    const input = benchInput(draft, diameter);
    setAsked({ plan, draft, input, answer: benchCheck(plan, input) });
  };
  const grid = (corner: string, columns: readonly [string, string], rows: readonly GridRow[]) => (
    <div className="measured-grid">
      <span className="caption measured-corner" aria-hidden="true">
        {corner}
      </span>
      {columns.map((column) => (
        <span key={column} className="caption" aria-hidden="true">
          {column}
        </span>
      ))}
      {rows.map(({ name, places }) => (
        <Fragment key={name}>
          <span className="measured-row" aria-hidden="true">
            {name}
          </span>
          {places.map((place) => {
            const i = BENCH_PLACES.indexOf(place);
            return (
              <MeasuredField
                key={i}
                inGrid
                name={sayCalliper(place)}
                value={draft.values[i]}
                planned={planned[i]}
                onCommit={(value) => set({ values: draft.values.with(i, value) })}
              />
            );
          })}
        </Fragment>
      ))}
    </div>
  );
  if (plan.site.state.kind === 'socket')
    return (
      <p className="bench-fault" role="status" data-bench="fresh-socket">
        {say('bench.fault.fresh-socket')}
      </p>
    );
  const shown = asked?.plan === plan && asked.draft === draft ? asked : null;
  return (
    <>
      <p className="hand-note">{say('bench.note')}</p>
      <p className="hand-note">{say('ownHand.measured')}</p>
      <h3>{say('ownHand.hole')}</h3>
      <SpinField
        name={say('ownHand.diameter')}
        value={diameter}
        unit="mm"
        least={1}
        most={7}
        step={0.1}
        page={0.5}
        onCommit={(value) => set({ diameter: value })}
      />
      <SpinField
        name={say('bench.sd')}
        value={draft.sd}
        unit="mm"
        least={0.02}
        most={1}
        step={0.05}
        page={0.1}
        onCommit={(value) => set({ sd: value })}
      />
      <MeasuredField
        name={say('bench.depth')}
        value={draft.depth}
        planned={drillingOf(plan)?.chain.fullDepth ?? null}
        onCommit={(value) => set({ depth: value })}
      />
      <h3>{say('ownHand.walls')}</h3>
      {grid(say('ownHand.belowEdge'), [say('hand.toward.facial'), say('hand.toward.palatal')], wallRows())}
      <h3>{say('ownHand.pins')}</h3>
      {grid('', [say('hand.toward.mesial'), say('hand.toward.distal')], pinRows())}
      <div className="hand-words">
        <button type="button" onClick={find}>
          {say('ownHand.find')}
        </button>
        <button type="button" className="quiet" onClick={() => live.set({ bench: NO_BENCH })}>
          {say('ownHand.empty')}
        </button>
      </div>
      {shown && typeof shown.answer === 'string' && (
        <p className="bench-fault" role="alert" data-bench={shown.answer}>
          {say(`bench.fault.${shown.answer}`)}
        </p>
      )}
      {shown && typeof shown.answer !== 'string' && (
        <Found stores={stores} asked={shown} check={shown.answer} />
      )}
    </>
  );
}
