/**
 * `npm run bench -- rehearsal`: what a pass of a rehearsal costs on the page (the edit, the tool's place, its readings, the hole in the cut, the drilled bone taken into
 * the stage) and what it costs in the worker (the solid, the report). Prints; never judges. Targets on a quiet reference machine: a pass at most 4 ms of script, the
 * bone taken in at most 16 ms.
 */

import { siteInJaw } from '../../src/core/anatomy/jawFrame.ts';
import { sectionOutline, sectionSolids } from '../../src/core/anatomy/section.ts';
import { carved } from '../../src/core/drilling/carve.ts';
import { bodiesInPlane } from '../../src/core/drilling/outline.ts';
import { creased } from '../../src/core/geometry/crease.ts';
import { drillingOf } from '../../src/core/plan/drilling.ts';
import { drillReport } from '../../src/core/plan/drillReport.ts';
import { evaluate, solidsOf } from '../../src/core/plan/evaluate.ts';
import { handBody, kitOf, passBodies, passesShown, planInHand } from '../../src/core/plan/inHand.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { drillTo, takeTool } from '../../src/core/plan/rehearse.ts';
import { sectionPlane } from '../../src/scene/cut.ts';
import { OwnedGeometry } from '../../src/scene/geometry.ts';
import { drilled, meshOf, solidOf } from '../../src/solids/drill.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { solidModeller } from '../support/solid.ts';
import { machine, median, times } from './times.ts';

const RUNS = 40;
const FEW = 8;

/** The plan's own order of drilling, all but its seat. */
function rehearsed(plan: Plan): Plan {
  const steps = drillingOf(plan)?.plan.steps ?? [];
  return steps.reduce(
    (now, { tool, depth }) => (tool && depth > 0 ? drillTo(takeTool(now, tool), depth) : now),
    plan,
  );
}

const kernel = await solidModeller();

function bench({ plan }: { plan: Plan }): number[][] {
  const anatomy = solidsOf(plan.site);
  const done = rehearsed(plan);
  const seen = planInHand(done);
  const view = evaluate(seen);
  const plane = sectionPlane(view);
  const outline = sectionOutline(anatomy, plane);
  const bone = solidOf(kernel, sectionSolids(anatomy).bone.mesh);
  const made = () => {
    const left = drilled(kernel, bone, anatomy.ridge, kitOf(done), passesShown(done));
    const mesh = creased(meshOf(left), 35);
    left.delete();
    return mesh;
  };
  const meshes = Array.from({ length: FEW }, made);
  const into = new OwnedGeometry();
  return [
    times(RUNS, (i) => planInHand(drillTo(done, 8 + 0.01 * i))),
    times(RUNS, (i) => evaluate(planInHand(drillTo(done, 8 + 0.01 * i)))),
    times(RUNS, (i) => {
      const now = drillTo(done, 8 + 0.01 * i);
      const held = handBody(now);
      carved(outline.bone, bodiesInPlane([...passBodies(now), ...(held ? [held] : [])], plane));
    }),
    times(FEW, (i) => into.lay(meshes[i], siteInJaw(anatomy))),
    times(FEW, made),
    times(3, (i) => drillReport({ ...done, crestMargin: done.crestMargin + 1e-9 * i })),
  ];
}

console.log(machine());
console.log(
  'ms at the median: edit | and readings | hole in the cut | bone taken in || worker: solid | report',
);
for (const one of SITES_DEMO) {
  const columns = bench(one).map(median);
  const page = columns[1] + columns[2];
  const ratio = (columns[4] + columns[5]) / page;
  console.log(
    `${one.id}: ${columns.map((ms) => ms.toFixed(1)).join(' | ')}; worker over page ${ratio.toFixed(0)}×`,
  );
}
