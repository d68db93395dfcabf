/** The command line as a user runs it: exit codes, what goes to which stream, the table, the JSON. Source: the usage that it prints and the ids of the model. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { READING_IDS, type Reading } from '../../src/core/measure/reading.ts';
import { drillReport } from '../../src/core/plan/drillReport.ts';
import { shift } from '../../src/core/plan/edits.ts';
import { evaluate } from '../../src/core/plan/evaluate.ts';
import { drillTo, setSpeed, takeTool } from '../../src/core/plan/rehearse.ts';
import { printPlanFile } from '../../src/io/planFile.ts';
import { presentPass, presentVerdict, settingOf } from '../../src/words/presentPasses.ts';
import { presentReading } from '../../src/words/presentReading.ts';
import { type Ran, runProgram, runSource } from '../support/commandLine.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { WRONG_FILES } from '../support/wrongFiles.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const plans = (id: string) => join(root, 'assets/plans', `${id}.json`);

const measure = (...args: string[]): Promise<Ran> => runProgram('measure', ...args);

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'measure-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const file = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

describe('the table', () => {
  it('prints every reading of every file with the digits of the page, and the caution under the last', async () => {
    const { code, out, err } = await measure(plans('demo-1-narrow-lateral'), plans('demo-5-slab'));
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const [first, second] = [SITES_DEMO[0].plan, SITES_DEMO[4].plan];
    // Each file's readings, and under them what they mean for the crown; at the end the caution.
    const parts = out.split('\n\n');
    expect(parts).toHaveLength(5);
    const blocks = [parts[0], parts[2], parts[4]];
    expect(parts[1]).toMatch(/^Crown of lithium disilicate, monolithic\. The axis comes out /);
    // By hand: shoulder 3.1 below the margin, within 3 to 4; a four-fold neck with lead 0.8 goes 0.2 deeper by 90°.
    expect(parts[3]).toMatch(/right as it is; a part-turn of 90\.0° changes it by 0\.2\u00A0mm/);
    expect(blocks[0]).toContain(`${first.title} (demo-1-narrow-lateral.json)`);
    expect(blocks[1]).toContain(`${second.title} (demo-5-slab.json)`);
    expect(blocks[2]).toMatch(/not a medical device/);
    [first, second].forEach((plan, i) => {
      const lines = blocks[i].split('\n').slice(2);
      const { readings } = evaluate(plan);
      expect(lines).toHaveLength(READING_IDS.length);
      readings.forEach((reading, k) => {
        const shown = presentReading(reading);
        const [label, value] = lines[k].split(/ {2,}/);
        expect(label.startsWith(shown.label), label).toBe(true);
        if (shown.level) expect(label.endsWith(shown.level), label).toBe(true);
        expect(value, reading.id).toBe(shown.quantity);
        expect(lines[k], reading.id).toContain(shown.status);
      });
    });
    // By hand: both walls of the slab are 2.0.
    expect(blocks[1]).toMatch(/Facial wall, thinnest at [\d.]+\u00A0mm {2,}2\.0\u00A0mm/);
  });
});

describe('--json', () => {
  interface Printed {
    readonly file: string;
    readonly title: string;
    readonly readings: (Reading & { shown: string; samples?: unknown[] })[];
  }

  it('is an array, per file its title and its readings by the ids of the model, the numbers as they are measured', async () => {
    const { code, out, err } = await measure(
      '--json',
      plans('demo-1-narrow-lateral'),
      plans('demo-2-fresh-socket'),
    );
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const printed = JSON.parse(out) as Printed[];
    expect(printed.map((p) => p.file)).toEqual(['demo-1-narrow-lateral.json', 'demo-2-fresh-socket.json']);
    printed.forEach(({ title, readings }, i) => {
      const { plan } = SITES_DEMO[i];
      expect(title).toBe(plan.title);
      expect(readings.map((r) => r.id)).toEqual([
        'facial-wall-profile',
        'palatal-wall-profile',
        ...READING_IDS,
      ]);
      const { readings: measured, profiles } = evaluate(plan);
      profiles.forEach(({ samples }, k) => {
        expect(readings[k].samples).toHaveLength(samples.length);
      });
      measured.forEach((r, k) => {
        const { shown, ...rest } = readings[k + 2];
        expect(rest).toEqual(JSON.parse(JSON.stringify(r)));
        expect(shown).toBe(presentReading(r).number);
      });
    });
  });
});

describe('a plan whose passes were made', () => {
  // The second pass too fast, and a drill left out; both on the planned axis.
  const pilot = drillTo(SITES_DEMO[0].plan, 8);
  const fast = drillTo(setSpeed(takeTool(pilot, { kind: 'drill', index: 2 }), 2500), 10);
  const report = drillReport(fast);
  const { summary, hole } = report;
  const setting = settingOf(fast);
  const path = () => file('passes.json', printPlanFile(fast));

  it('prints them with the sentences and digits of the page', async () => {
    const { code, out } = await measure(path());
    expect(code).toBe(0);
    const block = out.split('\n\n')[2].split('\n');
    if (!summary) throw new Error('no summary');
    expect(block[0]).toContain(presentVerdict(summary));
    for (const row of summary.rows) {
      const { title, tool, rows, faults } = presentPass(row, setting);
      const line = block.find((one) => one.startsWith(`${title}, ${tool}`));
      for (const { label, value } of rows) expect(line).toContain(`${label}: ${value}`);
      for (const { text } of faults) expect(block.some((one) => one.includes(text))).toBe(true);
    }
    // By hand: the 2.8 drill of the generic kit is used at 900 to 1100 rpm, and the 2.4 one was left out.
    expect(block.join(' ')).toContain('2500\u00A0rpm, more than the 1100\u00A0rpm');
    expect(block.join(' ')).toContain('The 2.8\u00A0mm drill came before the 2.4\u00A0mm one.');
    expect(block.join(' ')).toContain('No force is modelled.');
  });

  it('has them in the JSON, the readings of the hole among it; a plan without passes has no such field', async () => {
    const { code, out } = await measure('--json', path(), plans('demo-5-slab'));
    expect(code).toBe(0);
    const [first, second] = JSON.parse(out);
    expect(second).not.toHaveProperty('rehearsal');
    const { rehearsal } = first;
    expect(rehearsal).toMatchObject({ verdict: summary?.verdict, removed: report.removed });
    expect(rehearsal.hole.map((r: { shown: string }) => r.shown)).toEqual(
      hole.map((r) => presentReading(r).number),
    );
    expect(rehearsal.passes).toHaveLength(2);
    summary?.rows.forEach((row, i) => {
      const { faults, shown, readings, ...rest } = rehearsal.passes[i];
      expect({ ...rest, faults: faults.length }).toEqual({
        ...JSON.parse(JSON.stringify(row)),
        faults: row.faults.length,
      });
      expect(shown.angle).toBe(presentPass(row, setting).rows.find(({ key }) => key === 'angle')?.value);
      expect(readings.length).toBe(report.passes[row.index].length);
    });
  });
});

describe('--judge', () => {
  it('exits 0 where nothing is beyond, 1 where something is, and prints all the same', async () => {
    const moved = file('moved.json', printPlanFile(shift(SITES_DEMO[0].plan, 0, 0.6)));
    const [good, bad, unasked] = await Promise.all([
      measure('--judge', plans('demo-1-narrow-lateral')),
      measure('--judge', plans('demo-1-narrow-lateral'), moved),
      measure(moved),
    ]);
    expect([good.code, bad.code, unasked.code]).toEqual([0, 1, 0]);
    expect([good.err, bad.err, unasked.err]).toEqual(['', '', '']);
    expect(bad.out).toContain('(moved.json)');
    expect(bad.out).toContain('beyond');
  });
});

describe('usage', () => {
  it('without a file, or with an option it does not know: 2, the usage on stderr, nothing on stdout', async () => {
    const [none, unknown] = await Promise.all([measure(), measure('--colour', plans('demo-5-slab'))]);
    for (const { code, out, err } of [none, unknown]) {
      expect({ code, out }).toEqual({ code: 2, out: '' });
      expect(err).toContain('Usage: npm run --silent measure -- FILE…');
    }
    expect(unknown.err).toContain('--colour');
  });

  it('--help prints it and is done', async () => {
    const { code, out, err } = await runSource('measure', '--help');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('--judge');
    expect(out).toContain('4 a fault of this program');
  });
});

describe('unusable files', () => {
  // The wrong files that the project promises to refuse, and a few that are no plan at all.
  const NAMES = [
    'not JSON',
    'NaN',
    'a newer version',
    'a negative version',
    'a missing number',
    '1e999',
    'a negative width',
    'a self-crossing ridge',
    'an arch too tight',
    'tooth 99',
    '__proto__ at the top',
    '__proto__ among the limits',
    'a nest of 20,000 lists',
    '10 MB',
  ];
  const wrong = NAMES.map((name) => {
    const found = WRONG_FILES.find((w) => w.name === name);
    if (!found) throw new Error(`no wrong file “${name}”`);
    return found;
  });

  it.each(wrong)(
    '$name: 3, one clear line, nothing on stdout',
    async ({ name, text, field, value, low, high, says }) => {
      const path = file(`${name.replace(/\W+/g, '-')}.json`, text);
      const { code, out, err } = await measure(path);
      expect({ code, out }).toEqual({ code: 3, out: '' });
      expect(err.endsWith('\n')).toBe(true);
      const line = err.trimEnd();
      expect(line).not.toContain('\n');
      expect(line).toMatch(/^[\w-]+\.json: /);
      if (field !== '') expect(line).toContain(field);
      if (typeof value === 'number' && value >= 0) expect(line).toContain(String(value));
      for (const end of [low, high])
        if (typeof end === 'number' && end !== 262_144)
          expect(line).toContain(String(end).replace('-', '\u2212'));
      if (says) expect(line).toMatch(says);
      if (name === '10 MB') expect(line).toContain('10000012');
    },
  );

  it('a file that is not there, and a folder: 3 and one line', async () => {
    for (const path of [join(folder, 'none.json'), folder]) {
      const { code, out, err } = await measure(path);
      expect({ code, out }).toEqual({ code: 3, out: '' });
      expect(err.trimEnd().split('\n')).toHaveLength(1);
      expect(err).toContain('cannot be read');
    }
  });

  it('one among good ones: nothing is printed, for the answer would not be whole', async () => {
    const { code, out } = await measure(plans('demo-5-slab'), file('empty.json', ''));
    expect({ code, out }).toEqual({ code: 3, out: '' });
  });

  it('an older version is read, and said so on stderr', async () => {
    const { code, out, err } = await measure(join(root, 'tests/samples/v0-cemented.json'));
    expect(code).toBe(0);
    expect(err).toBe(
      'v0-cemented.json: read as an older file version (name-the-tilt, add-the-rehearsal, add-the-crown).\n',
    );
    expect(out).toContain(
      JSON.parse(readFileSync(join(root, 'tests/samples/v0-cemented.json'), 'utf8')).title,
    );
  });
});
