import type { ReadResult } from '../core/plan/read.ts';
import { formatNumber } from '../words/format.ts';
import { presentFault } from '../words/presentFault.ts';
import { say } from '../words/say.ts';

type Faults = Extract<ReadResult, { ok: false }>['faults'];

const furtherFaults = (more: number): string[] =>
  more > 0 ? [say('plans.refusedMore', { count: formatNumber({ value: more, unit: 'count' }) })] : [];

/** The first fault of what was refused, and how many more there are. */
export const faultLines = ([first, ...more]: Faults, refused: (fault: string) => string): string[] => [
  refused(first ? presentFault(first) : ''),
  ...furtherFaults(more.length),
];
