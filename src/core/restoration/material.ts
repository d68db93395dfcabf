import type { Known } from '../measure/limit.ts';

interface LeastThickness {
  /** Least thickness of the crown's wall, mm. */
  readonly least: number;
  /** Catalogue code of its source. */
  readonly source: string;
  readonly known: Known;
}

/** Materials of a crown. */
export const MATERIALS = {
  /** Monolithic: 0.5 survived, 0.2 failed where it was cemented. */
  zirconia: { least: 0.5, source: 'weigl-2018', known: 'read' },
  /** Monolithic: 1.0 to 1.2. */
  'lithium-disilicate': { least: 1, source: 'yu-2017', known: 'read' },
  /** Facially, textbooks of crown preparation. */
  'metal-ceramic': { least: 1.2, source: 'common-practice', known: 'memory' },
} as const satisfies Record<string, LeastThickness>;
export type Material = keyof typeof MATERIALS;
export const MATERIAL_NAMES = Object.keys(MATERIALS) as readonly Material[];

/** The least distance of an abutment to the crown's surface, mm: the material's least wall and the cement gap. */
export const leastCover = (material: Material, cementGap: number): number =>
  MATERIALS[material].least + cementGap;
