import type { Vec3 } from '../geometry/vec.ts';
import { limitOf } from './defaultLimits.ts';
import { type Bands, type Fixing, type Judgement, judge, type Limit } from './limit.ts';
import type { Reading, ReadingId, Reason, Unit } from './reading.ts';

/** What a reading adds to its value. */
export interface Extras {
  readonly level?: number | null;
  readonly from?: Vec3 | null;
  readonly to?: Vec3 | null;
  readonly reason?: Reason | null;
  readonly aside?: number | null;
  readonly judgedAt?: Reading['judgedAt'];
  /** false: shown without a status. */
  readonly counts?: boolean;
  /** Judged elsewhere (the thinnest: over all levels). */
  readonly judged?: { readonly status: Judgement; readonly limit: Limit | null };
}

/** Collects readings in their order and turns their points from the site frame to the jaw frame. */
export class ReadingBook {
  readonly readings: Reading[] = [];

  constructor(
    private readonly toJaw: (p: Vec3) => Vec3,
    private readonly fixing: Fixing,
    private readonly own: Readonly<Record<string, Bands>>,
  ) {}

  limit(id: ReadingId, level: number | null): Limit | null {
    return limitOf(id, this.fixing, level, this.own);
  }

  /** A value with its status. */
  add(id: ReadingId, unit: Unit, value: number, extras: Extras = {}): void {
    const level = extras.level ?? null;
    const limit = extras.judged ? extras.judged.limit : this.limit(id, level);
    const counts = extras.counts ?? true;
    const status = !limit || !counts ? null : (extras.judged?.status ?? judge(value, limit.bands));
    const silent: Reason | null = counts ? (limit ? null : 'no-limit') : 'not-counted';
    this.readings.push({
      id,
      value,
      unit,
      level,
      from: extras.from ? this.toJaw(extras.from) : null,
      to: extras.to ? this.toJaw(extras.to) : null,
      limit,
      status,
      reason: extras.reason ?? silent,
      aside: extras.aside ?? null,
      judgedAt: extras.judgedAt ?? null,
    });
  }

  /** A reading that does not apply, and why. */
  skip(id: ReadingId, unit: Unit, reason: Reason, aside: number | null = null): void {
    this.readings.push({
      id,
      value: null,
      unit,
      level: null,
      from: null,
      to: null,
      limit: this.limit(id, null),
      status: 'not-applicable',
      reason,
      aside,
      judgedAt: null,
    });
  }
}
