import type { Anatomy } from '../anatomy/anatomy.ts';
import type { PlacedTooth } from '../anatomy/teeth.ts';
import { boneEntry } from '../drilling/boneEntry.ts';
import type { DrillPose } from '../drilling/rehearsal.ts';
import { axisOf } from '../geometry/pose.ts';
import { along, norm, reject, sub, type Vec3 } from '../geometry/vec.ts';
import type { ImplantShape } from '../implant/shape.ts';
import { totalLength } from '../implant/shape.ts';
import { gapContact } from '../measure/lines.ts';
import { Placement } from '../measure/placement.ts';
import { SideRays } from '../measure/wallProfile.ts';
import { drillingOf } from '../plan/drilling.ts';
import { solidsOf } from '../plan/evaluate.ts';
import { drillPoseOf } from '../plan/inHand.ts';
import type { Plan } from '../plan/plan.ts';
import { type Deviation, deviation } from '../spread/deviation.ts';
import { type Fit, leastSquares, type Problem } from '../spread/leastSquares.ts';
import type { CalliperPlace, PinPoint } from './benchPlaces.ts';
import { poseInHole } from './inHole.ts';
import { MEASURE_IDS, type MeasureId, measuresOf } from './measures.ts';

/** A reading of it, mm. */
export type Calliper = CalliperPlace & { readonly value: number };

export interface BenchInput {
  /** Of the last drill, mm. */
  readonly diameter: number;
  readonly callipers: readonly Calliper[];
  /** Depth of the full diameter below the bone entry, mm; null: not measured, taken as planned. */
  readonly depth: number | null;
  /** SD of one calliper reading, mm. */
  readonly sd: number;
}

/** Why no pose is found: the readings do not determine it; an open socket has no edge to count depths from; or no ridge lies where they say. */
export type BenchFault = 'too-few' | 'fresh-socket' | 'no-fit';

/** What the readings say nothing of is taken as planned. */
export type Held = 'mesiodistal-place' | 'mesiodistal-angle';

export interface BenchCheck {
  readonly line: DrillPose;
  /** One SD: of the entry in the plane `c = 0`, mm, and of the projected angles, degrees; 0 where held. */
  readonly sd: {
    readonly m: number;
    readonly f: number;
    readonly mesiodistal: number;
    readonly faciopalatal: number;
  };
  readonly held: readonly Held[];
  /** Measured less fitted, mm, in the order of the readings. */
  readonly residuals: readonly number[];
  /** The residuals are larger than their SD explains once in a hundred: a reading was mistyped, or the ridge is another. */
  readonly doubtful: boolean;
  /** Of the implant in that hole from the planned one. */
  readonly deviation: Deviation;
  /** One SD of each measure, mm and degrees. */
  readonly spread: Readonly<Record<MeasureId, number>>;
}

/** Above these the readings are taken to say nothing, mm and degrees (ours). */
const SAYS_NOTHING = { place: 1, angle: 10 } as const;

/** No hole is looked for so far off the plan, mm and degrees (ours). */
const STRAYS = { place: 8, angle: 40 } as const;

/** Parameters: entry `m`, `f` (mm), tilt mesiodistal, faciopalatal (degrees). */
type Params = readonly [m: number, f: number, md: number, fp: number];
const STEPS = [5e-3, 5e-3, 5e-2, 5e-2] as const;

const lineOf = ([m, f, mesiodistal, faciopalatal]: Params): DrillPose => ({
  mouth: { m, f },
  tilt: { mesiodistal, faciopalatal },
});

/** A cylinder long enough for every level. */
const cylinder = (shape: ImplantShape, diameter: number): ImplantShape => ({
  ...shape,
  implantedLength: 20,
  transmucosalLength: 0,
  apicalDiameter: diameter,
  implantedDiameter: diameter,
  platformDiameter: diameter,
  taperLength: 0,
  flutes: { count: 0, length: 0, depth: 0 },
  scallop: 0,
  index: 0,
  abutment: null,
});

