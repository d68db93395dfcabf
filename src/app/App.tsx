import { lazy, Suspense, useCallback, useLayoutEffect } from 'react';
import { redoLabel, undoLabel } from '../state/document.ts';
import type { Stores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { say } from '../words/say.ts';
import type { DrawnLedger } from './revision.ts';
import { Shell } from './Shell.tsx';
import { useHistoryKeys } from './useHistoryKeys.ts';

const Stage = lazy(() => import('../scene/Stage.tsx'));

export interface Titled {
  readonly title: string;
}

export interface AppProps {
  stores: Stores<Titled>;
  ledger: DrawnLedger;
}

/** The whole page over its stores: which part gets what, and nothing more. */
export function App({ stores, ledger }: AppProps) {
  const { document, live } = stores;
  const revision = useSelected(live, (state) => state.revision);
  const title = useSelected(document, (state) => state.plan.title);
  const history = {
    undoLabel: useSelected(document, undoLabel),
    redoLabel: useSelected(document, redoLabel),
    onUndo: document.undo,
    onRedo: document.redo,
  };
  useHistoryKeys(document.undo, document.redo);

  useLayoutEffect(() => ledger.drawn('panels', revision), [ledger, revision]);
  const stageDrawn = useCallback((shown: number) => ledger.drawn('stage', shown), [ledger]);
  const stageAbsent = useCallback(() => ledger.absent('stage'), [ledger]);

  return (
    <Shell
      history={history}
      title={{ scenario: <p>{title}</p> }}
      onStageFault={stageAbsent}
      parts={{
        stage: (
          <Suspense fallback={<p className="calm">{say('stage.loading')}</p>}>
            <Stage revision={revision} onDrawn={stageDrawn} onAbsent={stageAbsent} />
          </Suspense>
        ),
      }}
    />
  );
}
