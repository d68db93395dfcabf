import { type ChangeEvent, lazy, memo, Suspense, useId, useRef, useState } from 'react';
import type { Plan } from '../core/plan/plan.ts';
import type { Keeping } from '../state/kept.ts';
import type { Offline } from '../state/offline.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { say } from '../words/say.ts';
import { DropPlan } from './DropPlan.tsx';
import { KeptNotice, KeptWord } from './KeptWords.tsx';
import { ShareMenu } from './ShareMenu.tsx';
import { usePlanDesk } from './usePlanDesk.ts';
import './popover.css';
import './plans.css';

const PlanLists = lazy(() => import('./PlanLists.tsx'));

/** Where plans are kept, and the program itself. */
export interface PlanSources {
  keeping: Keeping;
  offline: Offline;
}

/**
 * Plans that come with the program or lay on the table before, files and links to open, and the plan on the table as a file or a link. Opening is one undo
 * step; what cannot be used says why and changes nothing.
 */
export const PlansMenu = memo(function PlansMenu({
  stores,
  ...sources
}: PlanSources & { stores: PlanStores }) {
  const { keeping, offline } = sources;
  const menuId = useId();
  const menu = useRef<HTMLDivElement>(null);
  const share = useRef<HTMLDivElement>(null);
  const input = useRef<HTMLInputElement>(null);
  const [shown, setShown] = useState(false);
  const desk = usePlanDesk(stores);
  const newer = useSelected(offline, (state) => state.newer);

  const open = (plan: Plan) => {
    desk.open(plan);
    menu.current?.hidePopover();
  };
  const openShare = () => {
    menu.current?.hidePopover();
    share.current?.showPopover();
  };
  const openFile = (file: File | undefined) => {
    menu.current?.hidePopover();
    if (file) void desk.openFile(file);
  };
  const chosen = (event: ChangeEvent<HTMLInputElement>) => {
    openFile(event.target.files?.[0]);
    // The same file may be chosen again once it has been mended.
    if (input.current) input.current.value = '';
  };

  return (
    <div className="plans">
      <button type="button" className="popover-open plans-open" popoverTarget={menuId}>
        {say('plans.open')}
        {newer && <em>{say('offline.newer')}</em>}
      </button>
      <button type="button" className="quiet" onClick={desk.save}>
        {say('plans.save')}
      </button>
      <KeptWord stores={stores} keeping={keeping} />
      <div
        className="popover plans-menu"
        id={menuId}
        ref={menu}
        popover="auto"
        role="dialog"
        aria-label={say('plans.heading')}
        onToggle={({ newState }) => setShown(newState === 'open')}
      >
        <button type="button" className="plans-file" onClick={() => input.current?.click()}>
          {say('plans.file')}
        </button>
        <button type="button" className="plans-file" onClick={openShare}>
          {say('link.open')}
        </button>
        {shown && (
          <Suspense fallback={null}>
            <PlanLists keeping={keeping} offline={offline} onOpen={open} />
          </Suspense>
        )}
      </div>
      <ShareMenu stores={stores} place={share} />
      <input ref={input} type="file" accept=".json,application/json" hidden onChange={chosen} />
      <DropPlan onFile={openFile} />
      <div className="notices">
        <KeptNotice stores={stores} keeping={keeping} onSave={desk.save} />
        {desk.lines.length > 0 && (
          <div className="notice" role="alert">
            {desk.lines.map((line) => (
              <p key={line}>{line}</p>
            ))}
            <button type="button" className="notice-dismiss" onClick={desk.dismiss}>
              {say('plans.dismiss')}
            </button>
          </div>
        )}
      </div>
    </div>
  );
});
