import { describe, expect, test } from 'vitest';
import { parseExerciseFile } from '../../src/io/exerciseFile.ts';
import { addressWith, exerciseInAddress, planInAddress } from '../../src/io/link/address.ts';
import { exerciseHash, readExerciseHash } from '../../src/io/link/exerciseLink.ts';
import { unpack } from '../../src/io/link/pack.ts';
import { filesOf, SALT } from '../support/classFiles.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';

describe('an exercise in an address', () => {
  test('file → link → exercise is the identity, from the teacher’s file too, and never holds the answer', () => {
    for (const { plan } of SITES_DEMO) {
      const { teacher, student } = filesOf(plan);
      const hash = exerciseHash(teacher) ?? '';
      expect(hash).toBe(exerciseHash(student));
      const read = parseExerciseFile(student);
      expect(readExerciseHash(hash)).toEqual({ ok: true, exercise: read.ok && read.value });
      const text = unpack(hash.split('=')[1]) ?? '';
      expect(text).not.toContain(SALT);
      expect(text).not.toContain('"answer"');
      expect(text).not.toContain(plan.title);
      const address = addressWith('https://example.org/page', hash);
      expect(exerciseInAddress(address)).toBe(hash);
      expect(planInAddress(address)).toBeNull();
    }
  });

  test('what is cut off, of a newer program or no exercise says so', () => {
    const hash = exerciseHash(filesOf(SITES_DEMO[0].plan).student) ?? '';
    expect(readExerciseHash(hash.slice(0, -40))).toMatchObject({ ok: false });
    expect(readExerciseHash('exercise2=abc')).toEqual({ ok: false, why: 'newer' });
    expect(readExerciseHash(`exercise1=${'a'.repeat(9000)}`)).toEqual({ ok: false, why: 'long' });
    expect(readExerciseHash('exercise1=!!')).toEqual({ ok: false, why: 'broken' });
  });
});
