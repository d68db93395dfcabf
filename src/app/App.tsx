import { lazy, type ReactNode, Suspense, useCallback, useLayoutEffect, useMemo } from 'react';
import type { Hidden } from '../core/teaching/exercise.ts';
import { DrawingSelect } from '../panels/DrawingSelect.tsx';
import { ExerciseSentence } from '../panels/exercise/ExerciseSentence.tsx';
import { HandOver } from '../panels/HandOver.tsx';
import { LayerWords } from '../panels/LayerWords.tsx';
import { Models } from '../panels/Models.tsx';
import { type PlanSources, PlansMenu } from '../panels/PlansMenu.tsx';
import { PrintedRehearsal } from '../panels/PrintedRehearsal.tsx';
import { Section } from '../panels/Section.tsx';
import { redoLabel, undoLabel } from '../state/document.ts';
import { handStores, seatStores } from '../state/inHand.ts';
import { NOTHING_HIDDEN, placesOf, type Sitting } from '../state/sitting.ts';
import type { PlanStores } from '../state/stores.ts';
import { teachStores } from '../state/teach.ts';
import { useSelected } from '../state/useSelected.ts';
import { useSitting } from '../state/useSitting.ts';
import { veiled } from '../state/veiled.ts';
import { planTitle } from '../words/planTitle.ts';
import { say } from '../words/say.ts';
import type { ModelMaker } from '../worker/modelMaker.ts';
import { Header } from './Header.tsx';
import type { Bench, Views } from './places/place.ts';
import { partsOf } from './places/places.ts';
import type { DrawnLedger } from './revision.ts';
import { type Parts, Shell } from './Shell.tsx';
import { useHistoryKeys } from './useHistoryKeys.ts';
import { useProjector } from './useProjector.ts';

const Stage = lazy(() => import('../scene/Stage.tsx'));

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
      {!sitting && (
        <HandOver stores={stores}>
          <Models stores={stores} maker={maker} />
        </HandOver>
      )}
    </Header>
  );
}

/** What the plan on the table is, for the title block. */
function Scenario({ stores }: { stores: PlanStores }) {
  return <p>{useSelected(stores.document, ({ plan }) => planTitle(plan))}</p>;
}

/** Reports that the panels show the newest revision. Stands after them and is committed with them. */
function PanelsDrawn({ stores, ledger }: LedgerProps) {
  const revision = useSelected(stores.live, (state) => state.revision);
  useLayoutEffect(() => ledger.drawn('panels', revision), [ledger, revision]);
  return null;
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

interface BenchProps extends Views {
  bench: Bench;
  ledger: DrawnLedger;
  covers: Covers;
  /** The exercise that is done here, or null. */
  sitting: Sitting | null;
}

/** The parts of a place at the table. */
function benchParts({ bench, ledger, covers, sitting, ...views }: BenchProps): Parts {
  const { Sentence, Rail, Beside, Under, Section: Own } = bench;
  const shown = bench.shown(views);
  const open = (part: keyof Covers, content: ReactNode): ReactNode =>
    covers[part] === null ? content : <p className="calm">{covers[part]}</p>;
  return {
    sentence: sitting ? (
      <ExerciseSentence stores={views.stores} sitting={sitting} />
    ) : (
      <Sentence {...views} />
    ),
    rail: (
      <Suspense fallback={null}>
        <Rail {...views} />
      </Suspense>
    ),
    stage: <StageHost stores={shown} ledger={ledger} />,
    section: open('section', Own ? <Own {...views} /> : <Section stores={shown} />),
    profile: open('profile', <Beside {...views} />),
    readings: open('readings', <Under {...views} />),
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

/** The whole page over its stores: which part gets what, and nothing more. */
export function App({ stores, ledger, plans, maker }: AppProps) {
  const { document, session } = stores;
  const place = useSelected(session, (state) => state.place);
  const sitting = useSitting(stores);
  const hidden = sitting?.exercise.hidden ?? NOTHING_HIDDEN;
  const views = useMemo(() => {
    const seen = { ...stores, session: veiled(stores.session, hidden) };
    return {
      stores: seen,
      inHand: handStores(seen),
      inSeat: seatStores(seen),
      inTeach: teachStores(seen),
    };
  }, [stores, hidden]);
  const guessing = useSelected(stores.live, (state) => state.guessing) && place === 'rehearse';
  const asking = useSelected(stores.live, (state) => state.answerHidden) && place === 'teach';
  const here = useSelected(session, partsOf);
  const looked = here.kind === 'bench' ? here.shown(views) : views.stores;
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
        printed={<PrintedRehearsal stores={stores} />}
        {...(here.kind === 'page'
          ? { page: <here.Page {...views} ledger={ledger} /> }
          : {
              names: here.names,
              layout: here.layout,
              parts: benchParts({
                bench: here,
                ledger,
                covers: coversOf({ guessing, asking, hidden }),
                sitting,
                ...views,
              }),
            })}
      />
      <PanelsDrawn stores={stores} ledger={ledger} />
    </>
  );
}
