import narrowLateral from '../../assets/plans/demo-1-narrow-lateral.json';
import type { Plan } from '../core/plan/plan.ts';

/** A plan that comes with the program. */
export interface StoredPlan {
  readonly id: string;
  readonly plan: Plan;
}

/** A plan of ours is taken as it is, so that the page need not load what reads plans before it stands: that the reader takes every one of them is a test's business. */
export const stored = (id: string, file: object): StoredPlan => ({ id, plan: file as Plan });

/** The one that a new user meets. */
export const FIRST_PLAN = stored('demo-1-narrow-lateral', narrowLateral);
