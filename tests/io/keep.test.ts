/**
 * Keeping the plan on the machine. Sources: CRC-32 by ISO 3309 (its check value, and Node's own zlib); what is kept, and when, by the project's own rule: every
 * finished gesture, none in progress, two slots by turns, never over a state of another tab.
 */
import { crc32 } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shift } from '../../src/core/plan/edits.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { checksum } from '../../src/io/keep/checksum.ts';
import type { Hold, Holder } from '../../src/io/keep/holdAlone.ts';
import type { Outcome, Recent, Shelf } from '../../src/io/keep/shelf.ts';
import { newest, type Slot, sealed, slotOf } from '../../src/io/keep/slots.ts';
import { printPlanFile } from '../../src/io/planFile.ts';
import { DEMO_PLANS } from '../../src/io/plans.ts';
import { createDocumentStore } from '../../src/state/document.ts';
import { type KeepOptions, keepDocument, keepNothing } from '../../src/state/kept.ts';

const [{ plan: START }, { plan: OTHER }] = DEMO_PLANS;

describe('the checksum', () => {
  it('is CRC-32', () => {
    expect(checksum('123456789')).toBe(0xcbf43926);
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(checksum(text)).toBe(crc32(text));
      }),
    );
  });
});

describe('two slots', () => {
  it('take turns, and the newest whole one counts', () => {
    expect([1, 2, 3].map(slotOf)).toEqual([1, 0, 1]);
    const [one, two] = [sealed(1, 'a'), sealed(2, 'b')];
    expect(newest([two, one])).toEqual({ slot: two, damaged: false });
    expect(newest([undefined, one])).toEqual({ slot: one, damaged: false });
    expect(newest([undefined, undefined])).toEqual({ slot: null, damaged: false });
  });

  it('fall back to the one before where the newest is not whole', () => {
    const [one, two] = [sealed(1, 'a plan'), sealed(2, 'a plan')];
    const torn: unknown[] = [
      { ...two, text: 'a pla' },
      { ...two, revision: 3 },
      { ...two, sum: two.sum ^ 1 },
      { text: 'a plan' },
      7,
      null,
    ];
    for (const found of torn) expect(newest([found, one])).toEqual({ slot: one, damaged: true });
  });
});

/** A shelf in memory whose writes end when they are told to. */
function memoryShelf(first?: Slot) {
  const slots: (Slot | undefined)[] = [undefined, undefined];
  if (first) slots[slotOf(first.revision)] = first;
  const recents: Recent[] = [];
  const waiting: (() => void)[] = [];
  let broken: Outcome | null = null;
  const shelf: Shelf = {
    read: () => Promise.resolve(newest(slots)),
    put: async (text, revision) => {
      await new Promise<void>((end) => waiting.push(end));
      if (broken) return broken;
      if ((newest(slots).slot?.revision ?? 0) !== revision) return 'overtaken';
      slots[slotOf(revision + 1)] = sealed(revision + 1, text);
      return 'kept';
    },
    recent: () => Promise.resolve(recents),
    remember: (text, at) => {
      recents.unshift({ text, at });
      return Promise.resolve();
    },
  };
  return {
    shelf,
    recents,
    text: () => newest(slots).slot?.text ?? null,
    pending: () => waiting.length,
    putElsewhere: (slot: Slot) => {
      slots[slotOf(slot.revision)] = slot;
    },
    failWith: (outcome: Outcome | null) => {
      broken = outcome;
    },
    /** Lets the write that is under way reach its end. */
    finish: async () => {
      waiting.shift()?.();
      await Promise.resolve();
      await new Promise(setImmediate);
    },
  };
}

type Memory = ReturnType<typeof memoryShelf>;

/** The right to keep, as the browser would give and take it. */
function fakeHold(held: boolean, answer = true) {
  const told: Holder[] = [];
  const hold: Hold = {
    held,
    follow: (holder) => told.push(holder),
    ask: () => Promise.resolve(answer),
  };
  return { hold, holder: () => told[0] };
}

function keeping({ shelf }: Memory, change: Partial<KeepOptions> = {}) {
  const document = createDocumentStore<Plan>(START);
  const own = new Set(DEMO_PLANS.map(({ plan }) => plan));
  const options: KeepOptions = {
    shelf,
    revision: 0,
    damaged: false,
    hold: fakeHold(true).hold,
    now: () => 1_700_000_000_000,
    isOwn: (plan) => Promise.resolve(own.has(plan)),
    ...change,
  };
  const keep = keepDocument(document, options);
  const status = () => keep.getState().status;
  const text = () => printPlanFile(document.getState().plan);
  return { document, keep, status, text };
}

