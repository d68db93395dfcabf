import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { checksum } from './checksum.ts';
import { newest, type Slot, sealed, slotOf } from './slots.ts';

/** A plan that lay on the table before, as a plan file's text. */
export interface Recent {
  readonly text: string;
  /** When it was put aside, ms since 1970. */
  readonly at: number;
}

/** What became of a state that was to be kept: kept; another tab has kept a newer one; the storage is full; the browser forbids it or has failed. */
export type Outcome = 'kept' | 'overtaken' | 'full' | 'refused';

/** Where plans are kept on this machine. None of it throws. */
export interface Shelf {
  /** The newest whole state, or null; `damaged`: a newer one lay there and was not whole. */
  read: () => Promise<{ slot: Slot | null; damaged: boolean }>;
  /** Keeps a state as the one after `revision`, if that is still the newest. */
  put: (text: string, revision: number) => Promise<Outcome>;
  /** Plans of before, the newest first. */
  recent: () => Promise<readonly Recent[]>;
  /** Puts a plan among those of before; the oldest makes room. */
  remember: (text: string, at: number) => Promise<void>;
}

interface Layout extends DBSchema {
  slots: { key: number; value: Slot };
  recent: { key: number; value: Recent };
}

const NAME = 'ridgewright';
const MOST_RECENT = 8;
/** A write is reported only when it has reached the disk, not the cache of the system before it. */
const STRICT = { durability: 'strict' } as const;

const outcomeOf = (error: unknown): Outcome =>
  error instanceof DOMException && error.name === 'QuotaExceededError' ? 'full' : 'refused';

async function putSlot(db: IDBPDatabase<Layout>, text: string, revision: number): Promise<Outcome> {
  const work = db.transaction('slots', 'readwrite', STRICT);
  const { slot } = newest(await Promise.all([work.store.get(0), work.store.get(1)]));
  if ((slot?.revision ?? 0) !== revision) {
    await work.done;
    return 'overtaken';
  }
  const next = revision + 1;
  await Promise.all([work.store.put(sealed(next, text), slotOf(next)), work.done]);
  return 'kept';
}

async function putRecent(db: IDBPDatabase<Layout>, text: string, at: number): Promise<void> {
  const work = db.transaction('recent', 'readwrite', STRICT);
  await work.store.put({ text, at }, checksum(text));
  const [keys, all] = await Promise.all([work.store.getAllKeys(), work.store.getAll()]);
  const oldest = keys
    .map((key, i) => ({ key, at: all[i].at }))
    .sort((a, b) => b.at - a.at)
    .slice(MOST_RECENT);
  await Promise.all([...oldest.map(({ key }) => work.store.delete(key)), work.done]);
}

/** The shelf in this browser's IndexedDB; opened when it is first asked, and again after the browser has closed it. */
export function browserShelf(): Shelf {
  let opened: Promise<IDBPDatabase<Layout>> | null = null;
  const forget = () => {
    opened = null;
  };
  const open = () => {
    opened ??= openDB<Layout>(NAME, 1, {
      upgrade: (db) => {
        db.createObjectStore('slots');
        db.createObjectStore('recent');
      },
      terminated: forget,
    });
    opened.catch(forget);
    return opened;
  };
  return {
    read: async () => {
      try {
        const db = await open();
        return newest(await Promise.all([db.get('slots', 0), db.get('slots', 1)]));
      } catch {
        return { slot: null, damaged: false };
      }
    },
    put: async (text, revision) => {
      try {
        return await putSlot(await open(), text, revision);
      } catch (error) {
        return outcomeOf(error);
      }
    },
    recent: async () => {
      try {
        const all = await (await open()).getAll('recent');
        return all.sort((a, b) => b.at - a.at);
      } catch {
        return [];
      }
    },
    remember: async (text, at) => {
      try {
        await putRecent(await open(), text, at);
      } catch {
        // What is on the table is kept elsewhere; a plan of before that finds no room is said nowhere but in the list.
      }
    },
  };
}
