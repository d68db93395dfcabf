/** The commands beside measure, as a user runs them. Sources: the usage that they print; readers of other makers for what they write; the core's own deviations. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Papa from 'papaparse';
import { STLLoader } from 'three/addons/loaders/STLLoader.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { totalLength } from '../../src/core/implant/shape.ts';
import { READING_IDS } from '../../src/core/measure/reading.ts';
import { evaluate } from '../../src/core/plan/evaluate.ts';
import { PLAN_VERSION } from '../../src/core/plan/plan.ts';
import { deviation } from '../../src/core/spread/deviation.ts';
import { drawingSvg } from '../../src/io/drawings.ts';
import { parsePlanFile } from '../../src/io/planFile.ts';
import { presentDeviation } from '../../src/words/presentDeviation.ts';
import { presentReading } from '../../src/words/presentReading.ts';
import { type Ran, runProgram, runSource } from '../support/commandLine.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const samples = join(root, 'tests/samples');
const plans = (id: string) => join(root, 'assets/plans', `${id}.json`);
const lateral = plans('demo-1-narrow-lateral');

const ridgewright = (...args: string[]): Promise<Ran> => runProgram('ridgewright', ...args);

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'ridgewright-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('help', () => {
  it('names every command; each says its own use, exit codes among it', async () => {
    const { code, out, err } = await runSource('ridgewright', '--help');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const names = ['measure', 'compare', 'export', 'migrate'];
    const helps = await Promise.all(names.map((name) => ridgewright(name, '--help')));
    names.forEach((name, i) => {
      expect(out).toContain(`\n  ${name} `);
      expect(helps[i]).toMatchObject({ code: 0, err: '' });
      expect(helps[i].out).toContain(`ridgewright -- ${name} `);
      expect(helps[i].out).toContain('3 unusable file');
    });
  });

  it.each([
    ['no command', []],
    ['an option that is none', ['compare', '--colour', lateral, lateral]],
    ['one file too few', ['compare', lateral]],
    ['a format that is none', ['export', lateral, '--to', 'pdf']],
    ['a kind that the format has not', ['export', lateral, '--to', 'stl', '--what', 'section']],
  ])('%s: 2, why and how on stderr', async (_, args) => {
    const { code, out, err } = await ridgewright(...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^[^\n]+\nUsage: npm run --silent ridgewright -- /);
  });
});

describe('compare', () => {
  const mean = plans('means-12');

  it('says how far apart they stand and sets the readings side by side, with the digits of the page', async () => {
    const { code, out, err } = await ridgewright('compare', lateral, mean);
    expect(code).toBe(0);
    expect(err).toContain('different numbers of the site');
    const first = evaluate(SITES_DEMO[0].plan);
    const read = parsePlanFile(readFileSync(mean, 'utf8'));
    if (!read.ok) throw new Error('not a plan');
    const second = evaluate(read.plan);
    const { pose, implant } = read.plan;
    const apart = deviation(SITES_DEMO[0].plan.pose, pose, totalLength(implant), implant.index);
    for (const { label, value } of presentDeviation(apart)) {
      const line = out.split('\n').find((one) => one.includes(label) && one.endsWith(value));
      expect(line, label).toBeDefined();
    }
    const lines = out.split('\n');
    READING_IDS.forEach((_, i) => {
      const [a, b] = [presentReading(first.readings[i]), presentReading(second.readings[i])];
      const line = lines.find((one) => one.startsWith(`${b.label}  `));
      expect(line?.split(/ {2,}/).slice(1, 3)).toEqual([
        `${a.quantity}, ${a.status}`,
        `${b.quantity}, ${b.status}`,
      ]);
    });
  });

  it('as JSON and CSV for other programs, the same rows in both', async () => {
    const [json, csv] = await Promise.all([
      ridgewright('compare', lateral, lateral, '--json'),
      ridgewright('compare', lateral, lateral, '--csv'),
    ]);
    expect([json.code, json.err, csv.code, csv.err]).toEqual([0, '', 0, '']);
    const { rows } = JSON.parse(json.out);
    expect(
      rows.filter((r: { id: string }) => r.id.startsWith('apart-')).map((r: { apart: string }) => r.apart),
    ).toEqual(['0.0', '0.0', '0.0', '0.0']);
    const { data, errors } = Papa.parse<string[]>(csv.out.trimEnd());
    expect(errors).toEqual([]);
    expect(data.slice(1).map(([id]) => id)).toEqual(rows.map((r: { id: string }) => r.id));
  });

  it('plans of different teeth cannot be: 3', async () => {
    const { code, out, err } = await ridgewright('compare', lateral, plans('demo-2-fresh-socket'));
    expect({ code, out }).toEqual({ code: 3, out: '' });
    expect(err).toContain('different teeth');
  });
});

describe('export', () => {
  it('a dummy as STL into a file, its figures on stderr, read by three', async () => {
    const path = join(folder, 'implant.stl');
    const { code, out, err } = await ridgewright(
      'export',
      lateral,
      '--to',
      'stl',
      '--what',
      'implant',
      '--out',
      path,
    );
    expect({ code, out }).toEqual({ code: 0, out: '' });
    expect(err).toMatch(/3\.5 × 3\.5 × 12\.5\smm, [\d.]+\smm³, \d+ triangles/);
    expect(err).toMatch(/no surgical guide/);
    const bytes = readFileSync(path);
    const corners = new STLLoader().parse(new Uint8Array(bytes).buffer).getAttribute('position').count;
    expect(statSync(path).size).toBe(84 + (50 * corners) / 3);
  });

  it('nothing drilled: 3 and why', async () => {
    const { code, out, err } = await ridgewright('export', lateral, '--to', 'glb', '--what', 'drilled');
    expect({ code, out }).toEqual({ code: 3, out: '' });
    expect(err).toBe('demo-1-narrow-lateral.json: Not offered: no pass has met bone yet.\n');
  });

  it('the drawing that the page gives, and a table with the digits of the page', async () => {
    const [drawn, csv] = await Promise.all([
      ridgewright('export', lateral, '--to', 'svg'),
      ridgewright('export', lateral, '--to', 'csv'),
    ]);
    expect([drawn.code, csv.code]).toEqual([0, 0]);
    expect(drawn.out).toBe(drawingSvg(evaluate(SITES_DEMO[0].plan), 'section'));
    const { data } = Papa.parse<string[]>(csv.out.trimEnd());
    const { readings } = evaluate(SITES_DEMO[0].plan);
    data.slice(1).forEach(([id, , value], i) => {
      const { number } = presentReading(readings[i]);
      expect([id, value]).toEqual([readings[i].id, number === '\u2013' ? '' : number.replace('\u2212', '-')]);
    });
  });
});

describe('migrate', () => {
  it('opens every released sample, and what it prints is of today and needs no step more', async () => {
    const names = readdirSync(samples).filter((name) => name.endsWith('.json'));
    expect(names.length).toBeGreaterThan(4);
    const [oldest] = names.sort();
    const out = join(folder, 'today.json');
    const ran = await ridgewright('migrate', join(samples, oldest), '--out', out);
    expect(ran).toMatchObject({ code: 0, out: '' });
    expect(ran.err).toContain('name-the-tilt');
    const again = await ridgewright('migrate', out);
    expect(again.code).toBe(0);
    expect(again.err).toContain(`already of version ${PLAN_VERSION}`);
    expect(again.out).toBe(readFileSync(out, 'utf8'));
    for (const name of names) {
      const read = parsePlanFile(readFileSync(join(samples, name), 'utf8'));
      expect(read.ok, name).toBe(true);
      if (read.ok) expect(read.plan.version).toBe(PLAN_VERSION);
    }
  });

  it('a file that is no plan: 3', async () => {
    const { code, out, err } = await ridgewright('migrate', join(root, 'package.json'));
    expect({ code, out }).toEqual({ code: 3, out: '' });
    expect(err).toMatch(/^package\.json: /);
  });

  it('a place that cannot be written to: 3', async () => {
    const { code, err } = await ridgewright('migrate', lateral, '--out', join(folder, 'none', 'plan.json'));
    expect({ code, err: err.split('\n').at(-2) }).toEqual({ code: 3, err: 'plan.json cannot be written.' });
  });
});
