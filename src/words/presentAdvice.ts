import type { AdviceResult, PoseEdit } from '../core/plan/advice.ts';
import { formatQuantity } from './format.ts';
import { say } from './say.ts';

/** An edit in words, with the amount that the edit has: "shift 0.4 mm palatally". */
export function presentEdit(edit: PoseEdit): string {
  const unit = edit.kind === 'tilt' ? 'deg' : 'mm';
  const amount = formatQuantity({ value: edit.amount, unit });
  const toward = say(`advice.toward.${edit.toward}`);
  if (edit.kind === 'shift') return say('advice.shift', { amount, toward });
  if (edit.kind === 'advance') return say('advice.advance', { amount, toward });
  return say('advice.tilt', { amount, toward, pivot: say(`advice.pivot.${edit.pivot}`) });
}

/** The advice's sentence; '' where nothing needs mending. */
export function presentAdvice({ worst, advice }: AdviceResult): string {
  if (!worst) return '';
  const [first, second] = advice.map((a) => presentEdit(a.edit));
  if (first === undefined) return say('advice.none');
  return second === undefined ? say('advice.one', { first }) : say('advice.two', { first, second });
}
