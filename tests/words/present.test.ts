/**
 * What the core answers in codes has its words, and what it answers in numbers is shown on its own side of every limit. Sources: the core's own
 * lists of codes (a code without words fails here), rule M14, and the project's rule that rounding never carries a number across its limit.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SITES } from '../../src/core/anatomy/site.ts';
import { originOf, type TableTooth, tiltOriginOf } from '../../src/core/anatomy/toothTable.ts';
import { IMPLANT_LIBRARY } from '../../src/core/implant/library.ts';
import { DEFAULT_LIMITS, LIMIT_KEYS } from '../../src/core/measure/defaultLimits.ts';
import { judge, type Known, type Strength } from '../../src/core/measure/limit.ts';
import {
  READING_IDS,
  type Reading,
  type Reason,
  type Status,
  type Unit,
} from '../../src/core/measure/reading.ts';
import { defaultSite, SITE_ORIGINS } from '../../src/core/plan/defaults.ts';
import { evaluate } from '../../src/core/plan/evaluate.ts';
import { type FaultCode, fault } from '../../src/core/plan/fault.ts';
import { SITE_PRESETS } from '../../src/core/plan/presets.ts';
import { siteNumbers } from '../../src/core/plan/siteFields.ts';
import { en } from '../../src/words/en.ts';
import { presentFault } from '../../src/words/presentFault.ts';
import { presentReading, quantityOf, sourceText } from '../../src/words/presentReading.ts';
import { presentShape } from '../../src/words/presentShape.ts';
import { presentSummary } from '../../src/words/presentSummary.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { MEAN_PLANS } from '../support/meanPlans.ts';
import { libraryPlan, runs, within } from '../support/randomPlans.ts';

const words: Readonly<Record<string, string>> = en;

/** Every code of a union, listed once: a code more or less in the core is a type error here. */
const all = <T extends string>(codes: Readonly<Record<T, true>>): T[] => Object.keys(codes) as T[];

const REASONS = all<Reason>({
  'no-limit': true,
  'not-counted': true,
  'shoulder-deeper': true,
  'past-apex': true,
  'through-crest': true,
  'nothing-counts': true,
  'void-between': true,
  'no-bone-met': true,
  'no-wall': true,
  'healed-site': true,
  'axis-misses-socket': true,
  'canal-elsewhere': true,
  'round-neck': true,
  'wrong-fixing': true,
  'misses-crown': true,
  'no-palatal-way': true,
  'no-contour': true,
  'shoulder-shows': true,
  'no-abutment': true,
  'opponents-elsewhere': true,
  'one-piece': true,
  outside: true,
});
const STATUSES = all<Status>({ within: true, near: true, beyond: true, 'not-applicable': true });
const UNITS = all<Unit>({
  mm: true,
  deg: true,
  percent: true,
  mm2: true,
  mm3: true,
  count: true,
  ratio: true,
  place: true,
});
const STRENGTHS = all<Strength>({
  convention: true,
  expert: true,
  moderate: true,
  good: true,
  consensus: true,
  clinical: true,
  'cross-sectional': true,
  review: true,
  ours: true,
});
const KNOWN = all<Known>({
  read: true,
  'second-hand': true,
  memory: true,
  derived: true,
  ours: true,
  'common-practice': true,
});
const FAULTS = all<FaultCode>({
  'too-large': true,
  'not-json': true,
  'not-a-plan': true,
  'newer-version': true,
  'unknown-version': true,
  missing: true,
  'wrong-type': true,
  'out-of-range': true,
  'not-allowed': true,
  'unknown-field': true,
  'too-long': true,
  'wrong-count': true,
  'depths-not-rising': true,
  'ridge-too-thin': true,
  'ridge-too-flared': true,
  'ridge-too-low': true,
  'arch-too-tight': true,
  'roots-meet': true,
  contradiction: true,
  'other-exercise': true,
  'answer-changed': true,
});

const has = (key: string) => {
  expect(words[key], key).toBeTypeOf('string');
};

