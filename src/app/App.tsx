import { lazy, type ReactNode, Suspense, useCallback, useLayoutEffect, useMemo } from 'react';
import type { StoredPlan } from '../io/plans.ts';
import { BudgetPanel } from '../panels/BudgetPanel.tsx';
import { DepthStrip } from '../panels/DepthStrip.tsx';
import { DrawingSelect } from '../panels/DrawingSelect.tsx';
import { HoleReadings } from '../panels/HoleReadings.tsx';
import { LayerWords } from '../panels/LayerWords.tsx';
import { PlansMenu } from '../panels/PlansMenu.tsx';
import { PoseRail } from '../panels/PoseRail.tsx';
import { ReadingsTable } from '../panels/ReadingsTable.tsx';
import { RehearseSentence } from '../panels/RehearseSentence.tsx';
import { Section } from '../panels/Section.tsx';
import { Sentence } from '../panels/Sentence.tsx';
import { WallProfile } from '../panels/WallProfile.tsx';
import { redoLabel, undoLabel } from '../state/document.ts';
import { type HandStores, handStores, seatStores } from '../state/inHand.ts';
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
function Rail({ stores, inHand }: { stores: PlanStores; inHand: HandStores }) {
  const place = useSelected(stores.session, (state) => state.place);
  if (place === 'place') return <PoseRail stores={stores} />;
  return (
    <Suspense fallback={null}>
      {place === 'site' && <SitePanel stores={stores} />}
      {place === 'rehearse' && <RehearsePanel stores={inHand} />}
      {place === 'seat' && <SeatPanel stores={stores} />}
    </Suspense>
  );
}

/** What stands for the readings while the drilling is rehearsed. */
function Hole({ stores }: { stores: PlanStores }) {
  return (
    <>
      <BudgetPanel stores={stores} />
      <HoleReadings stores={stores} />
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
  const rehearsing = place === 'rehearse';
  const shown = { site: stores, place: stores, rehearse: inHand, seat: inSeat }[place];
  const covered = useSelected(stores.live, ({ guessing }) => guessing) && rehearsing;
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
        parts={{
          sentence: rehearsing ? <RehearseSentence stores={stores} /> : <Sentence stores={stores} />,
          rail: <Rail stores={stores} inHand={inHand} />,
          stage: <StageHost stores={shown} ledger={ledger} />,
          section: open(<Section stores={shown} />),
          profile: open(rehearsing ? <DepthStrip stores={stores} /> : <WallProfile stores={shown} />),
          readings: open(rehearsing ? <Hole stores={stores} /> : <ReadingsTable stores={shown} />),
        }}
      />
      <PanelsDrawn stores={stores} ledger={ledger} />
    </>
  );
}
