import type { Plan } from './plan.ts';
import { sha256 } from './sha256.ts';

/** A plain value as JSON without white space, the keys of every object in the order of their code units: one text for one value. */
export function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const parts = Object.entries(value)
    .filter(([, part]) => part !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, part]) => `${JSON.stringify(key)}:${canonical(part)}`);
  return `{${parts.join(',')}}`;
}

/** The whole plan's fingerprint, 64 hexadecimal digits: two plans share it only where every number and word of them is the same. */
export const fingerprint = (plan: Plan): string => sha256(canonical(plan));

/** Digits that a person can compare by eye; a collision by chance takes some 16 million plans. */
const SHORT = 12;

/** The beginning of the fingerprint in groups of four: `3f9a 07c1 be52`. */
export const shortFingerprint = (plan: Plan): string =>
  fingerprint(plan)
    .slice(0, SHORT)
    .replace(/(.{4})(?=.)/g, '$1 ');
