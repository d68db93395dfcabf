import { describe, expect, expectTypeOf, it } from 'vitest';
import { en } from '../../src/words/en.ts';
import { type SlotArguments, say } from '../../src/words/say.ts';
import type { SlotNames } from '../../src/words/sayer.ts';

describe('the message catalogue', () => {
  it('fills named slots', () => {
    expect(say('history.undoStep', { step: 'tilt 1.0°' })).toBe('Undo tilt 1.0°');
  });

  it('does not read a slot text again', () => {
    expect(say('field.less', { field: '{field}{step}' })).toBe('{field}{step}: less');
  });

  it('asks for exactly the slots of the template', () => {
    expectTypeOf<SlotNames<'{a} of {b}, {a}'>>().toEqualTypeOf<'a' | 'b'>();
    expectTypeOf<SlotArguments<'history.undo'>>().toEqualTypeOf<[]>();
    expectTypeOf<SlotArguments<'history.undoStep'>>().toEqualTypeOf<
      [slots: Readonly<Record<'step', string>>]
    >();
    expectTypeOf(say<'history.undoStep'>).toBeCallableWith('history.undoStep', { step: '' });
  });

  it('has well-formed templates: only plain slots, no stray brace, no blank at the ends', () => {
    for (const [key, text] of Object.entries(en)) {
      expect(text.replace(/\{[a-z]\w*\}/g, ''), key).not.toMatch(/[{}]/);
      expect(text, key).toBe(text.trim());
      expect(key).toMatch(/^[a-z]\w*(\.[\w-]+)+$/);
    }
  });
});
