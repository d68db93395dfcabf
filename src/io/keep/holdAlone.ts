/** A name that one tab holds at a time (W3C Web Locks). */
export interface Hold {
  /** This tab has it. */
  readonly held: boolean;
  /** Settles when this tab gets it, the other having closed or gone; never, where it is held from the start. */
  readonly later: Promise<void>;
}

const FOREVER = new Promise<never>(() => undefined);

/** Takes a name for as long as this tab lives, if no other tab of this origin has it; else waits in line. Where the browser has no locks, it is taken as held. */
export async function holdAlone(name: string): Promise<Hold> {
  const locks: LockManager | undefined = navigator.locks;
  if (!locks) return { held: true, later: FOREVER };
  const held = await new Promise<boolean>((tell) => {
    const answer = (lock: Lock | null) => {
      tell(lock !== null);
      return lock ? FOREVER : undefined;
    };
    locks.request(name, { ifAvailable: true }, answer).catch(() => tell(true));
  });
  if (held) return { held, later: FOREVER };
  const later = new Promise<void>((tell) => {
    locks
      .request(name, () => {
        tell();
        return FOREVER;
      })
      .catch(() => undefined);
  });
  return { held, later };
}
