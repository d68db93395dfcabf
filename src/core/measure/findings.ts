import { type Known, type Strength, shortfall } from './limit.ts';
import type { Reading, ReadingId } from './reading.ts';

/** A limit that is near or beyond: which, by how much, by whose number. Codes and numbers only; the catalogue makes the sentence. */
export interface Finding {
  readonly reading: ReadingId;
  readonly status: 'near' | 'beyond';
  readonly value: number;
  readonly level: number | null;
  /** How much is missing to be within, in the reading's unit, where the status was decided. */
  readonly by: number;
  readonly limit: string;
  readonly source: string;
  readonly known: Known;
  readonly strength: Strength;
}

/** Findings of a set of readings, beyond before near, the greater share of its limit missing first. */
export function findingsOf(readings: readonly Reading[]): Finding[] {
  const out: Finding[] = [];
  for (const r of readings) {
    if (r.value === null || !r.limit || (r.status !== 'near' && r.status !== 'beyond')) continue;
    out.push({
      reading: r.id,
      status: r.status,
      value: r.value,
      level: r.level,
      by: shortfall(r.judgedAt?.value ?? r.value, r.limit.bands),
      limit: r.limit.key,
      source: r.limit.source,
      known: r.limit.known,
      strength: r.limit.strength,
    });
  }
  const rank = (f: Finding) => (f.status === 'beyond' ? 0 : 1);
  return out.sort((x, y) => rank(x) - rank(y) || y.by - x.by);
}
