import { useCallback, useEffect, useMemo, useState } from 'react';
import type { Plan } from '../core/plan/plan.ts';
import { exerciseInAddress, planInAddress } from '../io/link/address.ts';
import { printPlanFile } from '../io/printPlanFile.ts';
import type { PlanStores } from '../state/stores.ts';
import { formatNumber } from '../words/format.ts';
import { planTitle } from '../words/planTitle.ts';
import { say } from '../words/say.ts';
import { download, textOf } from './files.ts';
import { NOTHING_TOLD, refusal, success, type Told } from './told.ts';

/** How plans come on to the table and leave it. What happened is said in `lines`. */
export interface PlanDesk {
  readonly lines: readonly string[];
  readonly dismiss: () => void;
  readonly open: (plan: Plan) => void;
  readonly openFile: (file: File) => Promise<void>;
  readonly save: () => void;
}

/** Opens what an address holds. What reads links is loaded only when there is one. */
async function openAddress(stores: PlanStores, plan: string | null, exercise: string | null): Promise<Told> {
  try {
    const { openExerciseLink, openPlanLink } = await import('./openLink.ts');
    return plan === null ? openExerciseLink(stores, exercise ?? '') : openPlanLink(stores, plan);
  } catch {
    return refusal([say('link.refused', { fault: say('link.unready') })]);
  }
}

/** Opens a file. What reads files is loaded only when there is one. */
async function openFrom(stores: PlanStores, file: File): Promise<Told> {
  const refused = (fault: string) => say('plans.refused', { file: file.name, fault });
  const text = await textOf(file);
  if (text === null) return refusal([refused(say('plans.unreadable'))]);
  try {
    return (await import('./openFile.ts')).openText(stores, text, refused);
  } catch {
    return refusal([refused(say('link.unready'))]);
  }
}

/** A plan in the page's address is opened once and taken out of it: what is done afterwards outlives a reload. */
function useLinks(stores: PlanStores, tell: (told: Told) => void): void {
  useEffect(() => {
    const follow = () => {
      const plan = planInAddress(window.location.href);
      const exercise = exerciseInAddress(window.location.href);
      if (plan === null && exercise === null) return;
      window.history.replaceState(null, '', window.location.href.split('#')[0]);
      void openAddress(stores, plan, exercise).then(tell);
    };
    follow();
    window.addEventListener('hashchange', follow);
    return () => window.removeEventListener('hashchange', follow);
  }, [stores, tell]);
}

export function usePlanDesk(stores: PlanStores): PlanDesk {
  const [told, tell] = useState(NOTHING_TOLD);
  useLinks(stores, tell);
  useEffect(() => {
    if (!told.passing) return;
    return stores.document.subscribe(() => tell(NOTHING_TOLD));
  }, [stores, told]);

  const open = useCallback(
    (plan: Plan) => {
      stores.document.open(say('edit.open', { title: planTitle(plan) }), plan);
      tell(success([]));
    },
    [stores],
  );

  const openFile = useCallback(async (file: File) => tell(await openFrom(stores, file)), [stores]);

  const save = useCallback(() => {
    const { plan } = stores.document.getState();
    const tooth = formatNumber({ value: plan.site.tooth, unit: 'count' });
    download(say('plans.fileName', { tooth }), printPlanFile(plan));
    stores.document.markSaved();
  }, [stores]);

  const dismiss = useCallback(() => tell(NOTHING_TOLD), []);
  const { lines } = told;
  return useMemo(() => ({ lines, dismiss, open, openFile, save }), [lines, dismiss, open, openFile, save]);
}
