import { useState } from 'react';
import type { Site } from '../core/anatomy/site.ts';
import { type SiteNumber, takeSiteNumber, type WaitingEdit } from '../core/plan/siteFields.ts';
import type { PlanStores } from '../state/stores.ts';
import { presentSiteNumber } from '../words/presentSite.ts';
import { say } from '../words/saySite.ts';
import type { SiteActs } from './SiteField.tsx';

type Waiting = WaitingEdit['waiting'];

const NONE: Waiting = new Map();

/**
 * Edits of the site's numbers, each one undo step. Numbers that contradict the others wait beside the plan; they are forgotten when the
 * site changes by another way (undo, another plan).
 */
export function useSiteNumbers({ document }: PlanStores, site: Site) {
  const [held, setHeld] = useState<{ site: Site; waiting: Waiting }>({ site, waiting: NONE });
  const [shown, setShown] = useState('gap');
  const waiting = held.site === site ? held.waiting : NONE;

  const labelOf = (number: SiteNumber, value: number): string => {
    const { label, quantity } = presentSiteNumber({ ...number, value }, site);
    return say('edit.siteNumber', { field: label, value: quantity });
  };

  const set = (number: SiteNumber, value: number) => {
    const { gesture, plan } = document.getState();
    const made = takeSiteNumber({ plan: gesture?.start ?? plan, waiting }, number.path, value);
    if (gesture && made.waiting.has(number.path)) return;
    setHeld({ site: made.plan.site, waiting: made.waiting });
    if (gesture) document.updateGesture(() => made.plan);
    else document.edit(labelOf(number, value), () => made.plan);
  };

  const hold = (number: SiteNumber, phase: 'begin' | 'end') => {
    if (phase === 'begin') document.beginGesture(labelOf(number, number.value));
    else document.endGesture();
  };

  const acts: SiteActs = { set, hold, show: setShown };
  return { acts, waiting, shown };
}
