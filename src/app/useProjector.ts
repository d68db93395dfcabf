import { useCallback, useEffect, useLayoutEffect } from 'react';
import type { LiveStore } from '../state/live.ts';
import { useSelected } from '../state/useSelected.ts';

export interface Projector {
  on: boolean;
  toggle: () => void;
}

const ignore = () => undefined;

/**
 * The page before a class: type grows (`data-projector` on the root element) and the browser is asked for its
 * full screen. Where it has none, or refuses, the page is large in its window. Leaving the full screen ends it;
 * so does Escape, unless that puts away a menu or a drag.
 */
export function useProjector(live: LiveStore): Projector {
  const on = useSelected(live, (state) => state.projector);

  useLayoutEffect(() => {
    document.documentElement.toggleAttribute('data-projector', on);
  }, [on]);

  useEffect(() => {
    const leave = () => {
      if (!document.fullscreenElement) live.set({ projector: false });
    };
    const onKeyDown = (event: KeyboardEvent) => {
      const busy = live.getState().dragging !== null || document.querySelector(':popover-open');
      if (event.key === 'Escape' && !busy) leave();
    };
    document.addEventListener('fullscreenchange', leave);
    // Heard on the way down: a drag that this key ends is still one here.
    window.addEventListener('keydown', onKeyDown, true);
    return () => {
      document.removeEventListener('fullscreenchange', leave);
      window.removeEventListener('keydown', onKeyDown, true);
    };
  }, [live]);

  const toggle = useCallback(() => {
    const next = !live.getState().projector;
    live.set({ projector: next });
    if (next) document.documentElement.requestFullscreen?.().catch(ignore);
    else if (document.fullscreenElement) document.exitFullscreen().catch(ignore);
  }, [live]);

  return { on, toggle };
}
