import { en } from './en.ts';

export type Catalogue = typeof en;
export type MessageKey = keyof Catalogue;

/** The names of the slots in a template: `'{a} of {b}'` has `'a' | 'b'`. */
export type SlotNames<T extends string> = T extends `${string}{${infer Name}}${infer Rest}`
  ? Name | SlotNames<Rest>
  : never;

/** What `say` takes after the key: nothing for a plain message, else one text per slot, no more and no less. */
export type SlotArguments<K extends MessageKey> = [SlotNames<Catalogue[K]>] extends [never]
  ? []
  : [slots: Readonly<Record<SlotNames<Catalogue[K]>, string>>];

/** Keys of the messages without slots. */
export type PlainKey = {
  [K in MessageKey]: [SlotNames<Catalogue[K]>] extends [never] ? K : never;
}[MessageKey];

/** A template with its slots filled. Slot texts are inserted as they are, once: braces in them are not read again. */
export function fill(template: string, slots: Readonly<Record<string, string>> = {}): string {
  const texts = new Map<string, string>(Object.entries(slots));
  return template.replace(/\{(\w+)\}/g, (slot, name: string) => texts.get(name) ?? slot);
}

/** The message of a key with its slots filled. A missing or a surplus slot is a type error. */
export function say<K extends MessageKey>(key: K, ...[slots]: SlotArguments<K>): string {
  return fill(en[key], slots);
}