const by = (f: number) => (plan: Plan) => shift(plan, 0, f);

describe('keeping', () => {
  it('begins at once with every finished edit, and says so until it is done', async () => {
    const memory = memoryShelf();
    const { document, status, text } = keeping(memory);
    expect(status()).toBe('fresh');
    document.edit('shift', by(0.1));
    expect(status()).toBe('keeping');
    await memory.finish();
    expect(status()).toBe('kept');
    expect(memory.text()).toBe(text());
  });

  it('writes one state at a time, and after it the latest', async () => {
    const memory = memoryShelf();
    const { document, keep, status, text } = keeping(memory);
    for (const f of [0.1, 0.1, 0.1, 0.1]) document.edit('shift', by(f));
    expect(memory.pending()).toBe(1);
    await memory.finish();
    expect(status()).toBe('keeping');
    await memory.finish();
    expect([status(), memory.pending(), keep.getState().revision]).toEqual(['kept', 0, 2]);
    expect(memory.text()).toBe(text());
  });

  it('killed in mid-gesture, it has every finished gesture and nothing of the one in progress', async () => {
    const memory = memoryShelf();
    const { document } = keeping(memory);
    document.beginGesture('drag');
    document.updateGesture(by(0.5));
    document.endGesture();
    const after = printPlanFile(document.getState().plan);
    document.beginGesture('another drag');
    document.updateGesture(by(2));
    await memory.finish();
    expect(memory.text()).toBe(after);
    expect(memory.pending()).toBe(0);
  });

  it('keeps a finished gesture whose turn comes while the next is in progress', async () => {
    const memory = memoryShelf();
    const { document } = keeping(memory);
    document.edit('first', by(0.1));
    document.edit('second', by(0.1));
    const after = printPlanFile(document.getState().plan);
    document.beginGesture('drag');
    document.updateGesture(by(2));
    await memory.finish();
    await memory.finish();
    expect(memory.text()).toBe(after);
  });

  it('says that the storage is full or closed, and tries again with the next edit', async () => {
    for (const outcome of ['full', 'refused'] as const) {
      const memory = memoryShelf();
      const { document, status, text } = keeping(memory);
      memory.failWith(outcome);
      document.edit('shift', by(0.1));
      await memory.finish();
      expect(status()).toBe(outcome);
      expect(memory.text()).toBeNull();
      memory.failWith(null);
      document.edit('shift', by(0.1));
      await memory.finish();
      expect(status()).toBe('kept');
      expect(memory.text()).toBe(text());
    }
  });

  it('remembers a plan that another takes the place of, or that is saved as a file; none of the program’s own', async () => {
    const memory = memoryShelf();
    const { document } = keeping(memory);
    // Whether a plan is the program's own is answered a turn later.
    const answered = () => new Promise(setImmediate);
    document.open('open', OTHER);
    await answered();
    expect(memory.recents).toEqual([]);
    document.edit('shift', by(0.1));
    const text = printPlanFile(document.getState().plan);
    document.open('open', START);
    await answered();
    expect(memory.recents).toEqual([{ text, at: 1_700_000_000_000 }]);
    document.edit('shift', by(0.2));
    document.markSaved();
    await answered();
    expect(memory.recents).toHaveLength(2);
  });

  it('never writes over a state that another tab has kept: it only shows, until it takes over', async () => {
    const memory = memoryShelf();
    const { document, keep, status } = keeping(memory);
    document.edit('shift', by(0.1));
    await memory.finish();
    memory.putElsewhere(sealed(2, printPlanFile(OTHER)));
    document.edit('shift', by(0.1));
    const mine = document.getState().plan;
    await memory.finish();
    expect(status()).toBe('free');
    document.edit('shift', by(0.1));
    expect(document.getState().plan).toBe(mine);
    await keep.takeOver('take over');
    expect(document.getState().plan).toEqual(OTHER);
    expect([status(), memory.pending()]).toEqual(['kept', 0]);
    document.undo();
    expect(document.getState().plan).toBe(mine);
    await memory.finish();
    expect(memory.text()).toBe(printPlanFile(mine));
  });
});

