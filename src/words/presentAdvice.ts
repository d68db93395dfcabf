import type { Reading } from '../core/measure/reading.ts';
import type { Advice, PoseEdit } from '../core/plan/advice.ts';
import { formatQuantity } from './format.ts';
import { presentReading } from './presentReading.ts';
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

/** An edit with what it makes of the reading that it mends: "shift 0.4 mm palatally (makes it 2.0 mm)". */
export function presentMending(advice: Advice, readings: readonly Reading[]): string {
  const edit = presentEdit(advice.edit);
  const mended = readings.find(({ id }) => id === advice.mends);
  if (!mended) return edit;
  const value = presentReading({ ...mended, value: advice.after, status: advice.status }).quantity;
  return say('advice.makes', { edit, value });
}
