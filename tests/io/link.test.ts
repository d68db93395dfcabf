/**
 * A plan in an address. Sources: RFC 1951 (deflate) as Node's own zlib reads and writes it, with the preset dictionary of RFC 1950; RFC 4648, 5 (base64url, no
 * padding); ISO/IEC 18004 (QR codes) as jsQR reads it off a raster.
 */
import { readFileSync } from 'node:fs';
import { crc32, deflateRawSync, inflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import jsQR from 'jsqr';
import { describe, expect, it } from 'vitest';
import { GENERIC_KIT } from '../../src/core/drilling/genericKit.ts';
import { EMPTY_REHEARSAL } from '../../src/core/drilling/rehearsal.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { readPlan } from '../../src/core/plan/read.ts';
import { planJsonSchema } from '../../src/core/plan/schema.ts';
import { wordless } from '../../src/core/plan/wordless.ts';
import { addressWith, planInAddress } from '../../src/io/link/address.ts';
import { LONGEST_PACKED, pack, unpack } from '../../src/io/link/pack.ts';
import { planHash, readPlanHash } from '../../src/io/link/planLink.ts';
import { parsePlanFile, printPlanFile } from '../../src/io/planFile.ts';
import { DEMO_PLANS, MEAN_PLANS } from '../../src/io/plans.ts';
import { type QrCode, QUIET, qrCode, qrPath } from '../../src/io/qr.ts';
import { anyPlan, libraryPlan, runs } from '../support/randomPlans.ts';
import { rehearsed } from '../support/rehearsed.ts';

const PAGE = 'https://example.org/ridgewright/';
const DICTIONARY = Buffer.from(
  JSON.stringify(
    JSON.parse(readFileSync(new URL('../../src/io/link/dictionary-1.json', import.meta.url), 'utf8')),
  ),
);
const hashOf = (plan: Plan): string => planHash(plan) ?? '';
const planOf = (hash: string): Plan => {
  const read = readPlanHash(hash);
  if (!read.ok) throw new Error(read.why);
  return read.plan;
};
/** Whether the reader takes it: some random arches are too tight for their ridge. */
const sound = (plan: Plan): boolean => readPlan(plan).ok;
const REHEARSED = rehearsed(DEMO_PLANS[0].plan);

/** Every text in a value, at any depth. */
function stringsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(stringsIn) : [];
}

describe('a packed text', () => {
  it('is deflate with the dictionary, in base64url, as another program reads and writes them', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 300 }), (text) => {
        const packed = pack(text);
        const bytes = Buffer.from(packed, 'base64url');
        expect(packed).toBe(bytes.toString('base64url'));
        expect(inflateRawSync(bytes, { dictionary: DICTIONARY }).toString()).toBe(text);
        const theirs = deflateRawSync(text, { dictionary: DICTIONARY }).toString('base64url');
        expect(unpack(theirs)).toBe(text);
      }),
      runs(200),
    );
  });

  it('is read with the dictionary it was written with, for ever', () => {
    // Whoever changes the dictionary breaks every link that was ever handed out: another goes into another file.
    expect(crc32(DICTIONARY)).toBe(883_143_940);
  });

  it('is not read where it is cut off, mistyped or of other characters', () => {
    const packed = pack(printPlanFile(REHEARSED));
    for (const length of [0, 1, 10, packed.length - 1]) expect(unpack(packed.slice(0, length))).toBeNull();
    expect(unpack(`${packed}=`)).toBeNull();
    expect(unpack(`${packed.slice(0, 50)} ${packed.slice(50)}`)).toBeNull();
  });

  it('cannot be a bomb: a megabyte of blanks is refused', () => {
    const bomb = deflateRawSync(Buffer.alloc(2 ** 20, ' '), { level: 9 }).toString('base64url');
    expect(bomb.length).toBeLessThan(LONGEST_PACKED);
    expect(unpack(bomb)).toBeNull();
    const within = deflateRawSync(Buffer.alloc(2 ** 18, ' '), { level: 9 }).toString('base64url');
    expect(unpack(within)).toHaveLength(2 ** 18);
  });
});

