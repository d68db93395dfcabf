import { tiltOf } from '../geometry/pose.ts';
import { deg } from '../geometry/vec.ts';
import { seatCheck } from './depthChain.ts';
import type { DrillingPlan } from './drillingPlan.ts';
import type { DrillSite } from './drillSite.ts';
import type { Kit } from './kit.ts';
import { circlesOf } from './outlook.ts';
import { isDrill } from './passBody.ts';
import { type PassView, takersOf } from './passView.ts';
import { plannedBody } from './plannedHole.ts';

/** What a rehearsal can show to have gone wrong, the gravest first. */
export const PASS_FAULTS = [
  'past-floor',
  'in-canal',
  'near-floor',
  'drilled-short',
  'drilled-deep',
  'neck-short',
  'neck-deep',
  'followed-ridge',
  'drifted-facially',
  'wandered-palatally',
  'oval',
  'skipped-drill',
  'too-fast',
  'dry',
] as const;
export type PassFaultCode = (typeof PASS_FAULTS)[number];

export interface PassFault {
  readonly code: PassFaultCode;
  /** Place of the pass in the rehearsal. */
  readonly pass: number;
  /** How much, positive: mm, degrees, rpm, or a diameter; 0 for a code that has no number. */
  readonly value: number;
  /** What it is held against, in the same unit: a limit, a threshold, the speed, or the drill that should have come. */
  readonly limit: number;
  readonly unit: 'mm' | 'deg' | 'rpm' | 'none';
  /** The later pass that takes an oval up again; null: none, or no oval. */
  readonly mendedBy: number | null;
}

/** Thresholds of this project, mm and degrees: no study gives any. */
export const FAULT_LIMITS = {
  /** Two passes of one diameter stand further apart. */
  oval: 0.1,
  /** Deeper than planned. */
  deep: 1,
  neckShort: 0.1,
  neckDeep: 0.5,
  /** The pass leans as the ridge does, and not as planned. */
  asRidge: 3,
  offPlan: 5,
  /** Sideways from mouth to bottom, and at the mouth. */
  drift: 0.5,
  wander: 0.5,
} as const;

/** Bone held so hot for so long is harmed: Eriksson and Albrektsson 1983 (second-hand). No temperature is computed here: a caution only. */
export const HEAT = { celsius: 47, minutes: 1, source: 'eriksson-1983' } as const;

export interface FaultContext {
  readonly site: DrillSite;
  readonly kit: Kit;
  readonly plan: DrillingPlan;
  readonly views: readonly PassView[];
}

type Found = Omit<PassFault, 'mendedBy'>;

/** All faults of the passes made so far, pass by pass, the gravest of a pass first. */
export function passFaults(context: FaultContext): PassFault[] {
  const { views } = context;
  const taken = takersOf(views);
  const single: Found[] = views.flatMap((view, i) => [
    ...solids(view),
    ...depths(context, view),
    ...direction(context, view),
    ...order(context, i),
    ...heat(view),
  ]);
  const found: PassFault[] = [
    ...single.map((fault) => ({ ...fault, mendedBy: null })),
    ...[...ends(context), ...necks(context)].map((fault) => ({ ...fault, mendedBy: null })),
    ...ovals(views, taken),
  ];
  const rank = ({ code }: PassFault): number => PASS_FAULTS.indexOf(code);
  return found.sort((a, b) => a.pass - b.pass || rank(a) - rank(b));
}

/** Floor and canal. */
function solids({ index, readings }: PassView): Found[] {
  const out: Found[] = [];
  for (const { id, value, limit, status } of readings) {
    if (value === null) continue;
    if (id === 'canal' && value < 0)
      out.push({ code: 'in-canal', pass: index, value: -value, limit: 0, unit: 'mm' });
    if (id !== 'apex-to-floor') continue;
    if (value < 0) out.push({ code: 'past-floor', pass: index, value: -value, limit: 0, unit: 'mm' });
    else if (status === 'near' || status === 'beyond')
      out.push({ code: 'near-floor', pass: index, value, limit: limit?.bands.low?.near ?? 0, unit: 'mm' });
  }
  return out;
}

/** A drill that went deeper than planned; where it stops short only the last one tells. */
function depths({ plan }: FaultContext, { index, pass, tool }: PassView): Found[] {
  if (!isDrill(tool) || !plan.chain) return [];
  const over = pass.depth - plan.chain.fullDepth;
  return over > FAULT_LIMITS.deep
    ? [{ code: 'drilled-deep', pass: index, value: over, limit: FAULT_LIMITS.deep, unit: 'mm' }]
    : [];
}

/** Once the last drill has been used: whether the apex has room. */
function ends({ plan, views }: FaultContext): Found[] {
  const { last, chain } = plan;
  if (!last || !chain) return [];
  const wide = views.filter(({ pass }) => pass.tool.kind === 'drill' && pass.tool.index >= last.index);
  if (wide.length === 0) return [];
  const deepest = wide.reduce((p, q) => (q.pass.depth > p.pass.depth ? q : p));
  const { value } = seatCheck(deepest.pass.depth, chain.apex);
  if (value >= -1e-9) return [];
  return [{ code: 'drilled-short', pass: deepest.index, value: -value, limit: 0, unit: 'mm' }];
}

