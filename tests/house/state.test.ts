import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createDocumentStore, isSaved, redoLabel, undoLabel } from '../../src/state/document.ts';
import { litReading } from '../../src/state/litReading.ts';
import { createLiveStore } from '../../src/state/live.ts';
import { createOwnStore } from '../../src/state/own.ts';
import { createSessionStore, type Keep } from '../../src/state/session.ts';
import { createStores } from '../../src/state/stores.ts';

interface Plan {
  facial: number;
  tilt: number;
}
const START: Plan = { facial: 0, tilt: 0 };
const shift = (by: number) => (plan: Plan) => ({ ...plan, facial: plan.facial + by });

describe('the document', () => {
  it('undoes what was done: undo after do is identity, redo after undo is do', () => {
    const { edit, undo, redo, getState } = createDocumentStore(START);
    const plans = [getState().plan];
    for (const by of [1, 2, 3]) {
      edit(`shift ${by}`, shift(by));
      plans.push(getState().plan);
    }
    for (const before of plans.slice(0, -1).reverse()) {
      undo();
      expect(getState().plan).toBe(before);
    }
    for (const after of plans.slice(1)) {
      redo();
      expect(getState().plan).toBe(after);
    }
  });

  it('names the next step back and the next step forward', () => {
    const store = createDocumentStore(START);
    store.edit('shift', shift(1));
    store.edit('tilt', (plan) => ({ ...plan, tilt: 1 }));
    store.undo();
    expect(undoLabel(store.getState())).toBe('shift');
    expect(redoLabel(store.getState())).toBe('tilt');
    store.edit('shift again', shift(1));
    expect(redoLabel(store.getState())).toBeNull();
  });

  it('makes one step of a drag of 200 updates', () => {
    const store = createDocumentStore(START);
    store.beginGesture('drag');
    for (let i = 1; i <= 200; i++) store.updateGesture(shift(i / 100));
    store.endGesture();
    expect(store.getState().plan.facial).toBe(2);
    expect(store.getState().past).toHaveLength(1);
    store.undo();
    expect(store.getState().plan).toBe(START);
    store.redo();
    expect(store.getState().plan.facial).toBe(2);
  });

  it('puts everything back when a gesture is cancelled, and on undo in mid-gesture', () => {
    for (const stop of ['cancelGesture', 'undo'] as const) {
      const store = createDocumentStore(START);
      store.edit('before', shift(1));
      const before = store.getState();
      store.beginGesture('drag');
      store.updateGesture(shift(5));
      store[stop]();
      expect(store.getState().plan).toBe(before.plan);
      expect(store.getState().past).toBe(before.past);
      expect(store.getState().gesture).toBeNull();
    }
  });

  it('makes no step of nothing', () => {
    const store = createDocumentStore(START);
    store.edit('nothing', (plan) => ({ ...plan }));
    store.beginGesture('there and back');
    store.updateGesture(shift(1));
    store.updateGesture(shift(0));
    store.endGesture();
    store.updateGesture(shift(9));
    expect(store.getState().past).toEqual([]);
    expect(store.getState().plan).toBe(START);
  });

  it('finishes a gesture before another change, as a step of its own', () => {
    const store = createDocumentStore(START);
    store.beginGesture('drag');
    store.updateGesture(shift(1));
    store.edit('field', shift(1));
    expect(store.getState().past.map(({ label }) => label)).toEqual(['drag', 'field']);
  });

  it('is left as it was by a change that throws', () => {
    const store = createDocumentStore(START);
    const before = store.getState();
    expect(() =>
      store.edit('bad', () => {
        throw new RangeError('outside');
      }),
    ).toThrow(RangeError);
    expect(store.getState()).toBe(before);
  });

  it('is saved while it is the plan that was saved, by undo as well', () => {
    const store = createDocumentStore(START);
    expect(isSaved(store.getState())).toBe(true);
    store.edit('shift', shift(1));
    expect(isSaved(store.getState())).toBe(false);
    store.undo();
    expect(isSaved(store.getState())).toBe(true);
    store.redo();
    store.markSaved();
    expect(isSaved(store.getState())).toBe(true);
  });

  it('opens another plan as one step that can be taken back, and counts it as saved', () => {
    const store = createDocumentStore(START);
    store.edit('shift', shift(1));
    const { plan: mine, revision } = store.getState();
    store.open('open seven', { facial: 7, tilt: 7 });
    expect(store.getState()).toMatchObject({ plan: { facial: 7 }, revision: revision + 1 });
    expect(isSaved(store.getState())).toBe(true);
    expect(undoLabel(store.getState())).toBe('open seven');
    store.undo();
    expect(store.getState().plan).toBe(mine);
    expect(isSaved(store.getState())).toBe(false);
  });

  it('names a gesture anew when it ends, once its size is known', () => {
    const store = createDocumentStore(START);
    store.beginGesture('shift');
    store.updateGesture(shift(0.3));
    store.endGesture('shift 0.3');
    expect(undoLabel(store.getState())).toBe('shift 0.3');
  });

  it('keeps to a plain list of plans under any order of edits, drags, undo and redo', () => {
    // Source: the model is the textbook one, a list of states and a cursor.
    const act = fc.oneof(
      fc.record({ kind: fc.constant('edit' as const), by: fc.integer({ min: 1, max: 9 }) }),
      fc.record({ kind: fc.constant('drag' as const), by: fc.integer({ min: 1, max: 9 }) }),
      fc.record({ kind: fc.constantFrom('undo' as const, 'redo' as const), by: fc.constant(0) }),
    );
    fc.assert(
      fc.property(fc.array(act, { maxLength: 60 }), (acts) => {
        const store = createDocumentStore(START);
        let states = [0];
        let cursor = 0;
        let revision = 0;
        for (const { kind, by } of acts) {
          if (kind === 'undo') {
            store.undo();
            cursor = Math.max(0, cursor - 1);
          } else if (kind === 'redo') {
            store.redo();
            cursor = Math.min(states.length - 1, cursor + 1);
          } else {
            if (kind === 'edit') store.edit('edit', shift(by));
            else {
              store.beginGesture('drag');
              store.updateGesture(shift(-by));
              store.updateGesture(shift(by));
              store.endGesture();
            }
            states = [...states.slice(0, cursor + 1), states[cursor] + by];
            cursor += 1;
          }
          expect(store.getState().plan.facial).toBe(states[cursor]);
          expect(store.getState().revision).toBeGreaterThanOrEqual(revision);
          revision = store.getState().revision;
        }
      }),
    );
  });
});

