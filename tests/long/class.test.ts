/** A class of a thousand files marked in one run, twenty of them broken; its time is printed and never asserted. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { attemptAt, attemptText, brokenFiles, filesOf, normal, seeded } from '../support/classFiles.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

it('marks a thousand files, twenty of them broken', () => {
  const folder = mkdtempSync(join(tmpdir(), 'class-'));
  const teacher = join(tmpdir(), `${folder.split('/').at(-1)}-teacher.json`);
  try {
    const { plan } = SITES_DEMO[2];
    const files = filesOf(plan);
    const gauss = normal(seeded(7));
    const texts = Array.from({ length: 980 }, (_, i) =>
      attemptText(files.exercise, attemptAt(plan, gauss, `student ${i}`)),
    );
    [...texts, ...brokenFiles(texts[0])].forEach((text, i) => {
      writeFileSync(join(folder, `${i}.json`), text);
    });
    writeFileSync(teacher, files.teacher);
    const began = performance.now();
    const out = execFileSync(
      process.execPath,
      ['--import', 'tsx', 'src/cli/mark.ts', teacher, folder, '--json'],
      {
        cwd: root,
        maxBuffer: 2 ** 28,
        encoding: 'utf8',
      },
    );
    process.stdout.write(`1,000 files marked in ${Math.round(performance.now() - began)} ms\n`);
    const found = JSON.parse(out);
    expect(found.files).toHaveLength(1000);
    expect(found.files.filter((one: { fault?: unknown }) => one.fault)).toHaveLength(20);
    expect(found.report.attempts).toBe(980);
    // What was put in: 0.3 facially at the platform, within four standard errors of 0.6/√980.
    expect(Math.abs(found.report.measures['platform-faciopalatal'].mean - 0.3)).toBeLessThan(0.1);
  } finally {
    rmSync(folder, { recursive: true, force: true });
    rmSync(teacher, { force: true });
  }
});
