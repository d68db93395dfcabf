import { lazy, type ReactNode, Suspense, useCallback, useLayoutEffect, useMemo } from 'react';
import type { Hidden } from '../core/teaching/exercise.ts';
import { DrawingSelect } from '../panels/DrawingSelect.tsx';
import { HandOver } from '../panels/HandOver.tsx';
import { LayerWords } from '../panels/LayerWords.tsx';
import { type PlanSources, PlansMenu } from '../panels/PlansMenu.tsx';
import { redoLabel, undoLabel } from '../state/document.ts';
import type { Place } from '../state/session.ts';
import { NOTHING_HIDDEN, placesOf, type Sitting } from '../state/sitting.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { useSitting } from '../state/useSitting.ts';
import { veiled } from '../state/veiled.ts';
import { planTitle } from '../words/planTitle.ts';
import { say } from '../words/say.ts';
import type { ModelMaker } from '../worker/modelMaker.ts';
import { Failed } from './Failed.tsx';
import { Header } from './Header.tsx';
import type { Bench, Page } from './places/place.ts';
import type { DrawnLedger } from './revision.ts';
import { type Content, type Parts, Shell } from './Shell.tsx';
import { useHistoryKeys } from './useHistoryKeys.ts';
import { useParts } from './useParts.ts';
import { useProjector } from './useProjector.ts';

const Stage = lazy(() => import('../scene/Stage.tsx'));
const ExerciseSentence = lazy(() => import('../panels/exercise/ExerciseSentence.tsx'));
const PrintedRehearsal = lazy(() => import('../panels/PrintedRehearsal.tsx'));

export interface AppProps {
  stores: PlanStores;
  ledger: DrawnLedger;
  plans: PlanSources;
  /** Null in a copy of the program that has no worker. */
  maker: ModelMaker | null;
}

interface LedgerProps {
  stores: PlanStores;
  ledger: DrawnLedger;
}

/** The header, redrawn for itself when the history changes. */
function PlanHeader({ stores, plans, maker }: Omit<AppProps, 'ledger'>) {
  const { document, session, live } = stores;
  const projector = useProjector(live);
  const sitting = useSitting(stores);
  return (
    <Header
      place={useSelected(session, ({ place }) => place)}
      onPlace={(place) => session.set({ place })}
      open={sitting ? placesOf(sitting.exercise) : null}
      undoLabel={useSelected(document, undoLabel)}
      redoLabel={useSelected(document, redoLabel)}
      onUndo={document.undo}
      onRedo={document.redo}
      projector={projector.on}
      onProjector={projector.toggle}
    >
      <PlansMenu stores={stores} {...plans} />
      {!sitting && <HandOver stores={stores} maker={maker} />}
    </Header>
  );
}

/** What the plan on the table is, for the title block. */
function Scenario({ stores }: { stores: PlanStores }) {
  return <p>{useSelected(stores.document, ({ plan }) => planTitle(plan))}</p>;
}

/** The rehearsal on paper, loaded with the first plan that has one. */
function Printed({ stores }: { stores: PlanStores }) {
  const rehearsed = useSelected(stores.document, ({ plan }) => plan.rehearsal !== null);
  if (!rehearsed) return null;
  return (
    <Suspense fallback={null}>
      <PrintedRehearsal stores={stores} />
    </Suspense>
  );
}

/** Reports that the panels show the newest revision. Stands after them and is committed with them. */
function PanelsDrawn({ stores, ledger }: LedgerProps) {
  const revision = useSelected(stores.live, (state) => state.revision);
  useLayoutEffect(() => ledger.drawn('panels', revision), [ledger, revision]);
  return null;
}

interface LostProps {
  ledger: DrawnLedger;
  place: Place;
  onRetry: () => void;
}

/** A place that could not be loaded. */
function Lost({ ledger, place, onRetry }: LostProps) {
  useLayoutEffect(() => ledger.absent('stage'), [ledger]);
  return <Failed name={say(`place.${place}`)} onRetry={onRetry} />;
}

/** The stage, which follows the stores by itself and reports what it has drawn. */
function StageHost({ stores, ledger }: LedgerProps) {
  const drawn = useCallback((shown: number) => ledger.drawn('stage', shown), [ledger]);
  const absent = useCallback(() => ledger.absent('stage'), [ledger]);
  return (
    <Suspense fallback={<p className="calm">{say('stage.loading')}</p>}>
      <Stage stores={stores} onDrawn={drawn} onAbsent={absent} />
    </Suspense>
  );
}

