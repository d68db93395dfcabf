import { drillReport } from '../../core/plan/drillReport.ts';
import { evaluate } from '../../core/plan/evaluate.ts';
import { passesShown } from '../../core/plan/inHand.ts';
import type { Plan } from '../../core/plan/plan.ts';
import { BYTE_ORDER_MARK } from '../../io/csv.ts';
import { drawingSvg, PLAN_DRAWINGS } from '../../io/drawings.ts';
import { MODEL_FORMATS, type ModelFormat } from '../../io/modelFormats.ts';
import { readingsTable, rehearsalTable, type Table, tableCsv, tableJson } from '../../io/tables.ts';
import { MODEL_KINDS, type ModelKind } from '../../solids/model.ts';
import { say } from '../../words/sayAll.ts';
import { sayFigures, sayLeftOut, sayNoModel } from '../../words/sayModel.ts';
import { fileNames, give, planIn } from '../files.ts';
import { type Command, DONE, oneOf, taken, talk, UnusableFile, UsageError } from '../program.ts';

const OPTIONS = {
  to: { type: 'string' },
  what: { type: 'string' },
  out: { type: 'string' },
} as const;

const FORMATS = [...MODEL_FORMATS, 'svg', 'csv', 'json'] as const;
const TABLES = ['readings', 'rehearsal'] as const;

/** The file a plan was read from, and what is wanted of it. */
interface Wish {
  readonly file: string;
  readonly plan: Plan;
  readonly what: string | undefined;
  readonly out: string | undefined;
}

const isModel = (format: (typeof FORMATS)[number]): format is ModelFormat =>
  MODEL_FORMATS.some((one) => one === format);

/** A solid model. The modeller and the writers are loaded only here. */
async function modelBytes({ file, plan, what }: Wish, format: ModelFormat): Promise<Uint8Array> {
  const kind: ModelKind = oneOf('--what', MODEL_KINDS, what ?? 'ridge');
  const [{ default: load }, { buildModel }, { modelFile }] = await Promise.all([
    import('manifold-3d'),
    import('../../solids/build.ts'),
    import('../../io/modelFile.ts'),
  ]);
  const kernel = await load();
  kernel.setup();
  const result = buildModel(kernel, plan, kind);
  if (!result.ok) throw new UnusableFile(say('fault.inFile', { file, fault: sayNoModel(result.why) }));
  const { model } = result;
  const figures = sayFigures({ ...model, triangles: model.mesh.triangles.length / 3 });
  talk(say('cli.named', { name: say(`models.${kind}`), value: figures }));
  if (model.leftOut > 0) talk(sayLeftOut(model));
  talk(say('models.purpose'));
  return modelFile(model, format);
}

/** The file that the page gives. */
const drawing = ({ plan, what }: Wish): string =>
  drawingSvg(evaluate(plan), oneOf('--what', PLAN_DRAWINGS, what ?? 'section'));

function tableOf({ file, plan, what }: Wish): Table {
  if (oneOf('--what', TABLES, what ?? 'readings') === 'readings') return readingsTable(evaluate(plan));
  if (passesShown(plan).length === 0)
    throw new UnusableFile(say('fault.inFile', { file, fault: say('rehearse.nothing') }));
  return rehearsalTable(plan, drillReport(plan));
}

/** A spreadsheet opens a file by its mark; what is piped on carries none. */
const asCsv = (wish: Wish): string =>
  (wish.out === undefined ? '' : BYTE_ORDER_MARK) + tableCsv(tableOf(wish));

/** A plan as a file for another program. */
export const exportPlan: Command = {
  name: 'export',
  usage: (call) => say('cli.usage.export', { call }),
  run: async (args) => {
    const { values, positionals } = taken(args, OPTIONS);
    const [path] = fileNames(positionals, 1);
    if (values.to === undefined) throw new UsageError(say('cli.noFormat'));
    const format = oneOf('--to', FORMATS, values.to);
    const { file, plan } = planIn(path);
    const wish: Wish = { file, plan, what: values.what, out: values.out };
    if (isModel(format)) give(await modelBytes(wish, format), wish.out);
    else if (format === 'svg') give(drawing(wish), wish.out);
    else give(format === 'csv' ? asCsv(wish) : tableJson(tableOf(wish)), wish.out);
    return DONE;
  },
};
