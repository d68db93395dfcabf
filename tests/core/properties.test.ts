/**
 * Properties that hold for every plan, whatever the numbers: consequences of the definitions (model sections 1, 2 and 4), each stated beside its
 * check. Random plans by fast-check, seeds fixed.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Site, SiteCode, WidthEntry } from '../../src/core/anatomy/site.ts';
import { axisOf } from '../../src/core/geometry/pose.ts';
import { distance, dot, sub } from '../../src/core/geometry/vec.ts';
import { READING_IDS, type ReadingId } from '../../src/core/measure/reading.ts';
import { advance } from '../../src/core/plan/edits.ts';
import { type Evaluation, evaluate, readingOf } from '../../src/core/plan/evaluate.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { anyPlan, cylinderPlan, libraryPlan, runs, within } from '../support/randomPlans.ts';
import { slabPlan } from '../support/slabs.ts';

const value = (e: Evaluation, id: ReadingId): number | null => readingOf(e.readings, id).value;
const SIDES = ['facial', 'palatal'] as const;

describe('mirror image', () => {
  // Model 1: a case and its mirror image (11 and 21) give identical readings; their points are mirrored in the midline.
  it('gives the same readings at 11 and 21, 12 and 22 …, and mirrored points', () => {
    fc.assert(
      fc.property(libraryPlan, (plan) => {
        const other = (plan.site.tooth < 20 ? plan.site.tooth + 10 : plan.site.tooth - 10) as SiteCode;
        const here = evaluate(plan);
        const there = evaluate({ ...plan, site: { ...plan.site, tooth: other } });
        here.readings.forEach((a, i) => {
          const b = there.readings[i];
          expect({ ...b, from: null, to: null }).toEqual({ ...a, from: null, to: null });
          for (const end of ['from', 'to'] as const) {
            const [p, q] = [a[end], b[end]];
            if (p === null || q === null) expect(q).toBe(p);
            else expect(distance(q, [-p[0], p[1], p[2]])).toBeLessThan(1e-9);
          }
        });
        expect(there.profiles).toEqual(here.profiles);
      }),
      runs(60),
    );
  });
});

describe('rigid motion', () => {
  // Readings that are a distance between two points: the points carried to the jaw frame are that far apart.
  const DISTANCES: readonly ReadingId[] = [
    ...SIDES.flatMap((s) =>
      (['1mm', '3mm', '5mm', 'apex', 'thinnest', 'true'] as const).map((w) => `${s}-wall-${w}` as const),
    ),
    'shoulder-to-crest-facial',
    'shoulder-to-crest-palatal',
    'shoulder-to-crest-mesial',
    'shoulder-to-crest-distal',
    'shoulder-to-cej',
    'shoulder-to-gum-margin',
    'shoulder-to-gum-present',
    'incisal-line-offset',
    'root-mesial',
    'root-distal',
    'root-mesial-shoulder',
    'root-distal-shoulder',
    'apex-to-floor',
    'apex-to-concavity',
    'canal',
    'socket-gap-facial',
  ];

  it('keeps distances: the two points of a reading are as far apart as its value says', () => {
    const seen = new Set<ReadingId>();
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { readings, anatomy, placement } = evaluate(plan);
        const axis = anatomy.toJawDirection(placement.a);
        for (const id of DISTANCES) {
          const r = readingOf(readings, id);
          if (r.value === null || !r.from || !r.to) continue;
          // Left out, as the model has them: −r for just "outside"; a depth inside a root or tube, whose two ends are one point.
          if (r.reason === 'outside') continue;
          const depthInside = r.value < 0 && /^(root|canal)/.test(id);
          if (depthInside && distance(r.from, r.to) === 0) continue;
          // On a wall's ray the gap counts too; and bone may begin only behind the other sheet or the crest.
          const gap = r.aside !== null && /-wall-(1mm|3mm|5mm|apex)$/.test(id) ? r.aside : 0;
          if (id.endsWith('-thinnest') && plan.site.state.kind === 'socket') continue;
          // The shoulder's height above the bone is taken along the axis; on a flared neck the two points do not lie one above the other.
          const along = id.startsWith('shoulder-to-crest');
          const apart = along ? Math.abs(dot(sub(r.to, r.from), axis)) : distance(r.from, r.to);
          if (/-wall-/.test(id) && apart > Math.abs(r.value) + gap + 1e-6) {
            expect(r.value).toBeGreaterThanOrEqual(0);
            continue;
          }
          expect(Math.abs(apart - Math.abs(r.value) - gap), `${id} ${plan.title}`).toBeLessThan(1e-6);
          seen.add(id);
        }
      }),
      runs(150),
    );
    expect([...seen].sort()).toEqual([...DISTANCES].sort());
  });

  /** A healed ridge that looks the same from everywhere along it: straight arch, level crest, one set of widths, no eminences. */
  const prism = (plan: Plan): Plan => {
    const { site } = plan;
    const { widths, inclination } = site.ridge;
    const level = (n: Site['mesial']) => ({ ...n, boneLevel: 0, ridge: { widths, inclination } });
    return {
      ...plan,
      site: {
        ...site,
        arch: { ...site.arch, depth: 0 },
        state: { kind: 'healed' },
        ridge: {
          ...site.ridge,
          eminence: { height: 0, halfWidth: 3 },
          undercut: { ...site.ridge.undercut, depth: 0 },
          scallop: 0,
          crestDrop: 0,
        },
        mesial: level(site.mesial),
        distal: level(site.distal),
        canal: { ...site.canal, behind: 60 },
      },
    };
  };

  it('turning ridge and implant together about the crest leaves walls, depths below the crest and exposure as they were', () => {
    // Without a mesiodistal tilt the whole section turns rigidly in its own plane; what is judged by the ridge's own depth stays (M2, M3, M10, M11).
    const IDS: readonly ReadingId[] = [
      ...SIDES.flatMap((s) => [`${s}-wall-thinnest`, `${s}-wall-true`] as const),
      'shoulder-to-crest-facial',
      'shoulder-to-crest-palatal',
      'apex-to-concavity',
      'axis-to-ridge-faciopalatal',
      'bone-contact',
    ];
    let compared = 0;
    fc.assert(
      fc.property(anyPlan, within(-12, 12), within(-8, 2), (random, by, c) => {
        const plan = prism(random);
        const ridge = 20;
        const lean = Math.max(-14, Math.min(14, plan.pose.tilt.faciopalatal - plan.site.ridge.inclination));
        const at = (inclination: number): Evaluation => {
          const [s, k] = [Math.sin((inclination * Math.PI) / 180), Math.cos((inclination * Math.PI) / 180)];
          // The platform at the same place in the ridge's own section: `across` and `up`.
          const across = Math.max(-1, Math.min(1, plan.pose.platform.f));
          return evaluate({
            ...plan,
            site: { ...plan.site, ridge: { ...plan.site.ridge, inclination, height: 60 } },
            pose: {
              platform: { m: 0, f: across * k + c * s, c: -across * s + c * k },
              tilt: { faciopalatal: inclination + lean, mesiodistal: 0 },
              roll: 0,
            },
          });
        };
        const [a, b] = [at(ridge), at(ridge + by)];
        for (const id of IDS) {
          const [x, y] = [value(a, id), value(b, id)];
          if (x === null || y === null) expect(y, id).toBe(x);
          else if (id === 'bone-contact') expect(Math.abs(x - y), id).toBeLessThan(0.05);
          else if (id.endsWith('thinnest')) expect(Math.abs(x - y), `${id} ${plan.title}`).toBeLessThan(2e-3);
          else expect(Math.abs(x - y), `${id} ${plan.title}`).toBeLessThan(1e-4);
          compared++;
        }
      }),
      runs(60),
    );
    expect(compared).toBeGreaterThan(500);
  });
});

