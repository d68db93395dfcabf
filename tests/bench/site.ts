/**
 * `npm run bench -- ridge`: what one edit of a site's numbers costs on the main thread, part by part and in all, and the same with every mesh and geometry
 * made anew. Prints; never judges. Target on a quiet reference machine: the ridge at the stage's resolution in at most 8 ms at the median.
 */
import { type Anatomy, anatomyOf } from '../../src/core/anatomy/anatomy.ts';
import { toothMesh } from '../../src/core/anatomy/crown.ts';
import { gumMesh } from '../../src/core/anatomy/gumMesh.ts';
import { ridgeMesh } from '../../src/core/anatomy/ridgeMesh.ts';
import { shownRange, shownTeeth } from '../../src/core/anatomy/section.ts';
import type { Site } from '../../src/core/anatomy/site.ts';
import { plannedTooth } from '../../src/core/anatomy/toothMeshes.ts';
import { siteFaults } from '../../src/core/plan/check.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { SiteGeometries } from '../../src/scene/siteSolids.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { MEAN_PLANS } from '../support/meanPlans.ts';
import { machine, median, times } from './times.ts';

const EDITS = 60;
const ANEW = 12;

/** Edits as a held key makes them: the ridge's widths and its lean, then a neighbour's crown. */
function edited(site: Site, i: number): Site {
  const more = 0.01 * (i % 50);
  const widths = site.ridge.widths.map((w) => ({ ...w, facial: w.facial + more }));
  return { ...site, ridge: { ...site.ridge, widths, inclination: site.ridge.inclination + more } };
}

const withTooth = (site: Site, i: number): Site => ({
  ...site,
  mesial: { ...site.mesial, crownWidth: site.mesial.crownWidth + 0.01 * (i % 50) },
});

const stretch = (anatomy: Anatomy) => ({ anatomy, range: shownRange(anatomy) });

interface Row {
  readonly title: string;
  readonly columns: readonly (readonly number[])[];
}

function bench(title: string, { site }: Plan): Row {
  const sites = Array.from({ length: EDITS }, (_, i) => edited(site, i));
  const grounds = sites.map((s) => stretch(anatomyOf(s)));
  const fine = { columns: 80, rings: 48, rootRings: 28 };
  const held = new SiteGeometries(false);
  held.lay(anatomyOf(site));
  const anew = Array.from({ length: ANEW }, (_, i) => ({ ...edited(site, i), gap: site.gap + 1e-6 * i }));
  return {
    title,
    columns: [
      times(EDITS, (i) => ridgeMesh(grounds[i].anatomy, grounds[i].range)),
      times(EDITS, (i) => gumMesh(grounds[i].anatomy, grounds[i].range)),
      times(ANEW, (i) => toothMesh(grounds[i].anatomy.teeth.mesial.cls, withTooth(site, i).mesial, fine)),
      times(EDITS, (i) => siteFaults(sites[i])),
      times(EDITS, (i) => held.lay(anatomyOf(sites[i]))),
      times(ANEW, (i) => held.lay(anatomyOf(withTooth(site, i)))),
      times(ANEW, (i) => {
        const { anatomy } = stretch(anatomyOf(anew[i]));
        for (const t of [...shownTeeth(anatomy), plannedTooth(anatomy)]) toothMesh(t.cls, t.numbers, fine);
        new SiteGeometries(false).lay(anatomy);
      }),
    ],
  };
}

const HEADS = ['ridge', 'gum', 'a tooth', 'check', 'edit', 'tooth edit', 'anew', 'anew/edit'];

const line = (title: string, cells: readonly string[]): string =>
  `${title.padEnd(26)}${cells.map((cell) => cell.padStart(11)).join('')}`;

function report(name: string, plans: readonly (readonly [string, Plan])[]): void {
  console.log(`\n${name}, ms\n${line('site', HEADS)}`);
  const rows = plans.map(([title, plan]) => bench(title, plan));
  const all = { title: 'all', columns: HEADS.slice(0, -1).map((_, k) => rows.flatMap((r) => r.columns[k])) };
  for (const { title, columns } of [...rows, all]) {
    const m = columns.map((list) => median(list));
    console.log(line(title, [...m.map((v) => v.toFixed(2)), (m[6] / m[4]).toFixed(1)]));
  }
}

console.log(`${machine()} Medians of ${EDITS} edits a site, ${ANEW} of a tooth and anew.`);
const listed = [...SITES_DEMO, ...MEAN_PLANS].map(({ id, plan }) => [id, plan] as const);
const healed = (plan: Plan) => plan.site.state.kind === 'healed';
for (const [, plan] of listed.slice(0, 4)) bench('', plan);
report(
  'Healed',
  listed.filter(([, plan]) => healed(plan)),
);
report(
  'Fresh socket',
  listed.filter(([, plan]) => !healed(plan)),
);
