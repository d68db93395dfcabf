import { Canvas, type RootState } from '@react-three/fiber';
import { type ReactNode, useEffect, useState } from 'react';
import { say } from '../words/say.ts';
import './console.ts';
import { Drawn } from './Drawn.tsx';
import { drawsWebGL } from './graphics.ts';

export interface StageProps {
  /** The number of what is to be shown; a frame is drawn for each, and none while nothing changes. */
  revision: number;
  onDrawn: (revision: number) => void;
  /** Called where there is no 3D: nothing will be reported as drawn. */
  onAbsent: () => void;
  children?: ReactNode;
}

/** A long lens 150 mm away: little perspective, as in a drawing. Degrees and mm. */
const LENS = { fov: 14.9, near: 10, far: 1000, position: [0, -150, 40] as [number, number, number] };

/** A lost context comes back with nothing on it: one more frame puts the picture right. */
function redrawWhenRestored({ gl, invalidate }: RootState): void {
  gl.domElement.addEventListener('webglcontextrestored', () => invalidate());
}

/** The canvas on its paper ground. Draws on demand: no frame passes while nothing changes. */
export default function Stage({ revision, onDrawn, onAbsent, children }: StageProps) {
  const [present] = useState(drawsWebGL);

  useEffect(() => {
    if (!present) onAbsent();
  }, [present, onAbsent]);

  if (!present) {
    return (
      <div className="calm">
        <p>{say('stage.noGraphics')}</p>
      </div>
    );
  }
  return (
    <div className="stage" role="img" aria-label={say('stage.label')}>
      <Canvas
        frameloop="demand"
        flat
        dpr={[1, 2]}
        gl={{ stencil: true, antialias: true }}
        camera={LENS}
        onCreated={redrawWhenRestored}
      >
        {children}
        <Drawn revision={revision} onDrawn={onDrawn} />
      </Canvas>
    </div>
  );
}