describe('a wider ridge', () => {
  // A theorem on this domain: healed, straight arch, one set of widths from entries below the rounding (so that adding δ to all of them moves the sheet
  // out by δ everywhere below the crest), widths that never shrink with depth and grow by less than 0.5 a mm, and a ray that leans less than 45° from
  // across the ridge: then the ray crosses the sheet once, and further out for the wider ridge. Over an undercut the nearest of several crossings may change.
  it('never thins a wall at any one level', () => {
    let compared = 0;
    const growing = fc.tuple(within(1.5, 4), fc.array(within(0, 1.5), { minLength: 3, maxLength: 3 }));
    fc.assert(
      fc.property(
        growing,
        growing,
        within(0.05, 1.5),
        fc.tuple(within(0, 40), within(-30, 30), within(-25, 25), within(-2, 2), within(-4, 2)),
        fc.constantFrom(...SIDES),
        ([f0, fs], [p0, ps], delta, [ridge, lean, md, f, c], side) => {
          const widths = (more: number): WidthEntry[] => {
            const entries: WidthEntry[] = [];
            let [facial, palatal] = [f0, p0];
            for (const [i, depth] of [1, 4, 7, 12].entries()) {
              if (i > 0) {
                facial += fs[i - 1];
                palatal += ps[i - 1];
              }
              entries.push({
                depth,
                facial: facial + (side === 'facial' ? more : 0),
                palatal: palatal + (side === 'palatal' ? more : 0),
              });
            }
            return entries;
          };
          const at = (more: number) => {
            const w = widths(more);
            const plan = slabPlan({
              f,
              c,
              fp: Math.max(-10, Math.min(50, ridge + lean)),
              md,
              ridge: { widths: w, inclination: ridge, crestRounding: 0.8 },
              about: { widths: w, inclination: ridge },
            });
            const { profiles } = evaluate({
              ...plan,
              site: { ...plan.site, canal: { ...plan.site.canal, behind: 60 } },
            });
            return profiles.find((p) => p.side === side)?.samples ?? [];
          };
          const wider = new Map(at(delta).map((s) => [s.level.toFixed(9), s]));
          for (const before of at(0)) {
            const after = wider.get(before.level.toFixed(9));
            if (!after || before.wall === null || after.wall === null || !before.counts) continue;
            expect(after.wall, `at ${before.level}`).toBeGreaterThanOrEqual(before.wall - 1e-7);
            compared++;
          }
        },
      ),
      runs(80),
    );
    expect(compared).toBeGreaterThan(5000);
  });
});

