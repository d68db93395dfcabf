/** Stands before a packed plan in an address; the digit names the dictionary it was packed with. */
export const PLAN_TAG = 'plan1=';

/** What stands after `#` if it is meant to be a plan, of this program or of a newer one; else null. Nothing needs to be loaded to ask. */
export function planInAddress(address: string): string | null {
  const hash = new URL(address).hash.slice(1);
  return /^plan\d*=/.test(hash) ? hash : null;
}

/** Stands before a packed exercise in an address; the digit names the dictionary it was packed with. */
export const EXERCISE_TAG = 'exercise1=';

/** What stands after `#` if it is meant to be an exercise, of this program or of a newer one; else null. */
export function exerciseInAddress(address: string): string | null {
  const hash = new URL(address).hash.slice(1);
  return /^exercise\d*=/.test(hash) ? hash : null;
}

/** The address of a page with that after `#`, in place of what stood there. */
export function addressWith(page: string, hash: string): string {
  const address = new URL(page);
  address.hash = hash;
  return address.href;
}