describe('a plan in an address', () => {
  it('plan, link, plan is the identity but for texts; link, plan, link is the identity', () => {
    fc.assert(
      fc.property(fc.oneof(anyPlan, libraryPlan).filter(sound), (plan) => {
        const hash = hashOf(plan);
        const back = planOf(hash);
        expect(back).toEqual(wordless(plan));
        expect(hashOf(back)).toBe(hash);
      }),
      runs(80),
    );
  });

  it('carries a rehearsal with it, and the demo plans', () => {
    for (const plan of [REHEARSED, ...[...DEMO_PLANS, ...MEAN_PLANS].map((stored) => stored.plan)])
      expect(planOf(hashOf(plan))).toEqual(wordless(plan));
  });

  it('is read as long as there are links of the past: one of plan version 2', () => {
    const kept = readFileSync(new URL('../samples/link-v2.txt', import.meta.url), 'utf8').trim();
    const file = parsePlanFile(
      readFileSync(new URL('../samples/v2-rehearsed.json', import.meta.url), 'utf8'),
    );
    expect(file.ok && planOf(kept)).toEqual(file.ok && wordless(file.plan));
  });

  it('carries no text that a person wrote', () => {
    const secret = 'Zaphod B.';
    const plan: Plan = {
      ...DEMO_PLANS[0].plan,
      title: secret,
      note: secret,
      implant: { ...DEMO_PLANS[0].plan.implant, name: secret },
      rehearsal: { ...EMPTY_REHEARSAL, kit: { ...GENERIC_KIT, title: secret } },
    };
    expect(unpack(hashOf(plan).split('=')[1])).not.toContain(secret);
    const codes = new Set([...stringsIn(planJsonSchema()), '']);
    expect(stringsIn(planOf(hashOf(plan))).filter((text) => !codes.has(text))).toEqual([]);
    expect(wordless(DEMO_PLANS[0].plan).implant).toBe(DEMO_PLANS[0].plan.implant);
  });

  it('says what is wrong with a bad one', () => {
    const good = hashOf(REHEARSED);
    expect(readPlanHash(good.slice(0, -3))).toEqual({ ok: false, why: 'broken' });
    expect(readPlanHash('plan1=')).toEqual({ ok: false, why: 'broken' });
    expect(readPlanHash(`plan1=${'A'.repeat(LONGEST_PACKED + 1)}`)).toEqual({ ok: false, why: 'long' });
    expect(readPlanHash(good.replace('plan1', 'plan2'))).toEqual({ ok: false, why: 'newer' });
    const newer = { ...REHEARSED, version: 99 };
    const read = readPlanHash(`plan1=${pack(JSON.stringify(newer))}`);
    expect(!read.ok && read.why === 'plan' && read.faults[0].code).toBe('newer-version');
  });

  it('never throws, whatever stands in the address', () => {
    const anything = fc.oneof(
      fc.string(),
      fc.base64String().map((text) => `plan1=${text.replace(/=/g, '')}`),
      fc.uint8Array().map((bytes) => `plan1=${Buffer.from(bytes).toString('base64url')}`),
    );
    fc.assert(
      fc.property(anything, (hash) => {
        expect(readPlanHash(hash).ok).toBe(false);
      }),
      runs(500),
    );
  });

  it('stands after # and is found there', () => {
    const hash = hashOf(REHEARSED);
    const address = addressWith(`${PAGE}#old`, hash);
    expect(address).toBe(`${PAGE}#${hash}`);
    expect(planInAddress(address)).toBe(hash);
    expect(planInAddress(`${PAGE}#plan7=x`)).toBe('plan7=x');
    expect(planInAddress(PAGE)).toBeNull();
    expect(planInAddress(`${PAGE}#section`)).toBeNull();
  });

  it('is refused where it would be longer than what is read', () => {
    const wild = (i: number) => ({ faciopalatal: Math.sin(i), mesiodistal: Math.cos(i) });
    const pose = (i: number) => ({ mouth: { m: Math.tan(i), f: Math.exp(-i) }, tilt: wild(i + 0.5) });
    const long = (passes: number, acts: number): Plan => ({
      ...REHEARSED,
      rehearsal: {
        ...EMPTY_REHEARSAL,
        passes: Array.from({ length: passes }, (_, i) => ({
          tool: { kind: 'drill', index: 0 },
          pose: pose(i),
          depth: Math.sqrt(i),
          press: { toward: Math.log(i + 2), mouth: Math.cbrt(i), bottom: Math.atan(i) },
          speed: Math.log1p(i),
          irrigated: true,
        })),
        seating: Array.from({ length: acts }, (_, i) => ({ kind: 'steer', tilt: wild(i) })),
      },
    });
    expect(planHash(long(10, 10))).not.toBeNull();
    expect(planHash(long(80, 200))).toBeNull();
  });
});

/** The code as grey values of a raster, `scale` pixels a module, read off the path that is drawn. */
function raster(code: QrCode, scale: number) {
  const side = (code.modules.length + 2 * QUIET) * scale;
  const pixels = new Uint8ClampedArray(4 * side * side).fill(255);
  for (const [, x, y, width] of qrPath(code).matchAll(/M(\d+) (\d+)h(\d+)/g))
    for (let row = Number(y) * scale; row < (Number(y) + 1) * scale; row++)
      for (let column = Number(x) * scale; column < (Number(x) + Number(width)) * scale; column++)
        pixels.set([30, 36, 48], 4 * (row * side + column));
  return { pixels, side };
}

const readBack = (code: QrCode, scale = 4): string | undefined => {
  const { pixels, side } = raster(code, scale);
  return jsQR(pixels, side, side)?.data;
};

describe('a QR code', () => {
  it('is read back by another program: demo plans, means, a rehearsal, wild plans', () => {
    const wild = fc.sample(anyPlan, { numRuns: 4, seed: 7 });
    const plans = [REHEARSED, ...wild, ...[...DEMO_PLANS, ...MEAN_PLANS].map((stored) => stored.plan)];
    for (const plan of plans) {
      const address = addressWith(PAGE, hashOf(plan));
      const code = qrCode(address);
      expect(code && readBack(code)).toBe(address);
    }
  });

  it('takes the strongest level that stays easy to read, and the weakest where none does', () => {
    // ISO/IEC 18004, table 7, bytes: version 15 holds 220 at H, 292 at Q, 412 at M, 520 at L; version 40 holds 2,953 at L.
    const levelOf = (length: number) => qrCode('a'.repeat(length))?.level;
    expect([220, 221, 292, 293, 412, 413, 2953].map(levelOf)).toEqual(['H', 'Q', 'Q', 'M', 'M', 'L', 'L']);
    expect(qrCode('a'.repeat(2953))?.version).toBe(40);
    expect(qrCode('a'.repeat(2954))).toBeNull();
  });
});
