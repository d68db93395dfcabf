import { useEffect, useLayoutEffect, useMemo } from 'react';
import type { Plane } from 'three';
import type { Anatomy } from '../core/anatomy/anatomy.ts';
import { ContactShadow } from './contactShadow.ts';

interface ContactShadeProps {
  anatomy: Anatomy;
  /** Level of the paper the cast stands on, jaw frame. */
  floor: number;
  /** The plane of the cut, or null: the whole cast stands. */
  keep: Plane | null;
}

/** The soft shade under the cast. */
export function ContactShade({ anatomy, floor, keep }: ContactShadeProps) {
  const shadow = useMemo(() => new ContactShadow(), []);
  useEffect(() => () => shadow.dispose(), [shadow]);
  useLayoutEffect(() => shadow.lay(anatomy, floor), [shadow, anatomy, floor]);
  useLayoutEffect(() => shadow.fade(keep), [shadow, keep]);
  return <primitive object={shadow.mesh} dispose={null} />;
}
