import { describe, expect, it } from 'vitest';
import { axisOf } from '../../src/core/geometry/pose.ts';
import { shift, tiltTo } from '../../src/core/plan/edits.ts';
import { solidsOf } from '../../src/core/plan/evaluate.ts';
import {
  drillPoseOf,
  handOf,
  kitOf,
  passBodies,
  passesShown,
  planInHand,
  pointAt,
  rehearsalOf,
  withHandMoved,
} from '../../src/core/plan/inHand.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import {
  drilledUnder,
  drillTo,
  holdAt,
  lift,
  pressAgainst,
  setWander,
  showPasses,
  standIn,
  startAnew,
  takeTool,
  toPlannedAxis,
} from '../../src/core/plan/rehearse.ts';
import { startSeating } from '../../src/core/plan/seat.ts';
import { DEMO_PLANS } from '../../src/io/plans.ts';
import { slabPlan } from '../support/slabs.ts';

// What is checked here is this project's own bookkeeping of a rehearsal; the geometry of holes has its outside checks in drilling-*.test.ts.
const PLANS = DEMO_PLANS.map(({ plan }) => plan);
const first = PLANS[0];

const passesOf = (plan: Plan) => rehearsalOf(plan).passes;

describe('the tool in the hand', () => {
  it('is the first drill over the bone, on the planned axis, before any was taken', () => {
    for (const plan of PLANS) {
      const hand = handOf(plan);
      expect(hand.tool).toEqual({ kind: 'drill', index: 0 });
      expect(hand.pose).toEqual(drillPoseOf(plan.pose));
      expect(hand.depth).toBeLessThan(0);
    }
  });

  it('stands in the implant’s place with its bottom at its depth', () => {
    for (const plan of PLANS) {
      const held = holdAt(plan, 7);
      const seen = planInHand(held);
      const a = axisOf(seen.pose.tilt);
      const { m, f, c } = seen.pose.platform;
      const length = seen.implant.implantedLength;
      const bottom = pointAt(solidsOf(plan.site), handOf(held).pose, 7);
      [m, f, c].forEach((v, i) => {
        expect(v - length * a[i]).toBeCloseTo(bottom[i], 9);
      });
    }
  });

  it('moved where it is seen is moved where it is kept: shift and tilt go there and back', () => {
    for (const plan of PLANS) {
      const held = holdAt(plan, 5);
      const seen = planInHand(held);
      const moved = shift(seen, 0.3, -0.2);
      const kept = planInHand(withHandMoved(held, moved));
      expect(kept.pose.platform.m).toBeCloseTo(moved.pose.platform.m, 8);
      expect(kept.pose.platform.f).toBeCloseTo(moved.pose.platform.f, 8);
      expect(kept.pose.platform.c).toBeCloseTo(moved.pose.platform.c, 8);
      const tilt = { faciopalatal: seen.pose.tilt.faciopalatal + 3, mesiodistal: seen.pose.tilt.mesiodistal };
      const turned = tiltTo(seen, tilt, 'apex');
      const back = planInHand(withHandMoved(held, turned));
      expect(back.pose.tilt).toEqual(tilt);
      expect(back.pose.platform.c).toBeCloseTo(turned.pose.platform.c, 8);
    }
  });
});

