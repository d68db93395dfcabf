import type { Plan } from '../core/plan/plan.ts';

/** A plan file's text. Throws RangeError on a number that JSON cannot hold, so that nothing unreadable is ever written. */
export function printPlanFile(plan: Plan): string {
  const finite = (_key: string, value: unknown) => {
    if (typeof value === 'number' && !Number.isFinite(value))
      throw new RangeError(`not a finite number: ${value}`);
    return value;
  };
  return `${JSON.stringify(plan, finite, 2)}\n`;
}
