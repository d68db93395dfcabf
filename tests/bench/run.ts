/**
 * `npm run bench -- readings`: how long a full set of readings takes, and how long the same readings take from meshes of equal accuracy, in one run. Prints; never
 * judges: a time is a fact of a machine on a day. Target on a quiet reference machine: at most 0.5 ms at the median, at least 50 times faster.
 */

import type { ReadingId } from '../../src/core/measure/reading.ts';
import { evaluate, readingOf, solidsOf } from '../../src/core/plan/evaluate.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { MEAN_PLANS } from '../support/meanPlans.ts';
import { MeshReader, SiteMeshes } from './meshReadings.ts';
import { machine, median, times } from './times.ts';

const POSES = 400;
const MESH_POSES = 12;

/** Small changes of a pose, as a hand drags: a spiral of ±0.15 mm and ±1°. */
const nudged = (plan: Plan, i: number): Plan => {
  const s = Math.sin(i * 2.399963);
  const k = Math.cos(i * 2.399963);
  const share = ((i % 97) + 1) / 97;
  const { platform, tilt } = plan.pose;
  return {
    ...plan,
    pose: {
      ...plan.pose,
      platform: {
        m: platform.m + 0.1 * share * s,
        f: platform.f + 0.15 * share * k,
        c: platform.c + 0.1 * share * s * k,
      },
      tilt: { faciopalatal: tilt.faciopalatal + share * s, mesiodistal: tilt.mesiodistal + share * k },
    },
  };
};

const value = (plan: Plan, id: ReadingId): number | null => readingOf(evaluate(plan).readings, id).value;

/** Something is entered or bare: then depths of penetration are climbed for, and the areas gone over strip by strip. */
function perforated(plan: Plan): boolean {
  const { readings } = evaluate(plan);
  const bare = /^exposure-/;
  const entered = /-wall-|^root-|^canal$|^apex-to-/;
  return readings.some(
    ({ id, value }) => value !== null && ((bare.test(id) && value > 0.05) || (entered.test(id) && value < 0)),
  );
}

interface Row {
  readonly title: string;
  readonly readings: number[];
  readonly meshes: number[];
  readonly differences: string;
}

function bench(title: string, plan: Plan): Row {
  solidsOf(plan.site);
  times(POSES, (i) => evaluate(nudged(plan, i + POSES)));
  const readings = times(POSES, (i) => evaluate(nudged(plan, i)));
  const reader = new MeshReader(new SiteMeshes(solidsOf(plan.site), plan.crestMargin), plan);
  times(3, (i) => reader.read(nudged(plan, i + 50).pose));
  const meshes = times(MESH_POSES, (i) => reader.read(nudged(plan, i).pose));
  const mesh = reader.read(plan.pose);
  const off = (id: ReadingId, other: number): string => {
    const own = value(plan, id);
    // A mesh gives no sign to a distance, so an entered wall or root is not compared.
    return own === null || own < 0 || !Number.isFinite(other) ? '–' : (other - own).toFixed(3);
  };
  const differences = [
    off('facial-wall-thinnest', mesh.thinnest.facial),
    off('palatal-wall-thinnest', mesh.thinnest.palatal),
    off('facial-wall-true', mesh.true.facial),
    off('palatal-wall-true', mesh.true.palatal),
    off('root-mesial', mesh.root.mesial),
    off('root-distal', mesh.root.distal),
    off('bone-contact', mesh.contact),
  ].join(' ');
  return { title, readings, meshes, differences };
}

function report(name: string, plans: readonly (readonly [string, Plan])[]): void {
  if (plans.length === 0) return;
  console.log(
    `\n${name}\n${'plan'.padEnd(28)} readings ms  meshes ms   ratio   differences: walls f p, true f p, roots m d (mm), contact (%)`,
  );
  const rows = plans.map(([title, plan]) => bench(title, plan));
  for (const { title, readings, meshes, differences } of rows) {
    const [a, b] = [median(readings), median(meshes)];
    console.log(
      `${title.padEnd(28)} ${a.toFixed(3).padStart(11)} ${b.toFixed(1).padStart(10)} ${(b / a).toFixed(0).padStart(7)}   ${differences}`,
    );
  }
  const a = median(rows.flatMap((r) => r.readings));
  const b = median(rows.flatMap((r) => r.meshes));
  console.log(
    `${'all'.padEnd(28)} ${a.toFixed(3).padStart(11)} ${b.toFixed(1).padStart(10)} ${(b / a).toFixed(0).padStart(7)}   target: ≤ 0.500 ms, ≥ 50 times`,
  );
}

const listed = [...SITES_DEMO, ...MEAN_PLANS].map(({ id, plan }) => [id, plan] as const);
const demo = (id: string) => id.startsWith('demo-');
console.log(`${machine()} ${POSES} poses a plan by readings, ${MESH_POSES} by meshes; medians.`);
report(
  'Demo plans',
  listed.filter(([id, plan]) => demo(id) && !perforated(plan)),
);
report(
  'Demo plans, thread outside bone or in a void',
  listed.filter(([id, plan]) => demo(id) && perforated(plan)),
);
report(
  'Mean sites along the crown’s axis, perforated',
  listed.filter(([id, plan]) => !demo(id) && perforated(plan)),
);
report(
  'Mean sites along the crown’s axis, sound',
  listed.filter(([id, plan]) => !demo(id) && !perforated(plan)),
);
