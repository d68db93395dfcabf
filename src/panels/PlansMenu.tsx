import { type ChangeEvent, memo, useId, useRef, useState } from 'react';
import type { Plan } from '../core/plan/plan.ts';
import { parsePlanFile, printPlanFile } from '../io/planFile.ts';
import type { StoredPlan } from '../io/plans.ts';
import { isSaved } from '../state/document.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { formatNumber } from '../words/format.ts';
import { presentFault } from '../words/presentFault.ts';
import { say } from '../words/say.ts';
import { download, textOf } from './files.ts';
import './plans.css';

export interface PlansMenuProps {
  stores: PlanStores;
  scenarios: readonly StoredPlan[];
  sites: readonly StoredPlan[];
}

interface ListProps {
  heading: string;
  plans: readonly StoredPlan[];
  onOpen: (plan: Plan) => void;
}

function PlanList({ heading, plans, onOpen }: ListProps) {
  const id = useId();
  return (
    <>
      <h2 className="caption" id={id}>
        {heading}
      </h2>
      <ul aria-labelledby={id}>
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

/**
 * Plans that come with the program, files to open, and the plan on the table as a file. Opening is one undo
 * step; a file that cannot be used says why and changes nothing.
 */
export const PlansMenu = memo(function PlansMenu({ stores, scenarios, sites }: PlansMenuProps) {
  const { document: plans } = stores;
  const saved = useSelected(plans, isSaved);
  const menuId = useId();
  const menu = useRef<HTMLDivElement>(null);
  const input = useRef<HTMLInputElement>(null);
  const [notice, setNotice] = useState<readonly string[]>([]);

  const open = (plan: Plan, lines: readonly string[] = []) => {
    plans.open(say('edit.open', { title: plan.title }), plan);
    setNotice(lines);
    menu.current?.hidePopover();
  };

  const openFile = async (event: ChangeEvent<HTMLInputElement>) => {
    const [file] = event.target.files ?? [];
    if (!file) return;
    const text = await textOf(file);
    // The same file may be chosen again once it has been mended.
    if (input.current) input.current.value = '';
    const refused = (fault: string) => say('plans.refused', { file: file.name, fault });
    menu.current?.hidePopover();
    if (text === null) {
      setNotice([refused(say('plans.unreadable'))]);
      return;
    }
    const read = parsePlanFile(text);
    if (read.ok) {
      const opened = say('plans.opened', { title: read.plan.title });
      open(read.plan, read.migrated.length > 0 ? [opened, say('plans.migrated')] : []);
      return;
    }
    const [first, ...more] = read.faults;
    const count = formatNumber({ value: more.length, unit: 'count' });
    setNotice([
      refused(presentFault(first)),
      ...(more.length > 0 ? [say('plans.refusedMore', { count })] : []),
    ]);
  };

  const save = () => {
    const { plan } = plans.getState();
    const tooth = formatNumber({ value: plan.site.tooth, unit: 'count' });
    download(say('plans.fileName', { tooth }), printPlanFile(plan));
    plans.markSaved();
  };

  return (
    <div className="plans">
      <button type="button" className="plans-open" popoverTarget={menuId}>
        {say('plans.open')}
      </button>
      <button type="button" className="quiet" onClick={save}>
        {say('plans.save')}
      </button>
      <span className="plans-state" data-saved={saved}>
        {saved ? say('plans.saved') : say('plans.unsaved')}
      </span>
      <div
        className="plans-menu"
        id={menuId}
        ref={menu}
        popover="auto"
        role="dialog"
        aria-label={say('plans.heading')}
      >
        <button type="button" className="plans-file" onClick={() => input.current?.click()}>
          {say('plans.file')}
        </button>
        <PlanList heading={say('plans.scenarios')} plans={scenarios} onOpen={open} />
        <PlanList heading={say('plans.sites')} plans={sites} onOpen={open} />
        <p className="caption">{say('plans.note')}</p>
      </div>
      <input
        ref={input}
        type="file"
        accept=".json,application/json"
        hidden
        onChange={(event) => void openFile(event)}
      />
      {notice.length > 0 && (
        <div className="notice" role="alert">
          {notice.map((line) => (
            <p key={line}>{line}</p>
          ))}
          <button type="button" className="notice-dismiss" onClick={() => setNotice([])}>
            {say('plans.dismiss')}
          </button>
        </div>
      )}
    </div>
  );
});