describe('the session', () => {
  const memory = (kept?: string): Keep & { kept: string | null } => ({
    kept: kept ?? null,
    getItem() {
      return this.kept;
    },
    setItem(_, value) {
      this.kept = value;
    },
  });

  it('comes back in the same browser', () => {
    const keep = memory();
    const session = createSessionStore(keep);
    session.set({ view: 'facial', pivot: 'apex', bone: 'whole', selectedReading: 'root-mesial' });
    session.toggleLayer('gum');
    expect(createSessionStore(keep).getState()).toMatchObject({
      view: 'facial',
      pivot: 'apex',
      bone: 'whole',
      selectedReading: 'root-mesial',
      layers: { gum: false, teeth: true },
    });
  });

  it.each([
    '{',
    'null',
    '[]',
    '{"view":"from above","layers":{"gum":"no","x":1},"pivot":7,"asInMouth":"yes","bone":0,"selectedReading":"hope"}',
  ])('falls back, field by field, from %s', (kept) => {
    expect(createSessionStore(memory(kept)).getState()).toEqual(createSessionStore().getState());
  });

  it('works where storage throws', () => {
    const refuse = () => {
      throw new Error('storage is forbidden');
    };
    const session = createSessionStore({ getItem: refuse, setItem: refuse });
    session.set({ view: 'incisal' });
    expect(session.getState().view).toBe('incisal');
  });
});

describe('the reading that is lit', () => {
  it('is the one under the pointer, else the one picked out', () => {
    const { session, live } = createStores(START);
    const lit = () => litReading(live.getState(), session.getState());
    expect(lit()).toBeNull();
    session.set({ selectedReading: 'canal' });
    expect(lit()).toBe('canal');
    live.set({ hover: 'root-mesial' });
    expect(lit()).toBe('root-mesial');
    live.set({ hover: 'shift-f' });
    expect(lit()).toBe('canal');
  });
});

describe('the revision of the screen', () => {
  it('grows with every change in every scope, and only then', () => {
    const { document, session, live } = createStores(START);
    const seen: number[] = [];
    const note = () => seen.push(live.getState().revision);
    document.edit('shift', shift(1));
    note();
    session.toggleLayer('gum');
    note();
    live.set({ hover: 'shift-f' });
    note();
    live.set({ hover: 'shift-f' });
    document.edit('nothing', (plan) => plan);
    note();
    document.undo();
    note();
    expect(seen).toEqual([1, 2, 3, 3, 4]);
  });

  it('watches nothing it was not given', () => {
    const document = createDocumentStore(START);
    const live = createLiveStore();
    document.edit('shift', shift(1));
    expect(live.getState().revision).toBe(0);
  });
});

describe('a user’s own guesses', () => {
  const guess = { kind: 'lean', guessed: 3, found: 2 } as const;
  const shelf = () => {
    const kept = new Map<string, string>();
    return {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => {
        kept.set(key, value);
      },
    };
  };

  it('are kept with the browser, come back, and can be forgotten', () => {
    const keep = shelf();
    createOwnStore(keep).addGuesses([guess, guess]);
    const again = createOwnStore(keep);
    expect(again.getState().guesses).toEqual([guess, guess]);
    again.forgetGuesses();
    expect(createOwnStore(keep).getState().guesses).toEqual([]);
  });

  it('last for the visit where nothing can be kept, and what is no guess is left out', () => {
    const broken = {
      getItem: () =>
        '{"guesses":[{"kind":"lean","guessed":1,"found":null},{"kind":"lean","guessed":3,"found":2}]}',
      setItem: () => {
        throw new Error('full');
      },
    };
    const store = createOwnStore(broken);
    expect(store.getState().guesses).toEqual([guess]);
    store.addGuesses([guess]);
    expect(store.getState().guesses).toHaveLength(2);
  });
});
