import { addAfterEffect, useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useRef } from 'react';

interface DrawnProps {
  revision: number;
  /** Called after the first frame that shows the revision. */
  onDrawn: (revision: number) => void;
  /** Frames take too long for a hand to follow. */
  onSlow: () => void;
}

/** Longer than this a frame, at the median of the last few that followed one another, and it is too slow; ms. */
const SLOW = 60;
const WATCHED = 7;
/** Two frames further apart than this did not follow one another. */
const PAUSE = 400;

/** Asks for one frame per revision and reports when it has been drawn. Stands inside the canvas, last. */
export function Drawn({ revision, onDrawn, onSlow }: DrawnProps) {
  const invalidate = useThree((three) => three.invalidate);
  const committed = useRef(-1);
  const reported = useRef(-1);
  const times = useRef<number[]>([]);
  const last = useRef(0);

  useLayoutEffect(() => {
    committed.current = revision;
    invalidate();
  }, [revision, invalidate]);

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
        if (reported.current === committed.current) return;
        reported.current = committed.current;
        onDrawn(committed.current);
      }),
    [onDrawn, onSlow],
  );

  return null;
}
