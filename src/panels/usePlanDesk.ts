import { useCallback, useEffect, useMemo, useState } from 'react';
import type { Plan } from '../core/plan/plan.ts';
import type { ReadResult } from '../core/plan/read.ts';
import type { Exercise } from '../core/teaching/exercise.ts';
import { exerciseInAddress, planInAddress } from '../io/link/address.ts';
import { parsePlanFile, printPlanFile } from '../io/planFile.ts';
import { sitDown } from '../state/sitting.ts';
import type { PlanStores } from '../state/stores.ts';
import { formatNumber } from '../words/format.ts';
import { planTitle } from '../words/planTitle.ts';
import { presentFault } from '../words/presentFault.ts';
import { type PlainKey, say } from '../words/say.ts';
import { download, textOf } from './files.ts';

/** How plans come on to the table and leave it. What happened is said in `lines`. */
export interface PlanDesk {
  readonly lines: readonly string[];
  readonly dismiss: () => void;
  readonly open: (plan: Plan) => void;
  readonly openFile: (file: File) => Promise<void>;
  readonly save: () => void;
}

/** What is to be said; of what went well, only until the plan is changed again. */
interface Told {
  readonly lines: readonly string[];
  readonly passing: boolean;
}

const NOTHING: Told = { lines: [], passing: false };
const refusal = (lines: readonly string[]): Told => ({ lines, passing: false });
const success = (lines: readonly string[]): Told => ({ lines, passing: true });

type Faults = Extract<ReadResult, { ok: false }>['faults'];

const furtherFaults = (more: number): string[] =>
  more > 0 ? [say('plans.refusedMore', { count: formatNumber({ value: more, unit: 'count' }) })] : [];

const faultLines = ([first, ...more]: Faults, refused: (fault: string) => string): string[] => [
  refused(first ? presentFault(first) : ''),
  ...furtherFaults(more.length),
];

const WHY = { long: 'link.long', newer: 'link.newer', broken: 'link.broken' } as const satisfies Record<
  string,
  PlainKey
>;

const linkRefused = (fault: string): string => say('link.refused', { fault });

/** Opens the plan of a link. What reads links is loaded only when there is one. */
async function openLink({ document }: PlanStores, hash: string): Promise<Told> {
  try {
    const { readPlanHash } = await import('../io/link/planLink.ts');
    const read = readPlanHash(hash);
    if (!read.ok && read.why === 'plan') return refusal(faultLines(read.faults, linkRefused));
    if (!read.ok) return refusal([linkRefused(say(WHY[read.why]))]);
    document.open(say('link.edit'), read.plan);
    return success([say('link.opened')]);
  } catch {
    return refusal([linkRefused(say('link.unready'))]);
  }
}

/** Puts an exercise on the table and says so. */
function begin(stores: PlanStores, exercise: Exercise): Told {
  const { title } = exercise;
  sitDown(stores, exercise, say('edit.exercise', { title }));
  return success([say('exercise.opened', { title })]);
}

/** Opens the exercise of a link. */
async function openExerciseLink(stores: PlanStores, hash: string): Promise<Told> {
  try {
    const { readExerciseHash } = await import('../io/link/exerciseLink.ts');
    const read = readExerciseHash(hash);
    if (read.ok) return begin(stores, read.exercise);
    if (read.why === 'exercise') return refusal(faultLines(read.faults, linkRefused));
    return refusal([linkRefused(say(WHY[read.why]))]);
  } catch {
    return refusal([linkRefused(say('link.unready'))]);
  }
}

/** The text of an exercise file says so near its beginning. */
const isExercise = (text: string): boolean => /"format":\s*"ridgewright-exercise"/.test(text);

/** Opens an exercise file; what reads it is loaded only when there is one. */
async function openExerciseFile(
  stores: PlanStores,
  text: string,
  refused: (fault: string) => string,
): Promise<Told> {
  const { parseExerciseFile } = await import('../io/exerciseFile.ts');
  const read = parseExerciseFile(text);
  return read.ok ? begin(stores, read.value) : refusal(faultLines(read.faults, refused));
}

/** A plan in the page's address is opened once and taken out of it: what is done afterwards outlives a reload. */
function useLinks(stores: PlanStores, tell: (told: Told) => void): void {
  useEffect(() => {
    const follow = () => {
      const plan = planInAddress(window.location.href);
      const exercise = exerciseInAddress(window.location.href);
      if (plan === null && exercise === null) return;
      window.history.replaceState(null, '', window.location.href.split('#')[0]);
      if (plan !== null) void openLink(stores, plan).then(tell);
      if (exercise !== null) void openExerciseLink(stores, exercise).then(tell);
    };
    follow();
    window.addEventListener('hashchange', follow);
    return () => window.removeEventListener('hashchange', follow);
  }, [stores, tell]);
}

export function usePlanDesk(stores: PlanStores): PlanDesk {
  const [told, tell] = useState(NOTHING);
  useLinks(stores, tell);
  useEffect(() => {
    if (!told.passing) return;
    return stores.document.subscribe(() => tell(NOTHING));
  }, [stores, told]);

  const put = useCallback(
    (plan: Plan, lines: readonly string[] = []) => {
      stores.document.open(say('edit.open', { title: planTitle(plan) }), plan);
      tell(success(lines));
    },
    [stores],
  );

  const openFile = useCallback(
    async (file: File) => {
      const refused = (fault: string) => say('plans.refused', { file: file.name, fault });
      const text = await textOf(file);
      if (text === null) return tell(refusal([refused(say('plans.unreadable'))]));
      if (isExercise(text)) return tell(await openExerciseFile(stores, text, refused));
      const read = parsePlanFile(text);
      if (!read.ok) return tell(refusal(faultLines(read.faults, refused)));
      const opened = say('plans.opened', { title: planTitle(read.plan) });
      put(read.plan, read.migrated.length > 0 ? [opened, say('plans.migrated')] : []);
    },
    [put, stores],
  );

  const save = useCallback(() => {
    const { plan } = stores.document.getState();
    const tooth = formatNumber({ value: plan.site.tooth, unit: 'count' });
    download(say('plans.fileName', { tooth }), printPlanFile(plan));
    stores.document.markSaved();
  }, [stores]);

  const dismiss = useCallback(() => tell(NOTHING), []);
  const open = useCallback((plan: Plan) => put(plan), [put]);
  const { lines } = told;
  return useMemo(() => ({ lines, dismiss, open, openFile, save }), [lines, dismiss, open, openFile, save]);
}
