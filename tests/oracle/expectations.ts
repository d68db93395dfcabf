/** What a comparison of the core with the oracle must show; used by both halves of the series. */
import { expect } from 'vitest';
import type { Agreement } from './agreement.ts';

/** Of all plans, this share may stand at a jump, per reading. */
const JUMPS = 0.005;

export function expectAgreement(found: Agreement): void {
  const said = found.partings.map(
    (x) => `${x.title} ${x.id}: oracle ${x.oracle}, core ${x.core}${x.jump ? ' (jump)' : ''}`,
  );
  if (said.length > 0) console.log(`parted:\n${said.join('\n')}`);
  expect(
    found.partings.filter((x) => !x.jump),
    'readings that differ where the answer does not jump',
  ).toEqual([]);
  for (const id of new Set(found.partings.map((x) => x.id))) {
    const at = found.partings.filter((x) => x.id === id);
    expect(at.length, `${id}: plans at a jump`).toBeLessThanOrEqual(Math.ceil(JUMPS * found.plans));
  }
  expect(found.partedLevels.length, found.partedLevels.slice(0, 5).join('\n')).toBeLessThanOrEqual(
    JUMPS * found.levels,
  );
  expect(found.illFitting, 'readings whose level or ends do not fit their value').toEqual([]);
}
