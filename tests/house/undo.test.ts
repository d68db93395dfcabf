/** Undo and redo over random edits of random plans: undo after do is the identity, redo after undo is do. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { IMPLANT_LIBRARY } from '../../src/core/implant/library.ts';
import { advance, shift, tiltTo, turn, useShape } from '../../src/core/plan/edits.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { createDocumentStore, type DocumentStore } from '../../src/state/document.ts';
import { PIVOTS } from '../../src/state/session.ts';
import { anyPlan, runs, within } from '../support/randomPlans.ts';

type Change = (plan: Plan) => Plan;

/** What a hand can do to a pose, and things that change nothing. */
const change: fc.Arbitrary<Change> = fc.oneof(
  fc.tuple(within(-2, 2), within(-2, 2)).map(
    ([dm, df]): Change =>
      (plan) =>
        shift(plan, dm, df),
  ),
  fc
    .record({
      tilt: fc.record({ faciopalatal: within(-30, 60), mesiodistal: within(-30, 30) }),
      pivot: fc.constantFrom(...PIVOTS),
    })
    .map(
      ({ tilt, pivot }): Change =>
        (plan) =>
          tiltTo(plan, tilt, pivot),
    ),
  within(-3, 3).map(
    (by): Change =>
      (plan) =>
        advance(plan, by),
  ),
  within(-180, 180).map(
    (by): Change =>
      (plan) =>
        turn(plan, by),
  ),
  fc.constantFrom(...IMPLANT_LIBRARY).map(
    (implant): Change =>
      (plan) =>
        useShape(plan, implant),
  ),
  fc.constant<Change>((plan) => ({ ...plan })),
);

/** One thing done: an edit, a gesture of several moves, ended or cancelled, or another plan opened. */
const deed: fc.Arbitrary<(store: DocumentStore<Plan>) => void> = fc.oneof(
  change.map((one) => (store: DocumentStore<Plan>) => store.edit('edit', one)),
  fc
    .tuple(fc.array(change, { maxLength: 4 }), fc.boolean())
    .map(([moves, ended]) => (store: DocumentStore<Plan>) => {
      store.beginGesture('gesture');
      for (const move of moves) store.updateGesture(move);
      if (ended) store.endGesture();
      else store.cancelGesture();
    }),
  anyPlan.map((plan) => (store: DocumentStore<Plan>) => store.open('open', plan)),
);

describe('undo', () => {
  it('takes back each deed exactly, and redo does it again', () => {
    fc.assert(
      fc.property(anyPlan, fc.array(deed, { minLength: 1, maxLength: 12 }), (start, deeds) => {
        const store = createDocumentStore(start);
        const plan = () => store.getState().plan;
        const before: Plan[] = [];
        for (const act of deeds) {
          const [was, steps] = [plan(), store.getState().past.length];
          act(store);
          const made = store.getState().past.length - steps;
          expect(made).toBe(plan() === was ? 0 : 1);
          if (made === 1) before.push(was);
        }
        const after: Plan[] = [];
        for (const was of before.slice().reverse()) {
          after.push(plan());
          store.undo();
          expect(plan()).toBe(was);
        }
        expect(store.getState().past).toEqual([]);
        for (const done of after.reverse()) {
          store.redo();
          expect(plan()).toBe(done);
        }
      }),
      runs(150),
    );
  });
});
