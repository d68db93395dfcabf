import { useThree } from '@react-three/fiber';
import { type RefObject, useEffect } from 'react';
import type { LiveStore } from '../state/live.ts';
import { photographerOf } from '../state/photographer.ts';
import { photograph, pngOf } from './photo.ts';

interface PhotographerProps {
  live: LiveStore;
  /** What holds the ink over the canvas. */
  frame: RefObject<HTMLElement | null>;
}

/** Offers the stage's pictures for as long as it stands. Stands inside the canvas. */
export function Photographer({ live, frame }: PhotographerProps) {
  const get = useThree((three) => three.get);
  useEffect(() => {
    const store = photographerOf(live);
    const take = async (width: number): Promise<Blob> => {
      const ink = frame.current?.querySelector<SVGSVGElement>('svg.ink');
      if (!ink) throw new Error('nothing is drawn yet');
      return pngOf(photograph(get(), ink, width));
    };
    store.setState({ take });
    return () => {
      if (store.getState().take === take) store.setState({ take: null });
    };
  }, [live, frame, get]);
  return null;
}
