/** Words of the drilling. Sources: the core's own codes, the trade's words, and the project's rule that rounding never carries a number across its limit. */
import { describe, expect, it } from 'vitest';
import { depthStrip } from '../../src/core/drilling/depthStrip.ts';
import { drillingPlan } from '../../src/core/drilling/drillingPlan.ts';
import { drillSiteOf } from '../../src/core/drilling/drillSite.ts';
import { GENERIC_KIT } from '../../src/core/drilling/genericKit.ts';
import { PASS_FAULTS, type PassFault } from '../../src/core/drilling/passFaults.ts';
import { reachReport } from '../../src/core/drilling/reach.ts';
import { evaluate } from '../../src/core/plan/evaluate.ts';
import {
  drillingCautions,
  presentChain,
  presentChecks,
  presentLastDrill,
  presentMarkAt,
  presentOpening,
  presentReach,
  presentSteps,
  presentStrip,
} from '../../src/words/presentDrilling.ts';
import { presentKitFault, presentToolNumbers, presentToolRef } from '../../src/words/presentKit.ts';
import { presentPassFault, presentSideways } from '../../src/words/presentPasses.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';

const NB = '\u00A0';
const [pilot] = GENERIC_KIT.drills;

/** Texts of everything that is shown of a demo's drilling. */
function textsOf(demo: number): string[] {
  const { plan } = SITES_DEMO[demo];
  const { placement } = evaluate(plan);
  const site = drillSiteOf(placement);
  if (!site) throw new Error('the axis of a demo meets no bone');
  const order = drillingPlan(site, { kit: GENERIC_KIT, spare: 0.5, flap: false });
  const { chain, last } = order;
  if (!chain || !last) throw new Error('no drill for a demo');
  const { floor } = plan.site.ridge;
  const rows = [
    ...presentChain(chain, GENERIC_KIT.drills[last.index]),
    ...presentChecks(chain, floor),
    ...presentStrip(depthStrip(site, chain, 2), floor),
    ...presentSteps(order, GENERIC_KIT, plan.implant),
  ];
  const { reaches, opening } = reachReport(site, GENERIC_KIT, last.index, chain);
  return [
    ...rows.flatMap((row) => Object.values(row).filter((v) => typeof v === 'string')),
    ...presentLastDrill(last, GENERIC_KIT),
    ...reaches.flatMap((reach) => Object.values(presentReach(reach))),
    presentOpening(opening),
    ...drillingCautions(),
  ];
}

describe('the drilling in words', () => {
  it('has every number and every word for each demo', () => {
    for (let demo = 0; demo < SITES_DEMO.length; demo++) {
      const texts = textsOf(demo);
      expect(texts.length).toBeGreaterThan(60);
      for (const text of texts) expect(text).not.toMatch(/[{}]|NaN|undefined|\u2013 mm/);
    }
  });

  it('says that no force is modelled', () => {
    expect(drillingCautions()[0]).toMatch(/^No force is modelled\./);
    expect(drillingCautions()[1]).toContain('47 °C for 1 min');
  });

  it('names tools by what they are', () => {
    expect(presentToolRef(GENERIC_KIT, { kind: 'drill', index: 0 })).toBe(`2.0${NB}mm drill`);
    expect(presentToolRef(GENERIC_KIT, { kind: 'neck', index: 0 })).toBe(`neck cutter 3.0 to 3.5${NB}mm`);
    expect(presentToolRef(GENERIC_KIT, null)).toBe('implant');
    expect(presentToolNumbers(pilot)).toContain('marks 4, 6, 8, 10, 12, 14, 16, 18');
    expect(presentToolNumbers(pilot)).toContain(`1000 to 1200${NB}rpm`);
  });

  it('says how a mark lies on the drill', () => {
    const at = (value: number, mark: number | null, beyond = 0) =>
      presentMarkAt(
        {
          value,
          read: 'bone',
          edges: null,
          after: mark === null ? null : { mark, past: value - mark },
          beyond,
        },
        pilot,
      );
    expect(at(12.7, 12)).toBe(`0.7${NB}mm past the mark 12`);
    expect(at(12, 12)).toBe('at the mark 12');
    expect(at(3, null)).toBe('before the first mark');
    expect(at(19, 18, 1)).toBe(`1.0${NB}mm past the last mark 18`);
  });

  it('says why a kit cannot', () => {
    const tool = { kind: 'drill', index: 1 } as const;
    const fault = { code: 'drill-too-short', tool, value: 13, needed: 13.193 } as const;
    expect(presentKitFault(fault, GENERIC_KIT)).toBe(
      `2.4${NB}mm drill: 13.0${NB}mm long to the head; its tip has to go 13.2${NB}mm below the crest.`,
    );
  });
});

describe('a rehearsal in words', () => {
  const setting = { kit: GENERIC_KIT, passes: [], floor: 'nose' } as const;
  const fault = (rest: Partial<PassFault>): PassFault => ({
    code: 'oval',
    pass: 0,
    value: 1,
    limit: 0.1,
    unit: 'mm',
    mendedBy: null,
    ...rest,
  });

  it('has a sentence for every fault', () => {
    const texts = PASS_FAULTS.map((code) => presentPassFault(fault({ code }), setting).text);
    for (const text of texts) expect(text).toMatch(/^[A-Z0-9].*\.$/);
    expect(new Set(texts).size).toBe(PASS_FAULTS.length);
  });

  it('keeps a number on its side of the threshold', () => {
    const text = (value: number) =>
      presentPassFault(fault({ code: 'near-floor', value, limit: 2 }), setting).text;
    expect(text(1.98)).toContain(`ended 1.98${NB}mm from the floor of the nose`);
    expect(text(1.4)).toContain(`1.4${NB}mm`);
  });

  it('gives the published threshold of heat, and whose the others are', () => {
    const hot = presentPassFault(fault({ code: 'too-fast', value: 1500, limit: 1200, unit: 'rpm' }), setting);
    expect(hot.text).toBe(`1500${NB}rpm, more than the 1200${NB}rpm usual for this drill.`);
    expect(hot.note).toContain('47 °C');
    expect(presentPassFault(fault({}), setting).note).toBe(`Threshold of this project: 0.1${NB}mm.`);
  });

  it('says sideways by its own directions', () => {
    const at = (faciopalatal: number, mesiodistal: number) =>
      presentSideways({ faciopalatal, mesiodistal, lateral: Math.hypot(faciopalatal, mesiodistal) });
    expect(at(0.42, -0.2)).toBe(`0.4${NB}mm facially, 0.2${NB}mm distally`);
    expect(at(-0.42, 0.01)).toBe(`0.4${NB}mm palatally`);
    expect(at(0, 0.3)).toBe(`0.3${NB}mm mesially`);
    expect(at(0.04, 0)).toBe('on it');
  });
});
