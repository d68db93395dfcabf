import type { Site } from '../core/anatomy/site.ts';
import type { Kit } from '../core/drilling/kit.ts';
import type { Pass } from '../core/drilling/rehearsal.ts';

/** A drilled ridge that is wanted: the site, and the passes that were made in it. */
export interface SolidRequest {
  readonly id: number;
  readonly site: Site;
  readonly kit: Kit;
  readonly passes: readonly Pass[];
}

/** The exact solid of the drilled ridge for drawing, in the site frame, mm; or why there is none. */
export type SolidAnswer =
  | {
      readonly id: number;
      readonly ok: true;
      readonly positions: Float64Array;
      readonly normals: Float64Array;
      readonly triangles: Uint32Array;
      /** Bone taken by all passes together, mm³. */
      readonly removed: number;
      /** Time the solid took, ms. */
      readonly took: number;
    }
  | { readonly id: number; readonly ok: false; readonly message: string };
