import { addAfterEffect, useFrame, useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useRef } from 'react';
import type { LiveStore } from '../state/live.ts';

/** How many of each the graphics processor holds. */
export interface Held {
  readonly geometries: number;
  readonly textures: number;
}

interface DrawnProps {
  live: LiveStore;
  /** Called after the first frame that shows a revision. */
  onDrawn: (revision: number) => void;
  /** Called after every frame. */
  onFrame: (held: Held) => void;
  /** Frames take too long for a hand to follow. */
  onSlow: () => void;
}

/** Longer than this a frame, at the median of the last few that followed one another, and it is too slow; ms. */
const SLOW = 60;
const WATCHED = 7;
/** Two frames further apart than this did not follow one another. */
const PAUSE = 400;

/** Asks for a frame at every new revision, past React's state, and reports which one was drawn. Stands inside the canvas, last. */
export function Drawn({ live, onDrawn, onFrame, onSlow }: DrawnProps) {
  const invalidate = useThree((three) => three.invalidate);
  const gl = useThree((three) => three.gl);
  const drawing = useRef(-1);
  const reported = useRef(-1);
  const times = useRef<number[]>([]);
  const last = useRef(0);

  useLayoutEffect(() => {
    invalidate();
    return live.subscribe(() => invalidate());
  }, [live, invalidate]);

  useFrame(() => {
    drawing.current = live.getState().revision;
  });

  useEffect(
    () =>
      addAfterEffect((now) => {
        const took = now - last.current;
        last.current = now;
        if (took < PAUSE) {
          times.current = [...times.current, took].slice(-WATCHED);
          const sorted = [...times.current].sort((a, b) => a - b);
          if (sorted.length === WATCHED && sorted[3] > SLOW) onSlow();
        }
        onFrame(gl.info.memory);
        if (reported.current === drawing.current) return;
        reported.current = drawing.current;
        onDrawn(drawing.current);
      }),
    [gl, onDrawn, onFrame, onSlow],
  );

  return null;
}
