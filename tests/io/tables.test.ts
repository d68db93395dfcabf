import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { withKept } from '../../src/core/plan/compare.ts';
import { drillReport } from '../../src/core/plan/drillReport.ts';
import { shift } from '../../src/core/plan/edits.ts';
import { evaluate } from '../../src/core/plan/evaluate.ts';
import { csv } from '../../src/io/csv.ts';
import { DEMO_PLANS, MEAN_PLANS } from '../../src/io/plans.ts';
import { comparisonTable, readingsTable, rehearsalTable, tableCsv, tableJson } from '../../src/io/tables.ts';
import { presentPass, settingOf } from '../../src/words/presentPasses.ts';
import { presentReading } from '../../src/words/presentReading.ts';
import { rehearsed } from '../support/rehearsed.ts';

/** A CSV text as another parser reads it, row by row under its heading. */
function readBack(text: string): Record<string, string>[] {
  const read = Papa.parse<Record<string, string>>(text, {
    header: true,
    skipEmptyLines: false,
    newline: '\r\n',
  });
  const rows = read.data.slice(0, -1);
  expect(read.errors.filter(({ row }) => row !== rows.length)).toEqual([]);
  return rows;
}

/** The digits of the page behind those of a table: a true minus, an en dash for no answer. */
const shown = (cell: string) => (cell === '' ? '–' : cell.replace(/^-/, '−'));

describe('CSV', () => {
  // Source: papaparse, a parser of RFC 4180 by other hands.
  it('is read back cell by cell by another parser, whatever stands in it', () => {
    const cell = fc.oneof(fc.string(), fc.stringMatching(/^[=+\-@",\r\n a-c0-9.]*$/));
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 5 }), { minLength: 1 }), (rows) => {
        const { data } = Papa.parse<string[]>(csv(rows), { newline: '\r\n', delimiter: ',' });
        const plain = data
          .slice(0, -1)
          .map((row) => row.map((text) => text.replace(/^'(?=[=+\-@\t\r])/, '')));
        expect(plain).toEqual(rows.map((row) => row.map((text) => text.replace(/^'(?=[=+\-@\t\r])/, ''))));
      }),
    );
  });

  it('guards what a spreadsheet would work out, and leaves numbers alone', () => {
    const row = ['=1+1', '+SUM(A1)', '-2+3', '@x', '\tx', '-0.3', '+12.0', '3', 'a=b', ''];
    expect(csv([row])).toBe("'=1+1,'+SUM(A1),'-2+3,'@x,'\tx,-0.3,+12.0,3,a=b,\r\n");
  });
});

describe('the table of readings', () => {
  it.each([...DEMO_PLANS, ...MEAN_PLANS])('of $id has the page’s digits, as CSV and as JSON', ({ plan }) => {
    const evaluation = evaluate(plan);
    const table = readingsTable(evaluation);
    const rows = readBack(tableCsv(table));
    const { rows: objects, plans } = JSON.parse(tableJson(table));
    expect(plans[0].title).toBe(plan.title);
    expect(rows).toHaveLength(evaluation.readings.length);
    evaluation.readings.forEach((reading, i) => {
      const page = presentReading(reading);
      expect(rows[i].id).toBe(reading.id);
      expect(shown(rows[i].value)).toBe(page.number);
      expect([rows[i].limit, rows[i].status, rows[i].source]).toEqual([page.limit, page.status, page.source]);
      expect(objects[i]).toMatchObject({ id: reading.id, value: rows[i].value, status: page.status });
      if (reading.value !== null && reading.unit !== 'place')
        expect(Math.abs(Number(rows[i].value) - reading.value)).toBeLessThanOrEqual(0.5);
    });
  });
});

describe('the table of a rehearsal', () => {
  it('has every pass with its numbers, its faults, its readings, and the hole', () => {
    const plan = rehearsed(DEMO_PLANS[0].plan);
    const report = drillReport(plan);
    const rows = readBack(tableCsv(rehearsalTable(plan, report)));
    const summary = report.summary?.rows ?? [];
    expect(summary.length).toBeGreaterThan(2);
    for (const row of summary) {
      const own = rows.filter(({ pass }) => pass === `${row.index + 1}`);
      const page = presentPass(row, settingOf(plan));
      const value = (id: string) => own.find((one) => one.id === `pass-${id}`)?.value ?? '';
      const says = (key: string) => page.rows.find((one) => one.key === key)?.value ?? '';
      expect(own.every(({ tool }) => tool === page.tool)).toBe(true);
      expect(says('depth')).toBe(`${shown(value('depth'))}\u00A0mm`);
      expect(says('angle')).toBe(`${shown(value('angle'))}°`);
      expect(says('volume')).toBe(`${shown(value('volume'))}\u00A0mm³`);
      expect(own.filter(({ id }) => id.startsWith('fault-'))).toHaveLength(page.faults.length);
      expect(own.filter(({ id }) => !/^(pass|fault)-/.test(id))).toHaveLength(
        report.passes[row.index].length,
      );
    }
    expect(rows.filter(({ pass }) => pass === 'hole, worst')).toHaveLength(report.hole.length);
  });
});

describe('the table of a comparison', () => {
  it('says how far apart two poses stand, and both digits of every reading', () => {
    const { plan } = DEMO_PLANS[0];
    const moved = shift(plan, 0, 0.6);
    const [first, second] = [evaluate(withKept(plan, plan)), evaluate(moved)];
    const rows = readBack(tableCsv(comparisonTable(first, second)));
    // By hand: a shift of 0.6 mm square to the arch moves platform and apex by 0.6 and tilts nothing.
    const apart = rows.filter(({ id }) => id.startsWith('apart-'));
    expect(apart.map(({ id, apart: by }) => [id, by])).toEqual([
      ['apart-platform', '0.6'],
      ['apart-apex', '0.6'],
      ['apart-depth', expect.stringMatching(/^[+-]?0\.\d$/)],
      ['apart-angle', '0.0'],
    ]);
    second.readings.forEach((reading, i) => {
      const row = rows[apart.length + i];
      expect(row.id).toBe(reading.id);
      expect(shown(row.second)).toBe(presentReading(reading).number);
      expect(shown(row.first)).toBe(presentReading(first.readings[i]).number);
    });
  });
});
