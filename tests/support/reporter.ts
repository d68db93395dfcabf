import { writeSync } from 'node:fs';
import type { Reporter, TestModule } from 'vitest/node';

/**
 * Ends every run with one plain line, `N passed, N failed`, and `, N skipped` if any were.
 * A file that cannot be loaded and a fault outside every test count as one failure each.
 * The line is written as the process ends, so that nothing comes after it.
 */
export default class TotalsReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], faults: readonly unknown[]): void {
    const totals = { passed: 0, failed: faults.length, skipped: 0 };
    for (const module of modules) {
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        totals[state === 'pending' ? 'skipped' : state] += 1;
      }
      totals.failed += module.errors().length;
      for (const suite of module.children.allSuites()) totals.failed += suite.errors().length;
    }
    const skipped = totals.skipped > 0 ? `, ${totals.skipped} skipped` : '';
    const line = `${totals.passed} passed, ${totals.failed} failed${skipped}\n`;
    process.once('exit', () => writeSync(1, line));
  }
}