/** What each calliper would read at a line; null where one meets nothing. */
export function callipersAt(
  plan: Plan,
  diameter: number,
  callipers: readonly CalliperPlace[],
  line: DrillPose,
): number[] | null {
  const anatomy = solidsOf(plan.site);
  const entry = boneEntry(anatomy.ridge, line);
  if (!entry) return null;
  const [m, f, c] = entry.point;
  const shape = cylinder(plan.implant, diameter);
  const at = new Placement(anatomy, shape, { platform: { m, f, c }, tilt: line.tilt, roll: 0 }, 0);
  const rays = { facial: new SideRays(at, 'facial'), palatal: new SideRays(at, 'palatal') };
  const points = pinPoints(anatomy);
  const a = axisOf(line.tilt);
  const found = callipers.map((calliper) =>
    calliper.kind === 'pin'
      ? norm(reject(sub(points[calliper.point], entry.point), a)) - diameter / 2
      : thickness(rays[calliper.kind], entry.level + calliper.depth),
  );
  return found.every((value) => value !== null) ? found : null;
}

/** From the hole's side to the ridge's surface: a calliper reaches over the canal, should it lie between. */
function thickness(rays: SideRays, level: number): number | null {
  const { wall, gap } = rays.at1(level, 0);
  return wall === null ? null : wall + gap;
}

/** The most coronal point of a neighbour's enamel line (CEJ) on the side that faces the gap, site frame. */
function neckPoint(tooth: PlacedTooth, mesialNeighbour: boolean): Vec3 {
  const { origin, ex, a, numbers } = tooth;
  const distal = mesialNeighbour === (tooth.turn === 1);
  const out = ((distal ? -1 : 1) * numbers.cervixWidth) / 2;
  return along(along(origin, ex, out), a, distal ? numbers.cejCurveDistal : numbers.cejCurveMesial);
}

const pinPoints = ({ teeth }: Anatomy): Record<PinPoint, Vec3> => ({
  'mesial-contact': gapContact(teeth.mesial, true),
  'distal-contact': gapContact(teeth.distal, false),
  'mesial-neck': neckPoint(teeth.mesial, true),
  'distal-neck': neckPoint(teeth.distal, false),
});

/** The fit with some parameters free, the others as planned. */
function fitted(plan: Plan, input: BenchInput, planned: Params, free: readonly number[]): Fit | null {
  const whole = (x: readonly number[]): Params =>
    planned.map((v, i) => (free.includes(i) ? x[free.indexOf(i)] : v)) as unknown as Params;
  const problem: Problem = {
    predict: (x) => {
      const params = whole(x);
      const strays = params.some((v, i) => Math.abs(v - planned[i]) > (i < 2 ? STRAYS.place : STRAYS.angle));
      return strays ? null : callipersAt(plan, input.diameter, input.callipers, lineOf(params));
    },
    measured: input.callipers.map(({ value }) => value),
    sd: input.sd,
    start: free.map((i) => planned[i]),
    steps: free.map((i) => STEPS[i]),
  };
  return leastSquares(problem);
}

const FREE: readonly { readonly free: readonly number[]; readonly held: readonly Held[] }[] = [
  { free: [0, 1, 2, 3], held: [] },
  { free: [0, 1, 3], held: ['mesiodistal-angle'] },
  { free: [1, 3], held: ['mesiodistal-place', 'mesiodistal-angle'] },
];

const says = (fit: Fit, free: readonly number[]): boolean =>
  free.every((i, k) => {
    const sd = Math.sqrt(fit.covariance[k][k]);
    return i < 2 ? sd <= SAYS_NOTHING.place : sd <= SAYS_NOTHING.angle;
  });

