import { seatNow } from '../core/plan/seat.ts';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { presentSeatSummary } from '../words/presentSeating.ts';
import './rail.css';

/** The seating's rail. */
export default function SeatPanel({ stores }: { stores: PlanStores }) {
  const now = seatNow(usePlan(stores));
  return <div className="rail">{now && <p>{presentSeatSummary(now.setting, now.state)}</p>}</div>;
}