describe('a second tab', () => {
  it('only shows the plan; other plans can be looked at, and nothing is written', () => {
    const memory = memoryShelf();
    const { document, status } = keeping(memory, { hold: fakeHold(false).hold });
    expect(status()).toBe('shown');
    document.edit('shift', by(0.1));
    document.beginGesture('drag');
    document.updateGesture(by(1));
    expect(document.getState()).toMatchObject({ plan: START, gesture: null, refused: 2 });
    document.open('open', OTHER);
    expect(document.getState().plan).toBe(OTHER);
    document.undo();
    expect(document.getState().plan).toBe(START);
    expect(memory.pending()).toBe(0);
  });

  it('may take over what the other kept last when that one has gone, by one undo step', async () => {
    const first = sealed(4, printPlanFile(START));
    const memory = memoryShelf(first);
    const { hold, holder } = fakeHold(false);
    const { document, keep, status } = keeping(memory, { hold, revision: 4 });
    expect(status()).toBe('shown');
    memory.putElsewhere(sealed(5, printPlanFile(OTHER)));
    holder().got();
    expect(status()).toBe('free');
    await keep.takeOver('take over');
    expect(document.getState().plan).toEqual(OTHER);
    expect(document.getState().past.map(({ label }) => label)).toEqual(['take over']);
    document.edit('shift', by(0.1));
    await memory.finish();
    expect([status(), keep.getState().revision]).toEqual(['kept', 6]);
  });

  it('may ask for it while the other has it, and goes on with what that one kept', async () => {
    const memory = memoryShelf(sealed(4, printPlanFile(OTHER)));
    const { document, keep, status } = keeping(memory, { hold: fakeHold(false).hold, revision: 4 });
    await keep.takeOver('work here');
    expect(status()).toBe('kept');
    expect(document.getState()).toMatchObject({ plan: OTHER, readOnly: false });
  });

  it('stays as it is where the other keeps it back, and says so', async () => {
    const memory = memoryShelf();
    const { document, keep, status } = keeping(memory, { hold: fakeHold(false, false).hold });
    await keep.takeOver('work here');
    expect([status(), keep.getState().keptBack]).toEqual(['shown', true]);
    expect(document.getState().readOnly).toBe(true);
  });
});

describe('the tab that is asked for the plan', () => {
  it('keeps its last finished gesture first, puts back the one in progress, and then only shows', async () => {
    const memory = memoryShelf();
    const { hold, holder } = fakeHold(true);
    const { document, status, text } = keeping(memory, { hold });
    document.edit('first', by(0.1));
    document.edit('second', by(0.1));
    const after = text();
    document.beginGesture('drag');
    document.updateGesture(by(2));
    const given = holder().giveWay();
    expect(document.getState().readOnly).toBe(true);
    expect(text()).toBe(after);
    await memory.finish();
    await memory.finish();
    expect(await given).toBe(true);
    expect([status(), memory.text(), memory.pending()]).toEqual(['shown', after, 0]);
  });

  it('keeps it back where its last change cannot be kept, and can be worked on as before', async () => {
    const memory = memoryShelf();
    const { hold, holder } = fakeHold(true);
    const { document, status } = keeping(memory, { hold });
    memory.failWith('full');
    document.edit('first', by(0.1));
    const given = holder().giveWay();
    await memory.finish();
    expect(await given).toBe(false);
    // Open again, it is tried once more.
    await memory.finish();
    expect([status(), document.getState().readOnly]).toEqual(['full', false]);
  });

  it('gives it at once where it has not gone on with it yet, whatever is looked at there', async () => {
    const memory = memoryShelf(sealed(4, printPlanFile(START)));
    const { hold, holder } = fakeHold(false);
    const { document, status } = keeping(memory, { hold, revision: 4 });
    holder().got();
    document.open('look at', OTHER);
    expect(await holder().giveWay()).toBe(true);
    expect([status(), document.getState().readOnly, memory.pending()]).toEqual(['free', true, 0]);
  });

  it('from which it is taken writes no more, and a write under way changes nothing of that', async () => {
    const memory = memoryShelf();
    const { hold, holder } = fakeHold(true);
    const { document, status } = keeping(memory, { hold });
    document.edit('first', by(0.1));
    holder().lost();
    await memory.finish();
    expect(status()).toBe('shown');
    document.edit('second', by(0.1));
    expect([document.getState().refused, memory.pending()]).toEqual([1, 0]);
  });
});

it('an edition that leaves nothing behind says so', async () => {
  const keep = keepNothing();
  expect(keep.getState().status).toBe('never');
  expect(await keep.recent()).toEqual([]);
});
