/** What is to be said of a plan that was opened or refused; of what went well, only until the plan is changed again. */
export interface Told {
  readonly lines: readonly string[];
  readonly passing: boolean;
}

export const NOTHING_TOLD: Told = { lines: [], passing: false };
export const refusal = (lines: readonly string[]): Told => ({ lines, passing: false });
export const success = (lines: readonly string[]): Told => ({ lines, passing: true });
