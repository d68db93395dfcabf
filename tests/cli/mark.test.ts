/** Marking a class as a teacher runs it. Source: the usage that it prints; papaparse reads the CSV. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Papa from 'papaparse';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { markAttempt } from '../../src/core/teaching/mark.ts';
import { MEASURE_IDS } from '../../src/core/teaching/measures.ts';
import { attemptAt, attemptText, brokenFiles, filesOf, normal, seeded } from '../support/classFiles.ts';
import { type Ran, runProgram, runSource } from '../support/commandLine.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';

const { plan } = SITES_DEMO[4];
const { teacher, student, exercise } = filesOf(plan);
const gauss = normal(seeded(17));
const attempts = Array.from({ length: 12 }, (_, i) => attemptAt(plan, gauss, `student, ${i}`));

const mark = (...args: string[]): Promise<Ran> => runProgram('mark', ...args);

let folder = '';
const at = (name: string) => join(folder, name);
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'mark-'));
  mkdirSync(at('in'));
  writeFileSync(at('teacher.json'), teacher);
  writeFileSync(at('student.json'), student);
  const texts = attempts.map((attempt) => attemptText(exercise, attempt));
  texts.forEach((text, i) => {
    writeFileSync(at(`in/a${String(i).padStart(2, '0')}.json`), text);
  });
  brokenFiles(texts[0]).forEach((text, i) => {
    writeFileSync(at(`in/b${String(i).padStart(2, '0')}.json`), text);
  });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('mark', () => {
  it('prints a class with twenty broken files among it, each of them one line', async () => {
    const { code, out, err } = await mark(at('teacher.json'), at('in'), at('gone.json'));
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('12 of 33 files marked');
    const faults = out.split('Files that could not be marked\n')[1].split('\n\n')[0].split('\n');
    expect(faults).toHaveLength(21);
    expect(faults.find((line) => line.startsWith('b12.json'))).toContain('another exercise');
    expect(faults[20]).toBe('gone.json: It cannot be read.');
  });

  it('prints a row for every file as CSV, with the numbers of the mark', async () => {
    const { out } = await mark(at('teacher.json'), at('in'), '--csv');
    const { data, errors } = Papa.parse<Record<string, string>>(out.trim(), { header: true });
    expect(errors).toEqual([]);
    expect(data).toHaveLength(32);
    expect(data.filter(({ fault }) => fault === '')).toHaveLength(12);
    attempts.forEach((attempt, i) => {
      const { measures } = markAttempt(exercise, attempt);
      expect(data[i].label).toBe(attempt.label);
      for (const id of MEASURE_IDS)
        expect(Math.abs(Number(data[i][id]) - (measures[id] ?? 0))).toBeLessThan(0.051);
    });
  });

  it('prints the core’s own numbers as JSON', async () => {
    const { out } = await runSource(
      'mark',
      at('teacher.json'),
      at('in/a00.json'),
      at('in/b12.json'),
      '--json',
    );
    const { exercise: named, files, report, published } = JSON.parse(out);
    expect(named.fingerprint).toBe(exercise.fingerprint);
    expect(files[0].measures).toEqual(
      JSON.parse(JSON.stringify(markAttempt(exercise, attempts[0]).measures)),
    );
    expect(files[1].fault.code).toBe('other-exercise');
    expect(report.attempts).toBe(1);
    expect(published.length).toBeGreaterThan(3);
  });

  it('refuses the students’ file, a file that is none, and a call without attempts', async () => {
    const [students, none, usage] = await Promise.all([
      mark(at('student.json'), at('in/a00.json')),
      mark(at('in/a00.json'), at('in/a00.json')),
      mark(at('teacher.json')),
    ]);
    expect(students).toMatchObject({ code: 3, out: '' });
    expect(students.err).toContain('no answer');
    expect(none).toMatchObject({ code: 3, out: '' });
    expect(usage).toMatchObject({ code: 2, out: '' });
    expect(usage.err).toContain('Usage');
  });
});
