import type { Fixing, Limit } from '../measure/limit.ts';
import type { AccessExit, ExitPlace } from './access.ts';

/**
 * What the exit of the axis means for the way of fixing: `straight`, a screw's channel comes out palatally; `bent`, it does with an angle within the published
 * range; `beyond`, only with a larger one; `no-way`, with none in the plane of axis and `e_f`; `misses`, the axis does not come out of the crown.
 */
export type ExitCode = 'straight' | 'bent' | 'beyond' | 'no-way' | 'misses';

/** Codes and numbers; the catalogue makes the sentence. */
export interface ExitMeaning {
  readonly code: ExitCode;
  /** How the plan fixes the crown. */
  readonly planned: 'screw' | 'cemented';
  readonly place: ExitPlace | null;
  /** From the edge, + palatal, mm. */
  readonly toEdge: number | null;
  /** The channel's correction, degrees; null where there is none. */
  readonly angle: number | null;
  /** The largest angle in published use (or the plan's own), degrees. */
  readonly most: number;
  /** Catalogue code of where that comes from. */
  readonly source: string;
}

function codeOf(access: AccessExit | null, most: number): ExitCode {
  if (!access) return 'misses';
  if (access.place === 'palatal') return 'straight';
  if (!access.bent) return 'no-way';
  return access.bent.angle <= most ? 'bent' : 'beyond';
}

/** `limit`: that of the channel's correction. */
export function exitMeaning(access: AccessExit | null, fixing: Fixing, limit: Limit): ExitMeaning {
  const most = limit.bands.high?.beyond ?? Infinity;
  return {
    code: codeOf(access, most),
    planned: fixing === 'cemented' ? 'cemented' : 'screw',
    place: access?.place ?? null,
    toEdge: access?.toEdge ?? null,
    angle: access?.bent?.angle ?? null,
    most,
    source: limit.source,
  };
}
