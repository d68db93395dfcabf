/**
 * A published tendency beside the model's. Edmondson EK et al. J Prosthet Dent 2022, doi 10.1016/j.prosdent.2021.01.004 (read), 200 scans, implant along crown and root: 24 % straight, 76 %
 * with an angled channel, of those 5° 71.7 %, 10° 26.9 %, 15° 1.3 %. Printed beside it, not tuned to it: the collum angle has no published mean (a few degrees, wide range:
 * Bryant 1984), so that three assumed ones are printed.
 */
import { describe, expect, it } from 'vitest';
import { plannedTooth } from '../../src/core/anatomy/toothMeshes.ts';
import { axisOf } from '../../src/core/geometry/pose.ts';
import { DEFAULT_IMPLANT } from '../../src/core/implant/library.ts';
import { defaultSite } from '../../src/core/plan/defaults.ts';
import { evaluate, readingOf, solidsOf } from '../../src/core/plan/evaluate.ts';
import { planAlongCrown } from '../../src/core/plan/newPlan.ts';

const SITES = [11, 12, 13] as const;
/** Root more facial at its crown end than the crown is, degrees. */
const COLLUM = Array.from({ length: 25 }, (_, i) => i - 9);
/** Standard deviation, degrees (assumed). */
const SPREAD = 4;

/** The channel's correction with the implant along the root, through the middle of the planned crown's cervical line, degrees. */
function correction(tooth: (typeof SITES)[number], collum: number): number {
  const site = defaultSite(tooth);
  const start = planAlongCrown(site, DEFAULT_IMPLANT, 'screw-gum', '');
  const { c } = start.pose.platform;
  const { origin } = plannedTooth(solidsOf(site));
  const tilt = { ...site.crown.tilt, faciopalatal: site.crown.tilt.faciopalatal + collum };
  const a = axisOf(tilt);
  const down = (origin[2] - c) / a[2];
  const platform = { m: origin[0] - down * a[0], f: origin[1] - down * a[1], c };
  const { readings } = evaluate({ ...start, pose: { platform, tilt, roll: 0 } });
  return readingOf(readings, 'access-exit-correction').value ?? Number.NaN;
}

describe('along crown and root', () => {
  const rows = SITES.flatMap((tooth) =>
    COLLUM.map((collum) => ({ tooth, collum, by: correction(tooth, collum) })),
  );

  it('the channel’s correction grows with the collum angle', () => {
    for (const tooth of SITES) {
      const list = rows.filter((row) => row.tooth === tooth).map(({ by }) => by);
      for (let i = 1; i < list.length; i++) expect(list[i]).toBeGreaterThanOrEqual(list[i - 1] - 1e-6);
      expect(list[0]).toBe(0);
      expect(list[list.length - 1]).toBeGreaterThan(5);
    }
  });

  it.each([2, 3, 4])('a collum angle of %d ± 4°: some straight, most of the others 5 to 10°', (mean) => {
    const weight = (collum: number) => Math.exp(-(((collum - mean) / SPREAD) ** 2) / 2);
    const share = (wanted: (by: number) => boolean) =>
      rows.reduce((sum, { collum, by }) => sum + (wanted(by) ? weight(collum) : 0), 0) /
      rows.reduce((sum, { collum }) => sum + weight(collum), 0);
    const straight = share((by) => by === 0);
    const step = (low: number) => share((by) => by > low && by <= low + 5) / (1 - straight);
    const text = [straight, step(0), step(5), step(10)].map((s) => `${(100 * s).toFixed(0)} %`);
    console.info(
      `collum ${mean} ± ${SPREAD}°: straight ${text[0]} (24), then 5° ${text[1]} (72), 10° ${text[2]} (27), 15° ${text[3]} (1)`,
    );
    expect(straight).toBeLessThan(0.5);
    expect(step(0) + step(5)).toBeGreaterThan(0.5);
    expect(step(0)).toBeGreaterThan(step(10));
  });
});
