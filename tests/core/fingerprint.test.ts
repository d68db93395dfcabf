import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonical, fingerprint, shortFingerprint } from '../../src/core/plan/fingerprint.ts';
import { sha256 } from '../../src/core/plan/sha256.ts';
import { parsePlanFile, printPlanFile } from '../../src/io/planFile.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';

const [{ plan }] = SITES_DEMO;

describe('SHA-256', () => {
  // Source: FIPS 180-4's example messages as published by NIST (SHA256.pdf).
  it.each([
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ])('of %j', (text, digest) => {
    expect(sha256(text)).toBe(digest);
  });

  // Source: OpenSSL, by node:crypto.
  it('is that of another implementation, for any text, round the block lengths too', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), (text) => {
        expect(sha256(text)).toBe(createHash('sha256').update(text, 'utf8').digest('hex'));
      }),
    );
    // Beyond the first plane, and halves of pairs.
    for (const text of ['\u{1f9b7}é', '\ud800a', 'a\udfff'])
      expect(sha256(text)).toBe(createHash('sha256').update(text, 'utf8').digest('hex'));
    for (let length = 50; length < 140; length++)
      expect(sha256('a'.repeat(length))).toBe(createHash('sha256').update('a'.repeat(length)).digest('hex'));
  });
});

describe('the fingerprint of a plan', () => {
  it('is the SHA-256 of its canonical text, twelve digits of it in short', () => {
    const digest = createHash('sha256').update(canonical(plan)).digest('hex');
    expect(fingerprint(plan)).toBe(digest);
    expect(shortFingerprint(plan)).toMatch(/^[0-9a-f]{4} [0-9a-f]{4} [0-9a-f]{4}$/);
    expect(digest.startsWith(shortFingerprint(plan).replaceAll(' ', ''))).toBe(true);
  });

  it('does not hang on the order of keys, and outlives the file', () => {
    const turned = Object.fromEntries(Object.entries(plan).reverse()) as typeof plan;
    expect(fingerprint(turned)).toBe(fingerprint(plan));
    const read = parsePlanFile(printPlanFile(plan));
    expect(read.ok && fingerprint(read.plan)).toBe(fingerprint(plan));
  });

  it('changes with every number and word', () => {
    const shifted = { ...plan, pose: { ...plan.pose, roll: plan.pose.roll + 1e-9 } };
    const renamed = { ...plan, title: `${plan.title}.` };
    expect(new Set([plan, shifted, renamed].map(fingerprint)).size).toBe(3);
  });

  it('has canonical text that JSON reads back', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const again: unknown = JSON.parse(JSON.stringify(value));
        expect(JSON.parse(canonical(again))).toEqual(again);
      }),
    );
  });
});