describe('passes', () => {
  it('go on while tool and axis stay, and are new ones when either changes', () => {
    const once = drillTo(first, 6);
    expect(passesOf(once)).toHaveLength(1);
    const deeper = drillTo(once, 9);
    expect(passesOf(deeper).map(({ depth }) => depth)).toEqual([9]);
    const wider = drillTo(takeTool(deeper, { kind: 'drill', index: 1 }), 9);
    expect(passesOf(wider).map(({ tool }) => tool.index)).toEqual([0, 1]);
    const { pose } = handOf(wider);
    const leaning = withHandMoved(
      wider,
      tiltTo(planInHand(wider), { ...pose.tilt, faciopalatal: pose.tilt.faciopalatal + 2 }, 'entry'),
    );
    expect(passesOf(drillTo(leaning, 9))).toHaveLength(3);
    expect(drilledUnder(wider)).toBe(9);
  });

  it('are not taken back by lifting, holding elsewhere or returning to the plan', () => {
    const drilled = drillTo(first, 8);
    for (const after of [lift(drilled), holdAt(drilled, 2), toPlannedAxis(lift(drilled))])
      expect(passesOf(after)).toEqual(passesOf(drilled));
    expect(passesOf(startAnew(drilled))).toEqual([]);
  });

  it('are looked at one by one, and what is drilled then takes the place of the later ones', () => {
    let plan = drillTo(first, 6);
    for (const index of [1, 2]) plan = drillTo(takeTool(plan, { kind: 'drill', index }), 9);
    const back = showPasses(plan, 2);
    expect(passesShown(back)).toHaveLength(2);
    expect(passesShown(showPasses(plan, 2))).toBe(passesShown(back));
    expect(passBodies(back)).toHaveLength(2);
    expect(handOf(back).tool.index).toBe(1);
    expect(showPasses(back, 3)).toMatchObject({ rehearsal: { shown: null } });
    const other = drillTo(takeTool(back, { kind: 'drill', index: 3 }), 9);
    expect(passesOf(other).map(({ tool }) => tool.index)).toEqual([0, 1, 3]);
  });

  it('a press that tips stands the hand where it ends: 0.5 mm at the mouth over 14 mm is 2.0° (asin 0.5/14 = 2.05°)', () => {
    const slab = slabPlan();
    const drilled = drillTo(slab, 14);
    const tipped = handOf(pressAgainst(drilled, { toward: 0, mouth: 0.5, bottom: 0 })).pose;
    expect(tipped.tilt.faciopalatal - handOf(drilled).pose.tilt.faciopalatal).toBeCloseTo(
      (Math.atan2(0.5, 14) * 180) / Math.PI,
      6,
    );
    expect(tipped.mouth.f - handOf(drilled).pose.mouth.f).toBeCloseTo(0.5, 6);
    const shifted = handOf(pressAgainst(drilled, { toward: 180, mouth: 0.4, bottom: 0.4 })).pose;
    expect(shifted.tilt.faciopalatal).toBeCloseTo(handOf(drilled).pose.tilt.faciopalatal, 9);
    expect(shifted.mouth.f - handOf(drilled).pose.mouth.f).toBeCloseTo(-0.4, 9);
  });

  it('stand a tool in the hole of a pass', () => {
    const two = drillTo(takeTool(drillTo(first, 6), { kind: 'drill', index: 1 }), 9);
    const stood = handOf(standIn(lift(two), 0));
    expect(stood).toMatchObject({ tool: { index: 0 }, depth: 6, pose: passesOf(two)[0].pose });
  });
});

describe('what a teacher dials in', () => {
  it('carries the drill off on a slab: drift of 1 mm per 10 mm leans it facially by atan(0.1)', () => {
    const dialled = setWander(slabPlan(), { skid: 0, drift: 1 });
    const [pass] = passesOf(drillTo(dialled, 10));
    const held = handOf(dialled).pose;
    // The bottom goes facially, so the crown end leans palatally.
    expect(pass.pose.tilt.faciopalatal - held.tilt.faciopalatal).toBeCloseTo(
      (-Math.atan(0.1) * 180) / Math.PI,
      6,
    );
    expect(pass.pose.mouth.f).toBeCloseTo(held.mouth.f, 9);
  });

  it('skids down the slope of the crest, whichever way that is, not at all at 0 nor on a level one', () => {
    for (const plan of PLANS) {
      if (plan.title === DEMO_PLANS[4].plan.title) continue;
      const held = handOf(plan).pose;
      const [still] = passesOf(drillTo(setWander(plan, { skid: 0, drift: 0 }), 6));
      expect(still.pose).toEqual(held);
      const [skidded] = passesOf(drillTo(setWander(plan, { skid: 0.5, drift: 0 }), 6));
      const by = skidded.pose.mouth.f - held.mouth.f;
      // Down: where the bone lies further apical along the drill's own axis.
      const a = axisOf(held.tilt);
      const along = (side: number): number => {
        const pose = { ...held, mouth: { ...held.mouth, f: held.mouth.f + 0.05 * side } };
        return pointAt(solidsOf(plan.site), pose, 0).reduce((sum, v, i) => sum + v * a[i], 0);
      };
      const there = -along(Math.sign(by));
      const other = -along(-Math.sign(by));
      expect(Math.abs(by)).toBeGreaterThan(0.3);
      expect(there).toBeGreaterThan(other);
    }
    const [level] = passesOf(drillTo(setWander(slabPlan(), { skid: 0.5, drift: 0 }), 6));
    expect(level.pose).toEqual(handOf(slabPlan()).pose);
  });
});

it('the kit of a plan is the generic one until it has its own', () => {
  const own = { ...kitOf(first), title: 'mine' };
  expect(kitOf({ ...first, rehearsal: { ...rehearsalOf(first), kit: own } }).title).toBe('mine');
});

describe('what follows from another pass', () => {
  it('an implant that stood in the hole is out of it', () => {
    const drilled = drillTo(first, 8);
    const seated = startSeating(drilled, 0);
    expect(rehearsalOf(seated).seating).toHaveLength(1);
    expect(rehearsalOf(drillTo(seated, 9)).seating).toEqual([]);
    expect(rehearsalOf(pressAgainst(seated, { toward: 0, mouth: 0.2, bottom: 0.2 })).seating).toEqual([]);
  });

  it('after a press the hand stands in the hole that the press has made', () => {
    const pressed = pressAgainst(drillTo(first, 8), { toward: 180, mouth: 0.3, bottom: 0 });
    expect(drilledUnder(pressed)).toBe(8);
  });
});