describe('codes have their words', () => {
  it('readings, statuses, reasons, units, strengths, how a number is known', () => {
    for (const id of READING_IDS) has(`reading.${id}`);
    for (const status of [...STATUSES, 'none', 'not-counted']) has(`status.${status}`);
    for (const reason of REASONS) {
      has(`reason.${reason}`);
      expect(`why.${reason}` in words, reason).toBe(true);
    }
    for (const unit of UNITS) if (unit !== 'place') has(`unit.${unit}`);
    for (const place of ['facial', 'edge', 'palatal']) has(`place.${place}`);
    for (const strength of STRENGTHS) has(`strength.${strength}`);
    for (const known of KNOWN) has(`known.${known}`);
    for (const code of FAULTS) has(`fault.${code}`);
  });

  it('sources of limits, of the site’s defaults, of the tooth table', () => {
    const sources = new Set([
      'own',
      ...LIMIT_KEYS.map((key) => DEFAULT_LIMITS[key].source),
      ...Object.values(SITE_ORIGINS).map((o) => o.source),
      ...SITES.flatMap((tooth) => siteNumbers(defaultSite(tooth)).map((n) => n.source)),
    ]);
    const TEETH: readonly TableTooth[] = [
      'central',
      'lateral',
      'canine',
      'premolar1',
      'premolar2',
      'lower-central',
      'lower-lateral',
    ];
    for (const tooth of TEETH) sources.add(originOf(tooth, 'crownWidth').source);
    for (const cls of ['central', 'lateral', 'canine', 'premolar1', 'premolar2'] as const)
      for (const part of ['faciopalatal', 'mesiodistal'] as const)
        sources.add(tiltOriginOf(cls, part).source);
    for (const source of sources) {
      has(`source.${source}`);
      expect(sourceText(source).length).toBeGreaterThan(3);
    }
  });

  it('numbers of a site, their groups, the presets', () => {
    for (const tooth of SITES) {
      const site = defaultSite(tooth);
      const states = [site, ...SITE_PRESETS.map((preset) => preset.apply(site))];
      for (const state of states)
        for (const { name, group, source } of siteNumbers(state)) {
          has(`siteField.${name}`);
          has(`siteGroup.${group}`);
          has(`source.${source}`);
        }
    }
    for (const { id, source } of SITE_PRESETS) {
      has(`preset.${id}`);
      has(`source.${source}`);
    }
  });

  it('every shape of the library is said in words, with its size; a shape of one’s own by its own name', () => {
    const texts = IMPLANT_LIBRARY.map(presentShape);
    expect(new Set(texts).size).toBe(IMPLANT_LIBRARY.length);
    IMPLANT_LIBRARY.forEach((shape, i) => {
      expect(texts[i]).not.toBe(shape.name);
      expect(texts[i]).toMatch(/^(tapered|parallel), [a-z ]+, \d\.\d × \d+\.\d$/);
      expect(texts[i]).toContain(shape.implantedDiameter.toFixed(1));
      expect(texts[i]).toContain(shape.implantedLength.toFixed(1));
    });
    expect(presentShape({ ...IMPLANT_LIBRARY[0], name: 'my own' })).toBe('my own');
  });

  it('no template is left with an open slot, whatever is read', () => {
    fc.assert(
      fc.property(libraryPlan, (plan) => {
        const evaluation = evaluate(plan);
        for (const reading of evaluation.readings) {
          const shown = presentReading(reading);
          for (const text of Object.values(shown)) expect(text).not.toMatch(/[{}]|undefined|NaN/);
          expect(shown.label).not.toBe('');
          if (reading.value === null) expect(shown.reason, reading.id).not.toBe('');
          if (reading.limit) {
            expect(shown.limit, reading.id).not.toBe('');
            expect(shown.source, reading.id).not.toBe('');
            expect(shown.strength, reading.id).not.toBe('');
          }
        }
        const { lead, rest } = presentSummary(evaluation);
        for (const text of [lead, rest]) expect(text).not.toMatch(/[{}]|undefined|NaN/);
      }),
      runs(60),
    );
  });

  it('each fault says its field', () => {
    for (const code of FAULTS) {
      if (code === 'not-json' || code === 'too-large' || code === 'newer-version') continue;
      const line = presentFault(fault(code, 'site.gap', { value: 3.5, low: 1, high: 2, allowed: 'x' }));
      expect(line, code).toContain('site.gap');
      expect(line, code).not.toMatch(/[{}\n]/);
    }
  });
});

