/** Steps of a key or a press on the amount of a trajectory: plain, and fine with Shift. */
export const STEP = { plain: 0.05, fine: 0.01 } as const;

const held = (amount: number): number => Math.round(100 * Math.max(0, Math.min(1, amount))) / 100;

/** The amount after so many steps. */
export const stepped = (amount: number, steps: number, fine = false): number =>
  held(amount + steps * STEP[fine ? 'fine' : 'plain']);

/** The amount after a key of a slider, or null. The Page keys are left to the steps of a lesson. */
export function stepAmount(key: string, fine: boolean, amount: number): number | null {
  if (key === 'ArrowRight' || key === 'ArrowUp') return stepped(amount, 1, fine);
  if (key === 'ArrowLeft' || key === 'ArrowDown') return stepped(amount, -1, fine);
  if (key === 'Home') return 0;
  return key === 'End' ? 1 : null;
}
