import { drillReport } from '../../core/plan/drillReport.ts';
import { evaluate } from '../../core/plan/evaluate.ts';
import { passesShown } from '../../core/plan/inHand.ts';
import { say } from '../../words/sayAll.ts';
import { fileNames, planIn } from '../files.ts';
import { measureJson } from '../measureJson.ts';
import { measureTable } from '../measureTable.ts';
import { BEYOND, type Command, DONE, taken, tell } from '../program.ts';

const OPTIONS = { json: { type: 'boolean' }, judge: { type: 'boolean' } } as const;

/** Every reading of each plan, and its rehearsal where passes were made. Every file is read before the first is printed. */
export const measure: Command = {
  name: 'measure',
  usage: (call) => say('cli.usage.measure', { call }),
  run: (args) => {
    const { values, positionals } = taken(args, OPTIONS);
    const measured = fileNames(positionals, 1, Infinity).map((path) => {
      const { file, plan } = planIn(path);
      const report = passesShown(plan).length > 0 ? drillReport(plan) : null;
      return { file, evaluation: evaluate(plan), report };
    });
    tell(values.json ? measureJson(measured) : measureTable(measured));
    const beyond = measured.some(({ evaluation }) => evaluation.readings.some((r) => r.status === 'beyond'));
    return values.judge && beyond ? BEYOND : DONE;
  },
};
