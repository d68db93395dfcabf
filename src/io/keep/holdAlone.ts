/** What a tab does as the name comes and goes. */
export interface Holder {
  /** Another tab asks for the name. Whether all that was to be done first is done: only then is it given up. */
  readonly giveWay: () => Promise<boolean>;
  /** The name has gone to another tab. */
  readonly lost: () => void;
  /** This tab has it: the other has closed or gone. */
  readonly got: () => void;
}

/** A name that one tab holds at a time (W3C Web Locks). */
export interface Hold {
  /** This tab had it from the start. */
  readonly held: boolean;
  /** From now on the holder is told. */
  readonly follow: (holder: Holder) => void;
  /** Asks the tab that has the name to give way. Whether this one has it now; not, where the other keeps it back. */
  readonly ask: () => Promise<boolean>;
}

/** What goes from tab to tab; `of`: the tab that asks. */
interface Word {
  readonly of: string;
  readonly says: 'ask' | 'heard' | 'given' | 'kept-back';
}

/** A tab that has not said within so many ms that it has heard is stuck: the name is taken from it. */
const DEAF = 1500;

const ALWAYS: Hold = { held: true, follow: () => undefined, ask: () => Promise.resolve(true) };

/** Takes a name for as long as this tab lives, if no other tab of this origin has it; else waits in line, and may ask for it. Where the browser has no locks, it is taken as held. */
export async function holdAlone(name: string): Promise<Hold> {
  const locks: LockManager | undefined = navigator.locks;
  if (!locks) return ALWAYS;
  const channel = new BroadcastChannel(name);
  const me = crypto.randomUUID();
  let holder: Holder | null = null;
  let here = false;
  let asking: ((word: Word['says']) => void) | null = null;

  const say = (of: string, says: Word['says']) => channel.postMessage({ of, says } satisfies Word);

  /** Has the name from now on, until another tab takes it: then waits in line for it. */
  const have = (): Promise<never> => {
    here = true;
    return new Promise<never>(() => undefined);
  };
  const wait = () => {
    locks
      .request(name, () => {
        holder?.got();
        return have();
      })
      .catch(taken);
  };
  const taken = () => {
    here = false;
    holder?.lost();
    wait();
  };
  const steal = () =>
    new Promise<boolean>((done) => {
      locks
        .request(name, { steal: true }, () => {
          done(true);
          return have();
        })
        .catch(taken);
    });

  channel.onmessage = async ({ data }: MessageEvent<Word>) => {
    if (data.of === me) return asking?.(data.says);
    if (data.says !== 'ask' || !here || !holder) return;
    say(data.of, 'heard');
    say(data.of, (await holder.giveWay()) ? 'given' : 'kept-back');
  };

  const ask = async (): Promise<boolean> => {
    if (here) return true;
    const answer = await new Promise<Word['says']>((tell) => {
      const deaf = setTimeout(() => tell('given'), DEAF);
      asking = (word) => {
        clearTimeout(deaf);
        if (word !== 'heard') tell(word);
      };
      say(me, 'ask');
    });
    asking = null;
    return answer === 'given' && (here || steal());
  };

  const held = await new Promise<boolean>((tell) => {
    locks
      .request(name, { ifAvailable: true }, (lock) => {
        tell(lock !== null);
        return lock ? have() : undefined;
      })
      .catch(taken);
  });
  if (!held) wait();
  return {
    held,
    follow: (follower) => {
      holder = follower;
      if (here !== held) here ? follower.got() : follower.lost();
    },
    ask,
  };
}
