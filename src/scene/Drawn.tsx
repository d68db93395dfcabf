import { addAfterEffect, useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useRef } from 'react';

interface DrawnProps {
  revision: number;
  /** Called after the first frame that shows the revision. */
  onDrawn: (revision: number) => void;
}

/** Asks for one frame per revision and reports when it has been drawn. Stands inside the canvas, last. */
export function Drawn({ revision, onDrawn }: DrawnProps) {
  const invalidate = useThree((three) => three.invalidate);
  const committed = useRef(-1);
  const reported = useRef(-1);

  useLayoutEffect(() => {
    committed.current = revision;
    invalidate();
  }, [revision, invalidate]);

  useEffect(
    () =>
      addAfterEffect(() => {
        if (reported.current === committed.current) return;
        reported.current = committed.current;
        onDrawn(committed.current);
      }),
    [onDrawn],
  );

  return null;
}
