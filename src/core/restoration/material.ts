/** Materials of a crown, with the least thickness of its wall, mm. */
export const MATERIALS = {
  /** Monolithic zirconia: 0.5 at the least (texts on ceramics, from memory). */
  zirconia: 0.5,
  /** Monolithic lithium disilicate: 1.0 at the least (texts on ceramics, from memory). */
  'lithium-disilicate': 1,
  /** Metal-ceramic: 1.2 facially (textbook of crown preparation, from memory). */
  'metal-ceramic': 1.2,
} as const;
export type Material = keyof typeof MATERIALS;

/** What a plan that names none is reckoned with. */
export const DEFAULT_MATERIAL: Material = 'lithium-disilicate';

/** Between abutment and crown, mm (common practice, no source). */
export const CEMENT_GAP = 0.05;

/** The least post that a reduction leaves, mm: a cylinder about the axis from the shoulder up (ours). */
export const LEAST_POST = { diameter: 1.5, height: 3 } as const;

/** How far below the planned gum margin a finishing line is hidden: the middle of the band for a cemented margin, 0 to 1 mm. mm (ours). */
export const HIDDEN = 0.5;

/** The finishing line never comes nearer to the bone than this, mm (ours). */
export const OVER_BONE = 1;

/** The least distance of an abutment to the crown's surface, mm. */
export const leastCover = (material: Material): number => MATERIALS[material] + CEMENT_GAP;
