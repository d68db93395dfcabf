import { checksum } from './checksum.ts';

/** One state of the plan as it lies on the machine. */
export interface Slot {
  /** Counts the states kept, from 1. */
  readonly revision: number;
  /** A plan file's text. */
  readonly text: string;
  readonly sum: number;
}

const sumOf = (revision: number, text: string): number => checksum(`${revision} ${text}`);

export const sealed = (revision: number, text: string): Slot => ({
  revision,
  text,
  sum: sumOf(revision, text),
});

/** States lie in two slots by turns: the one before is whole while the next is written. */
export const slotOf = (revision: number): 0 | 1 => (revision % 2 === 0 ? 0 : 1);

const isSlot = (value: unknown): value is Slot => {
  if (typeof value !== 'object' || value === null) return false;
  const { revision, text, sum } = value as Partial<Slot>;
  return (
    typeof revision === 'number' &&
    Number.isSafeInteger(revision) &&
    typeof text === 'string' &&
    sum === sumOf(revision, text)
  );
};

/** The newest whole state of what lies in the slots, or null; `damaged`: something lies there that is not whole. */
export function newest(found: readonly unknown[]): { slot: Slot | null; damaged: boolean } {
  const whole = found.filter(isSlot).sort((a, b) => b.revision - a.revision);
  return { slot: whole[0] ?? null, damaged: found.some((value) => value !== undefined && !isSlot(value)) };
}
