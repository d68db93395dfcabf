import type { DrillReport } from '../core/plan/drillReport.ts';
import type { Plan } from '../core/plan/plan.ts';

/** The drilled ridge and the report of a plan's rehearsal are wanted. */
export interface DrillRequest {
  readonly id: number;
  readonly plan: Plan;
}

/** The exact solid of the drilled ridge for drawing, in the site frame, mm. */
export interface SolidAnswer {
  readonly id: number;
  readonly kind: 'solid';
  readonly positions: Float64Array;
  readonly normals: Float64Array;
  readonly triangles: Uint32Array;
}

/** The solid comes first, the report after it and last; a fault ends it as well. */
export type DrillAnswer =
  | SolidAnswer
  | { readonly id: number; readonly kind: 'report'; readonly report: DrillReport }
  | { readonly id: number; readonly kind: 'fault'; readonly message: string };
