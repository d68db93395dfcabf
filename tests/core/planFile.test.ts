/**
 * The plan file. Sources: JSON (RFC 8259: no NaN, no Infinity, numbers too large read as infinite by this language), JSON Schema draft 2020-12 as an
 * independent validator (ajv) reads it, and the wrong files that the project says it refuses.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MIGRATIONS } from '../../src/core/plan/migrations.ts';
import { PLAN_VERSION, type Plan } from '../../src/core/plan/plan.ts';
import { readPlan } from '../../src/core/plan/read.ts';
import { planJsonSchema } from '../../src/core/plan/schema.ts';
import { LARGEST_FILE, parsePlanFile, printPlanFile } from '../../src/io/planFile.ts';
import { presentFault } from '../../src/words/presentFault.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { MEAN_PLANS } from '../support/meanPlans.ts';
import { anyPlan, libraryPlan, runs } from '../support/randomPlans.ts';
import { assetFiles } from '../support/writeAssets.ts';
import { WRONG_FILES } from '../support/wrongFiles.ts';

const root = new URL('../../', import.meta.url);
const textOf = (path: string): string => readFileSync(new URL(path, root), 'utf8');
const namesIn = (folder: string): string[] =>
  readdirSync(new URL(folder, root)).filter((name) => name.endsWith('.json'));

const schema = JSON.parse(textOf('assets/plan.schema.json')) as Record<string, unknown>;
const validate = new Ajv2020({ strict: true, allErrors: true }).compile(schema);

describe('the published schema', () => {
  it('is what the code checks by', () => {
    expect(schema).toEqual(JSON.parse(JSON.stringify(planJsonSchema())));
  });

  it('has a range on every number and is closed to unknown fields', () => {
    let numbers = 0;
    let objects = 0;
    const look = (node: unknown, path: string): void => {
      if (Array.isArray(node)) for (const [i, n] of node.entries()) look(n, `${path}/${i}`);
      if (typeof node !== 'object' || node === null || Array.isArray(node)) return;
      const n = node as Record<string, unknown>;
      if (n.type === 'number' || n.type === 'integer') {
        expect(
          'const' in n || 'enum' in n || (typeof n.minimum === 'number' && typeof n.maximum === 'number'),
          path,
        ).toBe(true);
        numbers++;
      }
      if (n.type === 'string')
        expect('enum' in n || 'const' in n || typeof n.maxLength === 'number', path).toBe(true);
      if (n.type === 'object' && 'properties' in n) {
        expect(n.additionalProperties, path).toBe(false);
        objects++;
      }
      for (const [key, value] of Object.entries(n)) look(value, `${path}/${key}`);
    };
    look(schema, '');
    expect(numbers).toBeGreaterThan(100);
    expect(objects).toBeGreaterThan(20);
  });

  it('accepts what the code accepts: random plans, by an independent validator', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        validate(JSON.parse(JSON.stringify(plan)));
        expect(validate.errors).toBeNull();
      }),
      runs(100),
    );
  });

  it('refuses what the code refuses for its shape, by an independent validator', () => {
    const SHAPE = new Set([
      'missing',
      'wrong-type',
      'out-of-range',
      'not-allowed',
      'unknown-field',
      'too-long',
      'wrong-count',
    ]);
    let checked = 0;
    for (const { name, text, code } of WRONG_FILES) {
      // A record's key of that name is hidden from a validator that looks at own properties by name; that a limit has a band is no matter of shape.
      const hidden = ['__proto__', 'a nest', 'a limit without'].some((start) => name.startsWith(start));
      if (!SHAPE.has(code) || hidden) continue;
      expect(validate(JSON.parse(text)), name).toBe(false);
      checked++;
    }
    expect(checked).toBeGreaterThan(20);
  });
});

describe('the plans that come with the program', () => {
  const files = namesIn('assets/plans');

  it('are six scenarios and one of every supported site', () => {
    expect(SITES_DEMO).toHaveLength(6);
    expect(MEAN_PLANS.map(({ plan }) => plan.site.tooth)).toEqual([11, 12, 13, 14, 21, 22, 23, 24]);
    expect(files.sort()).toEqual([...SITES_DEMO, ...MEAN_PLANS].map(({ id }) => `${id}.json`).sort());
  });

  it.each(files)('%s is read, is of this version, and is valid to an independent validator', (file) => {
    const text = textOf(`assets/plans/${file}`);
    const read = parsePlanFile(text);
    // The page takes them as they lie there, without the reader.
    expect(read).toEqual({ ok: true, migrated: [], plan: JSON.parse(text) });
    validate(JSON.parse(text));
    expect(validate.errors).toBeNull();
  });

  it('are exactly what `npm run assets` writes', () => {
    const written = assetFiles();
    for (const [path, text] of written) expect(textOf(`assets/${path}`), path).toBe(text);
    expect([...written.keys()].filter((p) => p.startsWith('plans/'))).toHaveLength(files.length);
  });

  it('have the generic kit beside them, valid to an independent validator by its published schema', () => {
    const kitOk = new Ajv2020().compile(JSON.parse(textOf('assets/kit.schema.json')));
    const kit = JSON.parse(textOf('assets/kits/generic.json'));
    kitOk(kit);
    expect(kitOk.errors).toBeNull();
    expect(kitOk({ ...kit, drills: [] })).toBe(false);
  });
});

describe('writing and reading back', () => {
  it('changes nothing: parse of print is the plan', () => {
    fc.assert(
      fc.property(fc.oneof(anyPlan, libraryPlan), (plan) => {
        const read = parsePlanFile(printPlanFile(plan));
        // Of the random arches about one in five is too tight for its ridge; nothing else is wrong with them.
        if (read.ok) expect(read.plan).toEqual(plan);
        else expect(read.faults.map((f) => f.code)).toEqual(['arch-too-tight']);
        fc.pre(read.ok);
      }),
      runs(100),
    );
  });

  it('prints the same text again', () => {
    for (const { plan } of [...SITES_DEMO, ...MEAN_PLANS]) {
      const text = printPlanFile(plan);
      const read = parsePlanFile(text);
      expect(read.ok && printPlanFile(read.plan)).toBe(text);
    }
  });

  it('never writes what it could not read: a number that is not finite throws', () => {
    const { plan } = SITES_DEMO[0];
    for (const m of [Number.NaN, Number.POSITIVE_INFINITY]) {
      const broken: Plan = { ...plan, pose: { ...plan.pose, platform: { ...plan.pose.platform, m } } };
      expect(() => printPlanFile(broken)).toThrow(RangeError);
      expect(readPlan(broken)).toMatchObject({
        ok: false,
        faults: [{ code: 'out-of-range', field: 'pose.platform.m' }],
      });
    }
  });

  it('passes over a byte order mark, and takes texts in any script', () => {
    const { plan } = SITES_DEMO[0];
    const text = printPlanFile({ ...plan, title: '計画 № 7 – “Ärzte”', note: 'a\nb' });
    const read = parsePlanFile(`\uFEFF${text}`);
    expect(read).toMatchObject({ ok: true, plan: { title: '計画 № 7 – “Ärzte”', note: 'a\nb' } });
  });

  it('keeps what is sent to it apart from what it answers', () => {
    const value = JSON.parse(printPlanFile(SITES_DEMO[0].plan)) as Record<string, unknown>;
    const before = JSON.stringify(value);
    readPlan(value);
    expect(JSON.stringify(value)).toBe(before);
    expect(({} as Record<string, unknown>).gap).toBeUndefined();
  });
});

describe('wrong files', () => {
  it.each(WRONG_FILES)('$name: $code $field', ({ text, code, field, value, low, high, says }) => {
    const read = parsePlanFile(text);
    if (read.ok) throw new Error('the file was read');
    const [fault] = read.faults;
    expect(fault).toMatchObject({ code, field });
    if (value !== undefined) expect(fault.value).toBe(value);
    if (low !== undefined) expect(fault.low).toBe(low);
    if (high !== undefined) expect(fault.high).toBe(high);
    const line = presentFault(fault);
    expect(line).not.toMatch(/[\p{Cc}{}]|undefined|NaN/u);
    expect(line.length).toBeLessThan(260);
    if (field !== '') expect(line).toContain(field === 'version' ? 'version' : field);
    if (says) expect(line).toMatch(says);
  });

  it('the arch that it names as possible is possible', () => {
    const { plan } = SITES_DEMO[0];
    for (const width of [20, 24, 30, 40]) {
      const tight = readPlan({ ...plan, site: { ...plan.site, arch: { width, depth: 20 } } });
      if (tight.ok) continue;
      const [{ code, high }] = tight.faults;
      expect(code).toBe('arch-too-tight');
      const eased = readPlan({ ...plan, site: { ...plan.site, arch: { width, depth: high ?? 0 } } });
      expect(eased.ok, `${width} by ${high}`).toBe(true);
    }
  });

  it('any text at all is answered, never thrown at', () => {
    const json = fc.json({ maxDepth: 4 });
    const bent = fc.tuple(fc.nat(5000), fc.string({ maxLength: 8, unit: 'binary' })).map(([at, put]) => {
      const text = printPlanFile(SITES_DEMO[0].plan);
      return text.slice(0, at) + put + text.slice(at + put.length);
    });
    fc.assert(
      fc.property(fc.oneof(json, fc.string(), bent), (text) => {
        const read = parsePlanFile(text);
        if (!read.ok) for (const fault of read.faults) expect(presentFault(fault)).not.toMatch(/[\n\r]/);
      }),
      runs(400),
    );
  });

  it('a plan of the greatest allowed size is read, one more byte is not', () => {
    const text = printPlanFile(SITES_DEMO[0].plan);
    const padded = text + ' '.repeat(LARGEST_FILE - text.length);
    expect(parsePlanFile(padded).ok).toBe(true);
    expect(parsePlanFile(`${padded} `)).toMatchObject({ ok: false, faults: [{ code: 'too-large' }] });
  });
});

describe('older versions', () => {
  const samples = namesIn('tests/samples');

  it('have a sample each, and every migration is one named step up', () => {
    for (let v = 0; v <= PLAN_VERSION; v++)
      expect(samples.filter((s) => s.startsWith(`v${v}-`)).length, `version ${v}`).toBeGreaterThanOrEqual(1);
    expect(MIGRATIONS.map((m) => m.from)).toEqual(Array.from({ length: PLAN_VERSION }, (_, v) => v));
    expect(new Set(MIGRATIONS.map((m) => m.name)).size).toBe(MIGRATIONS.length);
  });

  it.each(samples)('%s opens by the steps that its version needs', (name) => {
    const version = Number(/^v(\d+)-/.exec(name)?.[1]);
    const read = parsePlanFile(textOf(`tests/samples/${name}`));
    if (!read.ok) throw new Error(presentFault(read.faults[0]));
    expect(read.migrated).toEqual(MIGRATIONS.filter((m) => m.from >= version).map((m) => m.name));
    expect(read.plan.version).toBe(PLAN_VERSION);
    validate(JSON.parse(printPlanFile(read.plan)));
    expect(validate.errors).toBeNull();
  });

  it('name-the-tilt: the pair becomes two named angles, `cement` the fixing; margin 1 and no limits of its own', () => {
    const before = JSON.parse(textOf('tests/samples/v0-cemented.json')) as {
      pose: { tilt: [number, number]; platform: object };
      cement: boolean;
      site: object;
    };
    const read = parsePlanFile(textOf('tests/samples/v0-cemented.json'));
    expect(read).toMatchObject({
      ok: true,
      migrated: ['name-the-tilt', 'add-the-rehearsal', 'add-the-crown'],
      plan: {
        fixing: 'cemented',
        crestMargin: 1,
        limits: {},
        rehearsal: null,
        crown: {
          material: 'lithium-disilicate',
          wear: 0,
          cementGap: 0.05,
          post: { diameter: 1.5, height: 3 },
        },
        site: before.site,
        pose: {
          platform: before.pose.platform,
          tilt: { faciopalatal: before.pose.tilt[0], mesiodistal: before.pose.tilt[1] },
        },
      },
    });
    const screwed = parsePlanFile(textOf('tests/samples/v0-screw.json'));
    expect(screwed).toMatchObject({ ok: true, plan: { fixing: 'screw-bone' } });
  });

  it('an old file with a wrong number is refused by the same rules', () => {
    const bent = textOf('tests/samples/v0-cemented.json').replace(/"gap": [\d.]+/, '"gap": 99');
    expect(parsePlanFile(bent)).toMatchObject({
      ok: false,
      faults: [{ code: 'out-of-range', field: 'site.gap', value: 99 }],
    });
    const junk = parsePlanFile('{"format":"ridgewright-plan","version":0}');
    expect(junk.ok ? [] : junk.faults.map((f) => f.code)).toContain('missing');
  });
});
