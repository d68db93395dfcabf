/** What the worker tells of a rehearsal, and another kit under passes that were made. The passes are invented. */
import { describe, expect, it } from 'vitest';
import { GENERIC_KIT } from '../../src/core/drilling/genericKit.ts';
import type { Kit } from '../../src/core/drilling/kit.ts';
import { weightOf } from '../../src/core/drilling/rehearsalSummary.ts';
import { drillingOf } from '../../src/core/plan/drilling.ts';
import { drillReport } from '../../src/core/plan/drillReport.ts';
import { advance } from '../../src/core/plan/edits.ts';
import { handOf, kitOf, rehearsalOf, toolOf } from '../../src/core/plan/inHand.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import {
  drillTo,
  pressAgainst,
  setKit,
  setSpeed,
  showPasses,
  startAnew,
  takeTool,
} from '../../src/core/plan/rehearse.ts';
import { parseKitFile, printKitFile } from '../../src/io/kitFile.ts';
import { parsePlanFile, printPlanFile } from '../../src/io/planFile.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { rehearsed } from '../support/rehearsed.ts';

const narrow = SITES_DEMO[0].plan;
const whole = rehearsed(narrow);
/** Two passes, the second too fast and pressed facially. */
const wrong = pressAgainst(
  setSpeed(drillTo(takeTool(drillTo(narrow, 8), { kind: 'drill', index: 1 }), 12), 2500),
  { toward: 0, mouth: 0.5, bottom: 0 },
);

describe('the report of a rehearsal', () => {
  it('is plain data: what comes out of a structured clone is the same', () => {
    for (const plan of [whole, wrong]) {
      const report = drillReport(plan);
      expect(structuredClone(report)).toEqual(report);
      expect(JSON.parse(JSON.stringify(report))).toEqual(report);
    }
  });

  it('says so where the plan was followed', () => {
    const { summary, standing, passes } = drillReport(whole);
    expect(summary?.rows).toHaveLength(rehearsalOf(whole).passes.length);
    expect(summary?.faults).toEqual([]);
    expect(summary?.verdict).toBe('as-planned');
    expect(summary?.outlook).toEqual(standing?.outlook);
    expect(passes.every((readings) => readings.length > 0)).toBe(true);
  });

  it('names the faults of a pass with their weight', () => {
    const { summary } = drillReport(wrong);
    const found = summary?.faults.map((fault) => [fault.code, fault.pass, weightOf(fault)]);
    expect(found).toContainEqual(['too-fast', 2, 'mind']);
    expect(found).toContainEqual(['oval', 2, 'mend']);
    expect(summary?.rows.map(({ faults }) => faults.length)).toEqual([0, 0, found?.length]);
  });

  it('is of the passes that are shown', () => {
    const { summary, passes } = drillReport(showPasses(wrong, 1));
    expect(summary?.rows.map(({ index }) => index)).toEqual([0]);
    expect(passes).toHaveLength(1);
  });

  it('has no summary where the implant stands so high that nothing is to be drilled', () => {
    const high = { ...whole, pose: advance(whole, -15).pose };
    expect(drillingOf(high)?.hole).toBeNull();
    expect(drillReport(high)).toMatchObject({ summary: null, standing: null });
  });
});

describe('another kit', () => {
  const [first, ...rest] = GENERIC_KIT.drills;
  /** A drill of 1.65 comes before the generic ones; every other tool one place on. */
  const own: Kit = { ...GENERIC_KIT, title: 'ours', drills: [{ ...first, diameter: 1.65 }, first, ...rest] };
  const lacking: Kit = { ...GENERIC_KIT, title: 'few', drills: [first, ...rest.slice(1)] };
  const taken = (plan: Plan, kit: Kit | null): Plan => {
    const change = setKit(plan, kit);
    if (!change.ok) throw new Error(`refused for pass ${change.pass}`);
    return change.plan;
  };
  const toolsOf = (plan: Plan) =>
    rehearsalOf(plan).passes.map((pass) => {
      const tool = toolOf(plan, pass.tool);
      return tool && ('diameter' in tool ? tool.diameter : [tool.neckDiameter, tool.height]);
    });

  it('comes from a file, is kept with the plan, and goes back to the generic one', () => {
    const read = parseKitFile(printKitFile(own));
    if (!read.ok) throw new Error(read.faults[0].code);
    const plan = taken(narrow, read.kit);
    expect(kitOf(plan)).toEqual(own);
    const stored = parsePlanFile(printPlanFile(plan));
    expect(stored.ok && stored.plan).toEqual(plan);
    expect(rehearsalOf(taken(plan, null)).kit).toBeNull();
  });

  it('that has the generic kit’s numbers is the generic one', () => {
    const read = parseKitFile(printKitFile(GENERIC_KIT));
    expect(read.ok && rehearsalOf(taken(narrow, read.kit)).kit).toBeNull();
  });

  it('leaves every pass and the hand the tools they had', () => {
    const plan = taken(whole, own);
    expect(toolsOf(plan)).toEqual(toolsOf(whole));
    expect(toolOf(plan, handOf(plan).tool)).toEqual(toolOf(whole, handOf(whole).tool));
    expect(rehearsalOf(plan).passes[0].tool).toEqual({ kind: 'drill', index: 1 });
    expect(taken(plan, null)).toEqual(whole);
  });

  it('is refused where it lacks a tool that a pass was made with, and taken after a new beginning', () => {
    const lost = rehearsalOf(whole).passes.findIndex(({ tool }) => tool.kind === 'drill' && tool.index === 1);
    expect(lost).toBeGreaterThan(0);
    expect(setKit(whole, lacking)).toEqual({ ok: false, pass: lost, tool: GENERIC_KIT.drills[1] });
    expect(kitOf(taken(startAnew(whole), lacking))).toEqual(lacking);
  });

  it('that lacks the tool in the hand gives the hand its first drill', () => {
    const plan = taken(takeTool(narrow, { kind: 'drill', index: 1 }), lacking);
    expect(handOf(plan).tool).toEqual({ kind: 'drill', index: 0 });
    const stored = parsePlanFile(printPlanFile(plan));
    expect(stored.ok).toBe(true);
  });
});
