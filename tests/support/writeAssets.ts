import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { GENERIC_KIT } from '../../src/core/drilling/genericKit.ts';
import { kitJsonSchema } from '../../src/core/plan/kitSchema.ts';
import { planJsonSchema } from '../../src/core/plan/schema.ts';
import { teachingSchemas } from '../../src/io/exerciseSchema.ts';
import { printKitFile } from '../../src/io/kitFile.ts';
import { lessonJsonSchema, printLessonFile } from '../../src/io/lessonFile.ts';
import { printPlanFile } from '../../src/io/planFile.ts';
import { SITES_DEMO } from './demoPlans.ts';
import { LESSON_FILES } from './lessons.ts';
import { MEAN_PLANS } from './meanPlans.ts';

/** Every generated file of `assets`, by its path there; a test holds that the tree has exactly these. */
export function assetFiles(): Map<string, string> {
  const files = new Map<string, string>();
  for (const { id, plan } of [...SITES_DEMO, ...MEAN_PLANS])
    files.set(`plans/${id}.json`, printPlanFile(plan));
  files.set('plan.schema.json', `${JSON.stringify(planJsonSchema(), null, 2)}\n`);
  files.set('kit.schema.json', `${JSON.stringify(kitJsonSchema(), null, 2)}\n`);
  files.set('kits/generic.json', printKitFile(GENERIC_KIT));
  for (const { id, lesson } of LESSON_FILES) files.set(`lessons/${id}.json`, printLessonFile(lesson));
  const teaching = { ...teachingSchemas(), lesson: lessonJsonSchema() };
  for (const [name, schema] of Object.entries(teaching))
    files.set(`${name}.schema.json`, `${JSON.stringify(schema, null, 2)}\n`);
  return files;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const assets = fileURLToPath(new URL('../../assets/', import.meta.url));
  for (const folder of ['plans', 'kits', 'lessons']) mkdirSync(assets + folder, { recursive: true });
  for (const [path, text] of assetFiles()) writeFileSync(assets + path, text);
}