describe('advance', () => {
  // The shoulder goes d down its axis and the bone stays; on a straight neck the point K where the envelope meets the bone stays too (M6).
  it('by d changes the shoulder to the crest by −d in all four directions', () => {
    const WAYS = ['facial', 'palatal', 'mesial', 'distal'] as const;
    let compared = 0;
    fc.assert(
      fc.property(cylinderPlan, within(-1.5, 1.5), (plan, d) => {
        const before = evaluate(plan);
        const after = evaluate(advance(plan, d));
        for (const way of WAYS) {
          const [x, y] = [
            value(before, `shoulder-to-crest-${way}`),
            value(after, `shoulder-to-crest-${way}`),
          ];
          // Bone met only near the apex comes and goes with the implant's end.
          if (x === null || y === null) continue;
          expect(y - x, `${way} ${plan.title}`).toBeCloseTo(-d, 7);
          compared++;
        }
      }),
      runs(100),
    );
    expect(compared).toBeGreaterThan(300);
  });

  it('by d changes the levels taken along z by d times the axis’s coronal part', () => {
    fc.assert(
      fc.property(libraryPlan, within(-2, 2), (plan, d) => {
        const before = evaluate(plan);
        const after = evaluate(advance(plan, d));
        const ac = axisOf(plan.pose.tilt)[2];
        const change = (id: ReadingId) =>
          (value(after, id) ?? Number.NaN) - (value(before, id) ?? Number.NaN);
        expect(change('shoulder-to-cej')).toBeCloseTo(-d * ac, 9);
        expect(change('shoulder-to-gum-present')).toBeCloseTo(-d * ac, 9);
        expect(change('shoulder-to-gum-margin')).toBeCloseTo(d * ac, 9);
        // The floor as well: the lowest point goes down with the rest.
        expect(change('apex-to-floor')).toBeCloseTo(-d * ac, 9);
        // Nothing of the axis changes.
        for (const id of ['incisal-line-offset', 'incisal-line-place', 'axis-to-crown-total'] as const)
          expect(change(id), id).toBeCloseTo(0, 9);
      }),
      runs(80),
    );
  });
});