/** A part that is kept from who looks, and why. */
type Covers = Readonly<Record<'section' | 'profile' | 'readings', string | null>>;

interface BenchProps {
  stores: PlanStores;
  bench: Bench;
  ledger: DrawnLedger;
  covers: Covers;
  /** The exercise that is done here, or null. */
  sitting: Sitting | null;
}

/** The parts of a place at the table. */
function benchParts({ stores, bench, ledger, covers, sitting }: BenchProps): Parts {
  const { Sentence, Rail, Section, Beside, Under } = bench;
  const open = (part: keyof Covers, content: ReactNode): ReactNode =>
    covers[part] === null ? content : <p className="calm">{covers[part]}</p>;
  return {
    sentence: sitting ? (
      <Suspense fallback={null}>
        <ExerciseSentence stores={stores} sitting={sitting} />
      </Suspense>
    ) : (
      <Sentence stores={stores} />
    ),
    rail: <Rail stores={stores} />,
    stage: <StageHost stores={bench.shown(stores)} ledger={ledger} />,
    section: open('section', <Section stores={stores} />),
    profile: open('profile', <Beside stores={stores} />),
    readings: open('readings', <Under stores={stores} />),
  };
}

interface Covering {
  guessing: boolean;
  asking: boolean;
  hidden: Hidden;
}

/** While a reading is guessed, what would tell it is covered; while a class is asked, the section; in an exercise, what its teacher hides. */
function coversOf({ guessing, asking, hidden }: Covering): Covers {
  const cover = (part: keyof Covers): string | null => {
    if (guessing) return say('guess.hidden');
    if (asking && part === 'section') return say('teach.covered');
    return hidden[part] ? say('exercise.covered') : null;
  };
  return { section: cover('section'), profile: cover('profile'), readings: cover('readings') };
}

interface ContentProps {
  stores: PlanStores;
  ledger: DrawnLedger;
  place: Place;
  parts: Bench | Page;
  sitting: Sitting | null;
}

/** What a place puts between header and title block. */
function useContent({ stores, ledger, place, parts, sitting }: ContentProps): Content {
  const guessing = useSelected(stores.live, (state) => state.guessing) && place === 'rehearse';
  const asking = useSelected(stores.live, (state) => state.answerHidden) && place === 'teach';
  if (parts.kind === 'page') return { page: <parts.Page stores={stores} ledger={ledger} /> };
  const covers = coversOf({ guessing, asking, hidden: sitting?.exercise.hidden ?? NOTHING_HIDDEN });
  return {
    names: parts.names,
    layout: parts.layout,
    parts: benchParts({ stores, bench: parts, ledger, covers, sitting }),
  };
}

/** The whole page over its stores: which part gets what, and nothing more. */
export function App({ stores, ledger, plans, maker }: AppProps) {
  const { document } = stores;
  const { here, arrived, lost, retry } = useParts(stores);
  const place = lost ?? here.place;
  const sitting = useSitting(stores);
  const hidden = sitting?.exercise.hidden ?? NOTHING_HIDDEN;
  const seen = useMemo(() => ({ ...stores, session: veiled(stores.session, hidden) }), [stores, hidden]);
  const content = useContent({ stores: seen, ledger, sitting, ...here });
  const looked = here.parts.kind === 'bench' ? here.parts.shown(seen) : seen;
  useHistoryKeys(document.undo, document.redo);
  const stageAbsent = useCallback(() => ledger.absent('stage'), [ledger]);

  return (
    <>
      <Shell
        place={place}
        header={<PlanHeader stores={stores} plans={plans} maker={maker} />}
        title={{
          layers: <LayerWords stores={looked} />,
          drawing: <DrawingSelect stores={stores} />,
          scenario: <Scenario stores={looked} />,
          sheet: <p>{say('title.sheetNumber', { sheet: '1', sheets: '1' })}</p>,
        }}
        onStageFault={stageAbsent}
        printed={<Printed stores={stores} />}
        {...(lost ? { page: <Lost ledger={ledger} place={lost} onRetry={retry} /> } : content)}
      />
      {(arrived || lost) && <PanelsDrawn stores={stores} ledger={ledger} />}
    </>
  );
}
