import freshSocket from '../../assets/plans/demo-2-fresh-socket.json';
import widePremolar from '../../assets/plans/demo-3-wide-premolar.json';
import thinGum from '../../assets/plans/demo-4-thin-gum.json';
import slab from '../../assets/plans/demo-5-slab.json';
import onePiece from '../../assets/plans/demo-6-one-piece.json';
import mean11 from '../../assets/plans/means-11.json';
import mean12 from '../../assets/plans/means-12.json';
import mean13 from '../../assets/plans/means-13.json';
import mean14 from '../../assets/plans/means-14.json';
import mean21 from '../../assets/plans/means-21.json';
import mean22 from '../../assets/plans/means-22.json';
import mean23 from '../../assets/plans/means-23.json';
import mean24 from '../../assets/plans/means-24.json';
import type { Plan } from '../core/plan/plan.ts';
import { FIRST_PLAN, type StoredPlan, stored } from './firstPlan.ts';
import { printPlanFile } from './printPlanFile.ts';

export type { StoredPlan } from './firstPlan.ts';

/** The scenarios; the first is the one a new user meets. */
export const DEMO_PLANS: readonly StoredPlan[] = [
  FIRST_PLAN,
  stored('demo-2-fresh-socket', freshSocket),
  stored('demo-3-wide-premolar', widePremolar),
  stored('demo-4-thin-gum', thinGum),
  stored('demo-5-slab', slab),
  stored('demo-6-one-piece', onePiece),
];

/** One a site, from published means. */
export const MEAN_PLANS: readonly StoredPlan[] = [
  stored('means-11', mean11),
  stored('means-12', mean12),
  stored('means-13', mean13),
  stored('means-14', mean14),
  stored('means-21', mean21),
  stored('means-22', mean22),
  stored('means-23', mean23),
  stored('means-24', mean24),
];

/** The texts of them all, by which one is known again. */
const texts = new Set([...DEMO_PLANS, ...MEAN_PLANS].map(({ plan }) => printPlanFile(plan)));

/** Whether a plan comes with the program, word for word. */
export const comesWithProgram = (plan: Plan): boolean => texts.has(printPlanFile(plan));
