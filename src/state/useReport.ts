import { useState } from 'react';
import type { DrillReport } from '../core/plan/drillReport.ts';
import { passesShown } from '../core/plan/inHand.ts';
import type { PlanStores } from './stores.ts';
import { usePlan } from './usePlan.ts';
import { useSelected } from './useSelected.ts';

/** The report of the passes as they stand, or the one before them while it is worked out; null where there are no passes. */
export interface ReportNow {
  readonly report: DrillReport | null;
  /** It is of the passes as they stand. */
  readonly fresh: boolean;
}

export function useReport(stores: PlanStores): ReportNow {
  const passes = passesShown(usePlan(stores));
  const report = useSelected(stores.live, (state) => state.report);
  const [kept, setKept] = useState(report);
  if (report && report !== kept) setKept(report);
  if (passes.length === 0) return { report: null, fresh: true };
  return { report: report ?? kept, fresh: report !== null };
}
