/** Whether the browser has agreed not to clear what is kept when space runs short; null where it cannot be asked. */
export async function isLasting(): Promise<boolean | null> {
  try {
    return (await navigator.storage?.persisted?.()) ?? null;
  } catch {
    return null;
  }
}

/** Asks the browser for that; some ask the user in turn, so it is only done when the user wishes it. */
export async function askLasting(): Promise<boolean> {
  try {
    return (await navigator.storage?.persist?.()) ?? false;
  } catch {
    return false;
  }
}
