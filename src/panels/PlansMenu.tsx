import { type ChangeEvent, memo, useId, useRef, useState } from 'react';
import type { Plan } from '../core/plan/plan.ts';
import type { StoredPlan } from '../io/plans.ts';
import type { Keeping } from '../state/kept.ts';
import type { Offline } from '../state/offline.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { say } from '../words/say.ts';
import { DropPlan } from './DropPlan.tsx';
import { KeptNotice, KeptWord } from './KeptWords.tsx';
import { LastingWords } from './LastingWords.tsx';
import { RecentPlans } from './RecentPlans.tsx';
import { ShareMenu } from './ShareMenu.tsx';
import { usePlanDesk } from './usePlanDesk.ts';
import './popover.css';
import './plans.css';

/** Where plans come from and where they are kept. */
export interface PlanSources {
  scenarios: readonly StoredPlan[];
  sites: readonly StoredPlan[];
  keeping: Keeping;
  offline: Offline;
}

interface ListProps {
  heading: string;
  plans: readonly StoredPlan[];
  onOpen: (plan: Plan) => void;
  className?: string;
}

function PlanList({ heading, plans, onOpen, className }: ListProps) {
  const id = useId();
  return (
    <>
      <h2 className="caption" id={id}>
        {heading}
      </h2>
      <ul aria-labelledby={id} className={className}>
        {plans.map((stored) => (
          <li key={stored.id}>
            <button type="button" data-plan={stored.id} onClick={() => onOpen(stored.plan)}>
              {stored.plan.title}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

/** What the page leaves on this machine, or that it leaves nothing. */
function MachineWords({ keeping, offline }: Pick<PlanSources, 'keeping' | 'offline'>) {
  const never = useSelected(keeping, ({ status }) => status === 'never');
  const { ready, newer } = useSelected(offline, (state) => state);
  return (
    <>
      <h2 className="caption">{say('keep.heading')}</h2>
      {never ? <p className="caption">{say('portable.note')}</p> : <LastingWords />}
      {ready && <p className="caption">{say('offline.ready')}</p>}
      {newer && (
        <>
          <p className="caption">{say('offline.note')}</p>
          <button type="button" className="plans-ask" onClick={offline.takeNewer}>
            {say('offline.take')}
          </button>
        </>
      )}
    </>
  );
}

/**
 * Plans that come with the program or lay on the table before, files and links to open, and the plan on the table as a file or a link. Opening is one undo
 * step; what cannot be used says why and changes nothing.
 */
export const PlansMenu = memo(function PlansMenu({
  stores,
  ...sources
}: PlanSources & { stores: PlanStores }) {
  const { scenarios, sites, keeping, offline } = sources;
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
        {shown && <RecentPlans keeping={keeping} onOpen={open} />}
        <PlanList heading={say('plans.scenarios')} plans={scenarios} onOpen={open} />
        <PlanList className="plans-sites" heading={say('plans.sites')} plans={sites} onOpen={open} />
        <p className="caption">{say('plans.note')}</p>
        {shown && <MachineWords keeping={keeping} offline={offline} />}
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
