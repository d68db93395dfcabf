/** A part of the catalogue: templates by their keys. */
export type Words = Readonly<Record<string, string>>;

/** The names of the slots in a template: `'{a} of {b}'` has `'a' | 'b'`. */
export type SlotNames<T extends string> = T extends `${string}{${infer Name}}${infer Rest}`
  ? Name | SlotNames<Rest>
  : never;

/** What is said after the key: nothing for a plain message, else one text per slot, no more and no less. */
export type SlotsOf<W extends Words, K extends keyof W> = [SlotNames<W[K]>] extends [never]
  ? []
  : [slots: Readonly<Record<SlotNames<W[K]>, string>>];

/** A template with its slots filled. Slot texts are inserted as they are, once: braces in them are not read again. */
export function fill(template: string, slots: Readonly<Record<string, string>> = {}): string {
  const texts = new Map<string, string>(Object.entries(slots));
  return template.replace(/\{(\w+)\}/g, (slot, name: string) => texts.get(name) ?? slot);
}

/** Says the words it is given and no others: all that what runs beside the page has to carry. */
export const sayerOf =
  <W extends Words>(words: W) =>
  <K extends keyof W & string>(key: K, ...[slots]: SlotsOf<W, K>): string =>
    fill(words[key], slots);
