import { type SlotNames, type SlotsOf, sayerOf, type Words } from './sayer.ts';
import { shellWords } from './shell.en.ts';

type Shell = typeof shellWords;

/** Keys of the words that are always there. */
export type MessageKey = keyof Shell;

/** What `say` takes after the key. */
export type SlotArguments<K extends MessageKey> = SlotsOf<Shell, K>;

/** Keys of the messages without slots. */
export type PlainKey = {
  [K in MessageKey]: [SlotNames<Shell[K]>] extends [never] ? K : never;
}[MessageKey];

/**
 * Says the words that are always there and those of one part of the page. Whoever uses it loads that part's words and no others: each part has its own, `sayTeach.ts`, `sayDrill.ts`.
 * A key of another part, a missing or a surplus slot is a type error.
 */
export const sayer = <W extends Words>(words: W) => sayerOf<Shell & W>({ ...shellWords, ...words });

/** The message of a key with its slots filled. */
export const say = sayer({});
