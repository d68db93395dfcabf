import { lazy, type ReactNode, Suspense, useCallback, useLayoutEffect, useMemo } from 'react';
import type { StoredPlan } from '../io/plans.ts';
import { BudgetPanel } from '../panels/BudgetPanel.tsx';
import { ContactChart } from '../panels/ContactChart.tsx';
import { DepthStrip } from '../panels/DepthStrip.tsx';
import { DrawingSelect } from '../panels/DrawingSelect.tsx';
import { HoleReadings } from '../panels/HoleReadings.tsx';
import { LayerWords } from '../panels/LayerWords.tsx';
import { PlansMenu } from '../panels/PlansMenu.tsx';
import { PoseRail } from '../panels/PoseRail.tsx';
import { PrintedRehearsal } from '../panels/PrintedRehearsal.tsx';
import { ReadingsTable } from '../panels/ReadingsTable.tsx';
import { RehearseSentence } from '../panels/RehearseSentence.tsx';
import { SeatSentence } from '../panels/SeatSentence.tsx';
import { SeatStop } from '../panels/SeatStop.tsx';
import { Section } from '../panels/Section.tsx';
import { Sentence } from '../panels/Sentence.tsx';
import { WallProfile } from '../panels/WallProfile.tsx';
import { redoLabel, undoLabel } from '../state/document.ts';
import { type HandStores, handStores, seatStores } from '../state/inHand.ts';
import type { Place } from '../state/session.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { formatNumber } from '../words/format.ts';
import { say } from '../words/say.ts';
import { Header } from './Header.tsx';
import type { DrawnLedger } from './revision.ts';
import { Shell } from './Shell.tsx';
import { useHistoryKeys } from './useHistoryKeys.ts';
import { useProjector } from './useProjector.ts';

const SitePanel = lazy(() => import('../panels/SitePanel.tsx'));
const RehearsePanel = lazy(() => import('../panels/RehearsePanel.tsx'));
const SeatPanel = lazy(() => import('../panels/SeatPanel.tsx'));
const Stage = lazy(() => import('../scene/Stage.tsx'));

export interface AppProps {
  stores: PlanStores;
  ledger: DrawnLedger;
  scenarios: readonly StoredPlan[];
  sites: readonly StoredPlan[];
}

interface LedgerProps {
  stores: PlanStores;
  ledger: DrawnLedger;
}

/** The header, redrawn for itself when the history changes. */
function PlanHeader({ stores, scenarios, sites }: Omit<AppProps, 'ledger'>) {
  const { document, session, live } = stores;
  const projector = useProjector(live);
  return (
    <Header
      place={useSelected(session, ({ place }) => place)}
      onPlace={(place) => session.set({ place })}
      undoLabel={useSelected(document, undoLabel)}
      redoLabel={useSelected(document, redoLabel)}
      onUndo={document.undo}
      onRedo={document.redo}
      projector={projector.on}
      onProjector={projector.toggle}
    >
      <PlansMenu stores={stores} scenarios={scenarios} sites={sites} />
    </Header>
  );
}

/** What the plan on the table is, for the title block. */
function Scenario({ stores }: { stores: PlanStores }) {
  const title = useSelected(stores.document, ({ plan }) => plan.title);
  const tooth = useSelected(stores.document, ({ plan }) => plan.site.tooth);
  const site = say('title.site', { tooth: formatNumber({ value: tooth, unit: 'count' }) });
  return <p>{title === '' ? site : title}</p>;
}

/** Reports that the panels show the newest revision. Stands after them and is committed with them. */
function PanelsDrawn({ stores, ledger }: LedgerProps) {
  const revision = useSelected(stores.live, (state) => state.revision);
  useLayoutEffect(() => ledger.drawn('panels', revision), [ledger, revision]);
  return null;
}

/** What stands at the left: the fields of the place that is open. */
function Rail({ stores, inHand, inSeat }: { stores: PlanStores; inHand: HandStores; inSeat: HandStores }) {
  const place = useSelected(stores.session, (state) => state.place);
  if (place === 'place') return <PoseRail stores={stores} />;
  return (
    <Suspense fallback={null}>
      {place === 'site' && <SitePanel stores={stores} />}
      {place === 'rehearse' && <RehearsePanel stores={inHand} />}
      {place === 'seat' && <SeatPanel stores={inSeat} />}
    </Suspense>
  );
}

/** The sentence over the page: of the pose, of the rehearsal or of the seating. */
function Above({ place, stores }: { place: Place; stores: PlanStores }) {
  if (place === 'rehearse') return <RehearseSentence stores={stores} />;
  return place === 'seat' ? <SeatSentence stores={stores} /> : <Sentence stores={stores} />;
}

interface PlaceProps {
  place: Place;
  stores: PlanStores;
  /** What is seen in the implant's place. */
  shown: PlanStores;
  inSeat: HandStores;
}

/** The drawing beside the section. */
function Beside({ place, stores, shown, inSeat }: PlaceProps) {
  if (place === 'rehearse') return <DepthStrip stores={stores} />;
  return place === 'seat' ? <ContactChart stores={inSeat} /> : <WallProfile stores={shown} />;
}

/** What stands under section and drawing: readings of the hole, of the stop, of the pose. */
function Under({ place, stores, shown }: PlaceProps) {
  if (place === 'rehearse')
    return (
      <>
        <BudgetPanel stores={stores} />
        <HoleReadings stores={stores} />
      </>
    );
  return (
    <>
      {place === 'seat' && <SeatStop stores={stores} />}
      <ReadingsTable stores={shown} />
    </>
  );
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

/** The whole page over its stores: which part gets what, and nothing more. */
export function App({ stores, ledger, scenarios, sites }: AppProps) {
  const { document, session } = stores;
  const place = useSelected(session, (state) => state.place);
  const inHand = useMemo(() => handStores(stores), [stores]);
  const inSeat = useMemo(() => seatStores(stores), [stores]);
  const shown = { site: stores, place: stores, rehearse: inHand, seat: inSeat }[place];
  const here = { place, stores, shown, inSeat };
  const covered = useSelected(stores.live, ({ guessing }) => guessing) && place === 'rehearse';
  const open = (part: ReactNode): ReactNode =>
    covered ? <p className="calm">{say('guess.hidden')}</p> : part;
  useHistoryKeys(document.undo, document.redo);
  const stageAbsent = useCallback(() => ledger.absent('stage'), [ledger]);

  return (
    <>
      <Shell
        place={place}
        header={<PlanHeader stores={stores} scenarios={scenarios} sites={sites} />}
        title={{
          layers: <LayerWords stores={stores} />,
          drawing: <DrawingSelect stores={stores} />,
          scenario: <Scenario stores={stores} />,
          sheet: <p>{say('title.sheetNumber', { sheet: '1', sheets: '1' })}</p>,
        }}
        onStageFault={stageAbsent}
        printed={<PrintedRehearsal stores={stores} />}
        parts={{
          sentence: <Above place={place} stores={stores} />,
          rail: <Rail stores={stores} inHand={inHand} inSeat={inSeat} />,
          stage: <StageHost stores={shown} ledger={ledger} />,
          section: open(<Section stores={shown} />),
          profile: open(<Beside {...here} />),
          readings: open(<Under {...here} />),
        }}
      />
      <PanelsDrawn stores={stores} ledger={ledger} />
    </>
  );
}
