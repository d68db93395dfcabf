import { shellWords } from './shell.en.ts';

/** A part of the catalogue: templates by their keys. */
type Words = Readonly<Record<string, string>>;
type Shell = typeof shellWords;

/** Keys of the words that are always there. */
export type MessageKey = keyof Shell;

/** The names of the slots in a template: `'{a} of {b}'` has `'a' | 'b'`. */
export type SlotNames<T extends string> = T extends `${string}{${infer Name}}${infer Rest}`
  ? Name | SlotNames<Rest>
  : never;

/** What `say` takes after the key: nothing for a plain message, else one text per slot, no more and no less. */
export type SlotArguments<K extends keyof W, W extends Words = Shell> = [SlotNames<W[K]>] extends [never]
  ? []
  : [slots: Readonly<Record<SlotNames<W[K]>, string>>];

/** Keys of the messages without slots. */
export type PlainKey = {
  [K in MessageKey]: [SlotNames<Shell[K]>] extends [never] ? K : never;
}[MessageKey];

/** A template with its slots filled. Slot texts are inserted as they are, once: braces in them are not read again. */
export function fill(template: string, slots: Readonly<Record<string, string>> = {}): string {
  const texts = new Map<string, string>(Object.entries(slots));
  return template.replace(/\{(\w+)\}/g, (slot, name: string) => texts.get(name) ?? slot);
}

/**
 * Says the words that are always there and those of one part of the page. Whoever uses it loads that part's words and no others: each part has its own, `sayTeach.ts`, `sayDrill.ts`.
 * A key of another part, a missing or a surplus slot is a type error.
 */
export const sayer = <W extends Words>(words: W) => {
  const all: Shell & W = { ...shellWords, ...words };
  return <K extends keyof (Shell & W) & string>(key: K, ...[slots]: SlotArguments<K, Shell & W>): string =>
    fill(all[key], slots);
};

/** The message of a key with its slots filled. */
export const say = sayer({});