describe('a shown reading', () => {
  const readBack = (shown: string): number => Number(shown.replace('\u2212', '-').replace('+', ''));
  const example = evaluate(SITES_DEMO[0].plan).readings.filter((r) => r.limit !== null && r.value !== null);

  it('is judged as the measured one: rounding never crosses a limit', () => {
    // Values about each bound, as close as a ten-millionth.
    const off = fc.oneof(within(-0.2, 0.2), within(-1e-3, 1e-3), within(-1e-6, 1e-6), fc.constant(0));
    fc.assert(
      fc.property(fc.constantFrom(...LIMIT_KEYS), fc.nat(3), off, (key, which, by) => {
        const limit = DEFAULT_LIMITS[key];
        const { low, high } = limit.bands;
        const bounds = [low?.near, low?.beyond, high?.near, high?.beyond].filter((b) => b !== undefined);
        const value = bounds[which % bounds.length] + by;
        const unit = key === 'exposure' ? 'mm2' : key === 'emergence' || key === 'exit-screw' ? 'deg' : 'mm';
        const reading: Reading = { ...example[0], unit, value, limit, judgedAt: null };
        const shown = presentReading(reading);
        // What is nearer to a bound than 1e-9 is on it (M14 and the formatter agree).
        expect(judge(readBack(shown.number), limit.bands), `${value} shown ${shown.number}`).toBe(
          judge(value, limit.bands),
        );
      }),
      runs(4000),
    );
  });

  it('holds for every reading of every plan that comes with the program', () => {
    for (const { plan } of [...SITES_DEMO, ...MEAN_PLANS])
      for (const reading of evaluate(plan).readings) {
        const { number, quantity } = presentReading(reading);
        if (reading.value === null) {
          expect([number, quantity]).toEqual(['–', '–']);
          continue;
        }
        expect(quantity.startsWith(number)).toBe(true);
        if (reading.unit === 'place') {
          expect(number).toBe(words[`place.${['facial', 'edge', 'palatal'][reading.value + 1]}`]);
          continue;
        }
        if (reading.limit && !reading.id.endsWith('thinnest')) {
          expect(judge(readBack(number), reading.limit.bands), `${plan.title} ${reading.id}`).toBe(
            judge(reading.value, reading.limit.bands),
          );
        }
        expect(Math.abs(readBack(number) - reading.value)).toBeLessThanOrEqual(
          reading.unit === 'percent' || reading.unit === 'count' ? 0.5 : 0.05 + 1e-9,
        );
      }
  });

  it('says by hand: 1.4 mm, at least 2.0, customary, near', () => {
    const reading: Reading = {
      ...example[0],
      id: 'facial-wall-thinnest',
      unit: 'mm',
      value: 1.38,
      level: 5.68,
      limit: DEFAULT_LIMITS['facial-wall-crest'],
      status: 'near',
      reason: null,
      judgedAt: null,
    };
    expect(presentReading(reading)).toMatchObject({
      label: 'Facial wall, thinnest',
      number: '1.4',
      quantity: '1.4\u00A0mm',
      level: '5.7\u00A0mm',
      limit: '≥ 2.0',
      strength: 'customary',
      status: 'near',
      mark: 'near',
      reason: '',
    });
    // Judged at another level: its band says at which.
    const elsewhere = presentReading({ ...reading, judgedAt: { level: 3, value: 1.2 } });
    expect(elsewhere.limit).toBe('≥ 2.0 at 3.0\u00A0mm,');
    // Not counted, and not there at all.
    expect(presentReading({ ...reading, status: null, reason: 'not-counted' })).toMatchObject({
      status: 'not counted',
      mark: 'none',
    });
    expect(
      presentReading({ ...reading, value: null, status: 'not-applicable', reason: 'through-crest' }),
    ).toMatchObject({
      number: '–',
      status: 'not applicable',
      mark: 'none',
    });
    expect(quantityOf(reading).limits).toEqual([2, 1]);
  });

  it('a limit of both sides names both: 3.0 to 4.0', () => {
    const reading: Reading = {
      ...example[0],
      id: 'shoulder-to-gum-margin',
      value: 3.2,
      limit: DEFAULT_LIMITS['depth-screw-bone'],
      judgedAt: null,
    };
    expect(presentReading(reading).limit).toBe('3.0 to 4.0');
  });
});

describe('the summary', () => {
  it('counts what is beyond and near as the findings do, and marks by the worst', () => {
    for (const { plan } of [...SITES_DEMO, ...MEAN_PLANS]) {
      const evaluation = evaluate(plan);
      const { mark, lead } = presentSummary(evaluation);
      const beyond = evaluation.findings.filter((f) => f.status === 'beyond').length;
      const near = evaluation.findings.length - beyond;
      expect(mark).toBe(beyond > 0 ? 'beyond' : near > 0 ? 'near' : 'within');
      const said = (n: number) => words[`count.${n}`] ?? String(n);
      expect(lead.toLowerCase()).toContain(said(near).toLowerCase());
      expect(lead.toLowerCase()).toContain(said(beyond).toLowerCase());
    }
  });
});
