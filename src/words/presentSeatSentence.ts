import type { SeatNow } from '../core/plan/seat.ts';
import { presentCause, presentFinish, presentSeatEvent, presentSeatSummary } from './presentSeating.ts';
import { say } from './saySeat.ts';

/** Codes of a glyph: judged, or `none` where there is nothing to judge. */
export interface SeatSentence {
  readonly mark: 'within' | 'near' | 'beyond' | 'none';
  readonly lead: string;
  readonly rest: string;
  /** What comes next. */
  readonly mend: string;
}

const MARKS = { seated: 'within', 'stopped-at-max': 'beyond' } as const;

/** The seating in one sentence, with what comes next. */
export function presentSeatSentence(now: SeatNow | null): SeatSentence {
  if (!now) return { mark: 'none', lead: say('seat.drillFirst'), rest: say('seat.drillFirstMore'), mend: '' };
  const { setting, state, finish } = now;
  const { phase, cause } = state;
  const started = phase !== 'before' && phase !== 'backed-out';
  const mend = cause
    ? presentCause(cause)
    : started
      ? presentFinish(setting, finish)
      : presentSeatEvent(setting, state);
  const mark = phase in MARKS ? MARKS[phase as keyof typeof MARKS] : 'none';
  return { mark, lead: say(`seat.lead.${phase}`), rest: presentSeatSummary(setting, state), mend };
}
