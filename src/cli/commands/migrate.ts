import { PLAN_VERSION } from '../../core/plan/plan.ts';
import { printPlanFile } from '../../io/planFile.ts';
import { formatNumber } from '../../words/format.ts';
import { say } from '../../words/sayAll.ts';
import { fileNames, give, planIn } from '../files.ts';
import { type Command, DONE, taken, talk } from '../program.ts';

const OPTIONS = { out: { type: 'string' } } as const;

/** A plan file of any released version as one of today's. */
export const migrate: Command = {
  name: 'migrate',
  usage: (call) => say('cli.usage.migrate', { call }),
  run: (args) => {
    const { values, positionals } = taken(args, OPTIONS);
    const [path] = fileNames(positionals, 1);
    const { file, plan, migrated } = planIn(path);
    const version = formatNumber({ value: PLAN_VERSION, unit: 'count' });
    if (migrated.length === 0) talk(say('cli.current', { file, version }));
    give(printPlanFile(plan), values.out);
    return DONE;
  },
};
