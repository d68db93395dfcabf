import { useEffect, useMemo } from 'react';
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
  const shadow = useMemo(() => new ContactShadow(anatomy, keep), [anatomy, keep]);
  useEffect(() => () => shadow.dispose(), [shadow]);
  const [x, y] = shadow.middle;
  return (
    <mesh
      position={[x, y, floor - 0.04]}
      geometry={shadow.sheet}
      material={shadow.material}
      renderOrder={-1}
      dispose={null}
    />
  );
}