/** The pose of a hole drilled in a printed practice ridge, from calliper readings, by least squares (rule L12). */
export function benchCheck(plan: Plan, input: BenchInput): BenchCheck | BenchFault {
  const line = drillPoseOf(plan.pose);
  if (plan.site.state.kind === 'socket') return 'fresh-socket';
  const planned: Params = [line.mouth.m, line.mouth.f, line.tilt.mesiodistal, line.tilt.faciopalatal];
  for (const { free, held } of FREE) {
    if (input.callipers.length < free.length) continue;
    const fit = fitted(plan, input, planned, free);
    if (!fit || !says(fit, free)) continue;
    return fit.converged ? checked(plan, input, planned, { fit, free, held }) : 'no-fit';
  }
  return callipersAt(plan, input.diameter, input.callipers, line) ? 'too-few' : 'no-fit';
}

/** The 99 % quantile of chi-squared by Wilson and Hilferty (1931). */
const chiSquared99 = (dof: number): number =>
  dof * (1 - 2 / (9 * dof) + 2.326348 * Math.sqrt(2 / (9 * dof))) ** 3;

interface Found {
  readonly fit: Fit;
  readonly free: readonly number[];
  readonly held: readonly Held[];
}

function checked(plan: Plan, input: BenchInput, planned: Params, { fit, free, held }: Found): BenchCheck {
  const at = (x: readonly number[]): Params =>
    planned.map((v, i) => (free.includes(i) ? x[free.indexOf(i)] : v)) as unknown as Params;
  const depth = input.depth ?? drillingOf(plan)?.chain.fullDepth ?? totalLength(plan.implant);
  const apart = (params: Params, deeper = 0): Deviation =>
    deviation(
      plan.pose,
      poseInHole(plan, lineOf(params), depth + deeper, plan.pose.roll),
      totalLength(plan.implant),
      0,
    );
  const line = lineOf(at(fit.x));
  const sdOf = (i: number): number =>
    free.includes(i) ? Math.sqrt(fit.covariance[free.indexOf(i)][free.indexOf(i)]) : 0;
  const dof = fit.residuals.length - free.length;
  const chi = fit.residuals.reduce((sum, r) => sum + (r / input.sd) ** 2, 0);
  return {
    line,
    sd: { m: sdOf(0), f: sdOf(1), mesiodistal: sdOf(2), faciopalatal: sdOf(3) },
    held,
    residuals: fit.residuals,
    doubtful: dof > 0 && chi > chiSquared99(dof),
    deviation: apart(at(fit.x)),
    spread: spreadOf(fit, free, input, (x, deeper) => measuresOf(apart(at(x), deeper))),
  };
}

/** One SD of every measure: the fit's covariance, and the depth's own SD, carried on by differences. */
function spreadOf(
  fit: Fit,
  free: readonly number[],
  { sd, depth }: BenchInput,
  measures: (x: readonly number[], deeper: number) => Readonly<Record<MeasureId, number | null>>,
): Readonly<Record<MeasureId, number>> {
  const slopes = free.map((param, k) => {
    const at = (way: number) =>
      measures(
        fit.x.map((v, i) => (i === k ? v + way * STEPS[param] : v)),
        0,
      );
    const [high, low] = [at(1), at(-1)];
    return (id: MeasureId) => ((high[id] ?? 0) - (low[id] ?? 0)) / (2 * STEPS[param]);
  });
  const [deep, high] = [measures(fit.x, 1e-3), measures(fit.x, -1e-3)];
  const ofDepth = (id: MeasureId) => ((deep[id] ?? 0) - (high[id] ?? 0)) / 2e-3;
  const own = depth === null ? 0 : sd;
  const parts = MEASURE_IDS.map((id) => {
    const g = slopes.map((slope) => slope(id));
    const c = g.map((_, i) => inner(fit.covariance[i], g));
    const variance = g.reduce((sum, v, i) => sum + v * c[i], 0) + (own * ofDepth(id)) ** 2;
    return [id, Math.sqrt(Math.max(0, variance))] as const;
  });
  return Object.fromEntries(parts) as Record<MeasureId, number>;
}

const inner = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, v, i) => sum + v * b[i], 0);
