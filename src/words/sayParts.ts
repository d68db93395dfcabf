import type { MessageKey } from './say.ts';
import type { SlotNames } from './sayer.ts';
import { shellWords } from './shell.en.ts';

/** A piece of a message: words, or a slot that a component fills. */
export type Part<K extends MessageKey> = string | { readonly slot: SlotNames<(typeof shellWords)[K]> };

/** A message in pieces, for slots that are more than text (a button in a sentence). */
export function sayParts<K extends MessageKey>(key: K): Part<K>[] {
  return shellWords[key]
    .split(/(\{\w+\})/)
    .filter((piece) => piece !== '')
    .map((piece) =>
      piece.startsWith('{') ? { slot: piece.slice(1, -1) as SlotNames<(typeof shellWords)[K]> } : piece,
    );
}
