import { useEffect } from 'react';
import { notInPlan } from '../../core/teaching/trajectories.ts';
import type { TeachStores } from '../../state/teach.ts';
import { chooseTrajectory } from './choose.ts';
import { stepLesson } from './lesson.ts';
import { TRAJECTORY_GROUPS } from './trajectories.ts';

/** Takes arrows for itself. */
const BUSY = 'input, select, textarea, [role="slider"], [role="spinbutton"], [role="application"]';

/** The way a key steps, or 0: the Page keys wherever the focus is, the arrows where nothing else takes them. */
function wayOf({ key, target, altKey, ctrlKey, metaKey }: KeyboardEvent): 1 | -1 | 0 {
  if (altKey || ctrlKey || metaKey) return 0;
  const field = target instanceof Element && target.matches('input:not([type="radio"]), select, textarea');
  if (key === 'PageDown') return field ? 0 : 1;
  if (key === 'PageUp') return field ? 0 : -1;
  if (target instanceof Element && target.closest(BUSY)) return 0;
  return key === 'ArrowRight' ? 1 : key === 'ArrowLeft' ? -1 : 0;
}

/** Brings up the next trajectory that is one in this plan, or the one before. */
function stepTrajectory(stores: TeachStores, way: 1 | -1): void {
  const { plan } = stores.planned.document.getState();
  const ids = TRAJECTORY_GROUPS.flatMap(({ ids: of }) => [...of]).filter(
    (id) => notInPlan(plan, id) === null,
  );
  const here = ids.indexOf(stores.live.getState().trajectory as (typeof ids)[number]);
  const next = ids[(here + way + ids.length) % ids.length];
  if (next) chooseTrajectory(stores, next);
}

/** Keys before a class: a step on or back, the answer hidden, the ring that points. */
export function useStepKeys(stores: TeachStores): void {
  const { live } = stores;
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.defaultPrevented) return;
      const way = wayOf(event);
      const plain = !(event.ctrlKey || event.metaKey || event.altKey);
      const field = event.target instanceof Element && event.target.matches('input, select, textarea');
      const lesson = stores.session.getState().teaching === 'lesson';
      if (way !== 0) (lesson ? stepLesson : stepTrajectory)(stores, way);
      else if (plain && !field && event.key === 'h')
        live.set({ answerHidden: !live.getState().answerHidden });
      else if (plain && !field && event.key === 'p') live.set({ pointer: !live.getState().pointer });
      else return;
      event.preventDefault();
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [stores, live]);
}