describe('true against profile', () => {
  // Model 4: where both are ≥ 0, true is never larger than the profile's thinnest on the same window; where the profile is negative, negative too.
  it('is never the larger where neither is negative, and negative where the profile is', () => {
    let both = 0;
    let outside = 0;
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const e = evaluate(plan);
        for (const side of SIDES) {
          const thinnest = value(e, `${side}-wall-thinnest`);
          const direct = value(e, `${side}-wall-true`);
          if (thinnest === null || direct === null) continue;
          if (thinnest < -1e-6) {
            expect(direct, `${side} ${plan.title}`).toBeLessThan(0);
            outside++;
          } else if (direct >= 0) {
            // The canal is no bone for the profile and no sheet for the true distance.
            const canal = e.profiles.some((p) => p.samples.some((s) => s.gap > 0));
            if (canal) continue;
            expect(direct, `${side} ${plan.title}`).toBeLessThanOrEqual(thinnest + 1e-6);
            both++;
          }
        }
      }),
      runs(250),
    );
    expect(both).toBeGreaterThan(80);
    expect(outside).toBeGreaterThan(40);
  });
});

describe('every plan', () => {
  it('has every reading once, in the model’s order, finite, with a unit, a status that fits and a reason where there is no value', () => {
    fc.assert(
      fc.property(libraryPlan, (plan) => {
        const { readings, findings } = evaluate(plan);
        expect(readings.map((r) => r.id)).toEqual([...READING_IDS]);
        for (const r of readings) {
          if (r.value === null) {
            expect(r.status, r.id).toBe('not-applicable');
            expect(r.reason, r.id).not.toBeNull();
          } else {
            expect(Number.isFinite(r.value), r.id).toBe(true);
            if (r.status === null) expect(['no-limit', 'not-counted', 'outside']).toContain(r.reason);
            else expect(r.limit, r.id).not.toBeNull();
          }
          for (const p of [r.from, r.to]) if (p) expect(p.every(Number.isFinite), r.id).toBe(true);
        }
        const judged = readings.filter((r) => r.status === 'near' || r.status === 'beyond');
        expect(findings.map((f) => f.reading).sort()).toEqual(judged.map((r) => r.id).sort());
        for (const f of findings) expect(f.by).toBeGreaterThan(0);
        const ranks = findings.map((f) => (f.status === 'beyond' ? 0 : 1));
        expect(ranks).toEqual([...ranks].sort());
      }),
      runs(100),
    );
  });

  it('is measured purely: twice the same answer, and the plan untouched', () => {
    fc.assert(
      fc.property(libraryPlan, (plan) => {
        const before = JSON.stringify(plan);
        const once = evaluate(plan);
        const twice = evaluate(JSON.parse(before) as Plan);
        expect(twice.readings).toEqual(once.readings);
        expect(JSON.stringify(plan)).toBe(before);
      }),
      runs(25),
    );
  });

  it('has areas that add up: bare and in bone are the whole thread', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const e = evaluate(plan);
        const bare = ['exposure-dehiscence', 'exposure-fenestration', 'exposure-socket'] as const;
        const sum = bare.reduce((total, id) => total + (value(e, id) ?? 0), 0);
        const contact = value(e, 'bone-contact') ?? Number.NaN;
        expect(contact).toBeGreaterThanOrEqual(-1e-9);
        expect(contact).toBeLessThanOrEqual(100 + 1e-9);
        if (contact > 99.999) expect(sum).toBeLessThan(0.02);
        // A whole thread bare: area = sum; otherwise sum/(1 − contact/100) is the whole, the same for every split.
        const { implantedDiameter: d, implantedLength: l } = plan.implant;
        if (contact < 99) {
          const whole = sum / (1 - contact / 100);
          expect(whole).toBeLessThanOrEqual(Math.PI * d * l * 1.02);
          expect(whole).toBeGreaterThan(Math.PI * d * l * 0.5);
        }
        const pitches = value(e, 'exposed-threads') ?? Number.NaN;
        expect(pitches).toBeLessThanOrEqual(l / plan.implant.thread.pitch + 1e-9);
      }),
      runs(100),
    );
  });
});
