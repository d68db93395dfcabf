import { type Known, type Strength, shortfall } from './limit.ts';
import { inMargins, SITE_FACT } from './margin.ts';
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

/** Findings of a set of readings: beyond before near, what a pose can mend before facts of the site, where most is missing first. */
export function findingsOf(readings: readonly Reading[]): Finding[] {
  const out: (Finding & { readonly lack: number })[] = [];
  for (const r of readings) {
    if (r.value === null || !r.limit || (r.status !== 'near' && r.status !== 'beyond')) continue;
    const by = shortfall(r.judgedAt?.value ?? r.value, r.limit.bands);
    out.push({
      lack: inMargins(by, r.unit),
      reading: r.id,
      status: r.status,
      value: r.value,
      level: r.level,
      by,
      limit: r.limit.key,
      source: r.limit.source,
      known: r.limit.known,
      strength: r.limit.strength,
    });
  }
  const rank = (f: Finding) => (f.status === 'beyond' ? 0 : 2) + (SITE_FACT.test(f.reading) ? 1 : 0);
  out.sort((x, y) => rank(x) - rank(y) || y.lack - x.lack);
  return out.map(({ lack: _, ...finding }) => finding);
}
