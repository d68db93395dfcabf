import { type KeyboardEvent, type RefObject, useRef } from 'react';
import { heldIn } from '../state/held.ts';
import { VIEWS, type View } from '../state/session.ts';
import type { PlanStores } from '../state/stores.ts';
import { type Nudge, nudgeOf } from './keys.ts';
import type { Lens } from './lens.ts';

/** A key that is being held: one gesture, so many times its step. */
interface Held {
  readonly key: string;
  readonly nudge: Nudge;
  times: number;
}

/** Keys of the stage: a press is one undo step, a held key is one too. */
export function useStageKeys(stores: PlanStores, lens: RefObject<Lens | null>, onView: (view: View) => void) {
  const { document, session } = stores;
  const held = useRef<Held | null>(null);

  const letGo = () => {
    const one = held.current;
    if (one) document.endGesture(one.nudge.say(one.times));
    held.current = null;
  };

  const repeat = (key: string, nudge: Nudge) => {
    if (held.current?.key !== key) {
      letGo();
      held.current = { key, nudge, times: 0 };
      document.beginGesture(nudge.say(0));
    }
    const one = held.current;
    one.times += 1;
    document.updateGesture((start) => one.nudge.change(start, one.times));
  };

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.altKey || !lens.current) return;
    const { hand, pivot } = session.getState();
    const size = event.ctrlKey || event.metaKey ? 'coarse' : event.shiftKey ? 'fine' : 'plain';
    const { key } = event;
    const fixed = heldIn(stores) === 'wrong';
    const nudge = fixed ? null : nudgeOf(key, size, hand, pivot, document.getState().plan, lens.current);
    const view = size === 'coarse' ? undefined : VIEWS[Number(key) - 1];
    if (nudge) {
      if (event.repeat) repeat(key, nudge);
      else document.edit(nudge.say(1), (plan) => nudge.change(plan, 1));
    } else if (view) onView(view);
    else if (!fixed && (key === 's' || key === 't')) session.set({ hand: key === 's' ? 'shift' : 'tilt' });
    else return;
    event.preventDefault();
  };

  return { onKeyDown, onKeyUp: letGo, onBlur: letGo };
}