function necks({ plan, views }: FaultContext): Found[] {
  const step = plan.steps.find(({ reason }) => reason === 'neck');
  const cut = views.filter(({ pass }) => pass.tool.kind === 'neck');
  if (!step || cut.length === 0) return [];
  const deepest = cut.reduce((p, q) => (q.pass.depth > p.pass.depth ? q : p));
  const over = deepest.pass.depth - step.depth;
  const fault = (code: 'neck-short' | 'neck-deep', limit: number): Found[] => [
    { code, pass: deepest.index, value: Math.abs(over), limit, unit: 'mm' },
  ];
  if (over < -FAULT_LIMITS.neckShort) return fault('neck-short', FAULT_LIMITS.neckShort);
  return over > FAULT_LIMITS.neckDeep ? fault('neck-deep', FAULT_LIMITS.neckDeep) : [];
}

/** How a drill's axis went wrong, seen from the side (faciopalatal): after the ridge, facially with depth, palatally at the mouth. */
function direction({ site }: FaultContext, { index, body, tool }: PassView): Found[] {
  if (!isDrill(tool)) return [];
  const { ridge } = site.at.anatomy;
  const lean = tiltOf(body.axisAt(1).a).faciopalatal;
  const offRidge = Math.abs(lean - deg(Math.atan2(ridge.sin, ridge.cos)));
  const offPlan = Math.abs(lean - site.at.pose.tilt.faciopalatal);
  const out: Found[] = [];
  if (offRidge < FAULT_LIMITS.asRidge && offPlan > FAULT_LIMITS.offPlan)
    out.push({
      code: 'followed-ridge',
      pass: index,
      value: offPlan,
      limit: FAULT_LIMITS.offPlan,
      unit: 'deg',
    });
  const { crest, apex } = circlesOf(body, plannedBody(site, tool, body.depth));
  const drift = apex.facial - crest.facial;
  if (drift >= FAULT_LIMITS.drift)
    out.push({ code: 'drifted-facially', pass: index, value: drift, limit: FAULT_LIMITS.drift, unit: 'mm' });
  if (-crest.facial >= FAULT_LIMITS.wander)
    out.push({
      code: 'wandered-palatally',
      pass: index,
      value: -crest.facial,
      limit: FAULT_LIMITS.wander,
      unit: 'mm',
    });
  return out;
}

/** A drill more than one step wider than any before it; `limit` is the diameter that should have come. */
function order({ kit, views }: FaultContext, i: number): Found[] {
  const { pass, index, tool } = views[i];
  if (!isDrill(tool)) return [];
  const before = views.slice(0, i).flatMap((v) => (v.pass.tool.kind === 'drill' ? [v.pass.tool.index] : []));
  const next = Math.max(-1, ...before) + 1;
  if (pass.tool.index <= next) return [];
  return [
    {
      code: 'skipped-drill',
      pass: index,
      value: tool.diameter,
      limit: kit.drills[next].diameter,
      unit: 'mm',
    },
  ];
}

function heat({ index, pass, tool }: PassView): Found[] {
  const out: Found[] = [];
  if (pass.speed > tool.speed.high)
    out.push({ code: 'too-fast', pass: index, value: pass.speed, limit: tool.speed.high, unit: 'rpm' });
  if (!pass.irrigated && pass.speed > 0)
    out.push({ code: 'dry', pass: index, value: 0, limit: 0, unit: 'none' });
  return out;
}

/** How far a drill moved sideways while it ran, mm: at its mouth or its bottom. */
const pressed = ({ pass }: PassView): number =>
  pass.press ? Math.max(Math.abs(pass.press.mouth), Math.abs(pass.press.bottom)) : 0;

/** How far two passes of one diameter stand apart at most over the depth they share, mm. */
function apart(p: PassView, q: PassView): number {
  const [deep, shallow] = p.body.depth >= q.body.depth ? [p, q] : [q, p];
  const { crest, apex } = circlesOf(deep.body, shallow.body);
  return Math.max(Math.hypot(crest.facial, crest.mesial), Math.hypot(apex.facial, apex.mesial));
}

/** Holes made oval, by a press or by a second pass beside the first; the later pass is named. */
function ovals(views: readonly PassView[], taken: readonly (number | null)[]): PassFault[] {
  return views.flatMap((view, i): PassFault[] => {
    const { tool } = view;
    if (!isDrill(tool)) return [];
    const same = views
      .slice(0, i)
      .map((other, j) => ({ other, j }))
      .filter(({ other }) => isDrill(other.tool) && other.tool.diameter === tool.diameter);
    const beside = same.map(({ other, j }) => ({ by: apart(other, view), j }));
    const [worst] = beside.sort((a, b) => b.by - a.by);
    const value = Math.max(pressed(view), worst?.by ?? 0);
    if (value < FAULT_LIMITS.oval) return [];
    const both = [taken[i], ...(worst && worst.by >= FAULT_LIMITS.oval ? [taken[worst.j]] : [])];
    const mended = both.every((k) => k !== null) ? Math.max(...both.map(Number)) : null;
    return [
      {
        code: 'oval',
        pass: view.index,
        value,
        limit: FAULT_LIMITS.oval,
        unit: 'mm',
        mendedBy: mended === null ? null : views[mended].index,
      },
    ];
  });
}
