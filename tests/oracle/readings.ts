/** Every reading by the oracle, in the reading's unit; null: not applicable. */
import type { ReadingId } from '../../src/core/measure/reading.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { axisOfTilt, Ground, Placed, type Side } from './model.ts';
import { cos, direction, inner, intervalsWhere, minus, plus, RAD, size, tan, type V } from './numbers.ts';
import { canalDistance, exposure, Root, rootAtShoulder, rootDistance } from './obstacles.ts';
import { concavity, levelRange, thinnest, trueWall, type WallSample, wallAt } from './walls.ts';

export type Answers = Map<ReadingId, number | null>;

const grounds = new WeakMap<Plan['site'], Ground>();

export function groundOf(plan: Plan): Ground {
  const known = grounds.get(plan.site);
  if (known) return known;
  const ground = new Ground(plan.site);
  grounds.set(plan.site, ground);
  return ground;
}

export const placedOf = (plan: Plan): Placed => new Placed(plan.implant, plan.pose);

/** The wall of a side at a level with the plan's own crest margin. */
export function oracleProfile(plan: Plan, side: Side, level: number): WallSample {
  return wallAt(groundOf(plan), placedOf(plan), side, level, plan.crestMargin);
}

export function oracleReadings(plan: Plan): Answers {
  const answers: Answers = new Map();
  const g = groundOf(plan);
  const p = placedOf(plan);
  walls(plan, g, p, answers);
  heights(plan, g, p, answers);
  incisalLine(g, p, answers);
  angles(plan, g, answers);
  obstacles(plan, g, p, answers);
  exposed(plan, g, p, answers);
  neck(plan, answers);
  return answers;
}

function walls(plan: Plan, g: Ground, p: Placed, answers: Answers): void {
  const margin = plan.crestMargin;
  const at = (side: Side, t: number): number | null => {
    const [from, to] = levelRange(p, side);
    return t < from || t > to ? null : wallAt(g, p, side, t, margin).wall;
  };
  for (const side of ['facial', 'palatal'] as const) {
    answers.set(`${side}-wall-1mm`, at(side, 1));
    answers.set(`${side}-wall-3mm`, at(side, 3));
    answers.set(`${side}-wall-5mm`, at(side, 5));
    answers.set(`${side}-wall-apex`, at(side, p.apex));
    answers.set(`${side}-wall-thinnest`, thinnest(g, p, side, margin)?.value ?? null);
    const found = trueWall(g, p, side, margin);
    answers.set(`${side}-wall-true`, found.kind === 'value' ? found.value : null);
  }
  const half = (where: '1mm' | 'apex'): number | null => {
    const facial = answers.get(`facial-wall-${where}`) ?? null;
    const palatal = answers.get(`palatal-wall-${where}`) ?? null;
    return facial === null || palatal === null ? null : (facial - palatal) / 2;
  };
  answers.set('centring-crest', half('1mm'));
  answers.set('centring-apex', half('apex'));
}

function heights(plan: Plan, g: Ground, p: Placed, answers: Answers): void {
  const directions = { facial: 0, mesial: Math.PI / 2, palatal: Math.PI, distal: -Math.PI / 2 } as const;
  for (const [name, azimuth] of Object.entries(directions) as [keyof typeof directions, number][]) {
    const rim = p.rim(azimuth);
    const bone = intervalsWhere(Math.min(rim, p.platform) - 12, p.apex, 0.03, (t) =>
      g.inBone(p.surface(t, azimuth)),
    );
    answers.set(`shoulder-to-crest-${name}`, bone[0] ? bone[0][0] - rim : null);
  }
  const rimPoint = p.at(p.rim(0), p.shape.platformDiameter / 2, 0);
  const { reference, gum } = plan.site;
  answers.set('shoulder-to-cej', rimPoint[2] - reference.cej);
  answers.set('shoulder-to-gum-margin', reference.margin - rimPoint[2]);
  answers.set('shoulder-to-gum-present', rimPoint[2] - gum.crest);
}

/** Where the line through `o` along `d` meets the plane through `at` with normal `n`. */
function meet(o: V, d: V, at: V, n: V): V {
  return plus(o, d, inner(minus(at, o), n) / inner(d, n));
}

function aimPoint(g: Ground, p: Placed): { x: V; q: V; place: number } {
  const a = p.axis.a;
  const from = g.mesial.end;
  const line = minus(g.distal.end, from);
  // Normals of the planes that contain `f = (0, 1, 0)` and the axis, or the line.
  const ofAxis: V = [a[2], 0, -a[0]];
  const ofLine: V = [line[2], 0, -line[0]];
  const x = meet(from, line, p.entry, ofAxis);
  return { x, q: meet(p.entry, a, from, ofLine), place: inner(minus(x, from), line) / inner(line, line) };
}

function incisalLine(g: Ground, p: Placed, answers: Answers): void {
  const { x, q, place } = aimPoint(g, p);
  const { a } = p.axis;
  answers.set('incisal-line-offset', q[1] - x[1]);
  answers.set('incisal-line-place', place);
  const seen = minus(x, p.at(p.platform, 0, 0));
  // Angles in the plane of the axis and `f`, from the axis, facially.
  answers.set('incisal-line-angle', -Math.atan2(inner(seen, p.axis.ef), inner(seen, a)) / RAD);
  const mesial = g.mesial.contact[0] - q[0];
  const distal = q[0] - g.distal.contact[0];
  answers.set('centring-mesiodistal-incisal', (mesial - distal) / 2);
}

function angles(plan: Plan, g: Ground, answers: Answers): void {
  const { tilt } = plan.pose;
  const { inclination } = plan.site.ridge;
  const front = (v: V): number => Math.atan2(v[0], v[2]) / RAD;
  const bisector = (front(g.mesial.rootAxis.a) + front(g.distal.rootAxis.a)) / 2;
  answers.set('axis-to-roots-mesiodistal', tilt.mesiodistal - bisector);
  const a = axisOfTilt(tilt).a;
  const apart = (other: V): number =>
    (2 * Math.asin(Math.min(1, size(minus(a, direction(other))) / 2))) / RAD;
  const crown = plan.site.crown.tilt;
  answers.set('axis-to-ridge-faciopalatal', tilt.faciopalatal - inclination);
  answers.set('axis-to-ridge-mesiodistal', tilt.mesiodistal);
  answers.set('axis-to-ridge-total', apart([0, tan(inclination), 1]));
  answers.set('axis-to-crown-faciopalatal', tilt.faciopalatal - crown.faciopalatal);
  answers.set('axis-to-crown-mesiodistal', tilt.mesiodistal - crown.mesiodistal);
  answers.set('axis-to-crown-total', apart([tan(crown.mesiodistal), tan(crown.faciopalatal), 1]));
}

function obstacles(plan: Plan, g: Ground, p: Placed, answers: Answers): void {
  const roots = { mesial: new Root(g.mesial), distal: new Root(g.distal) };
  for (const name of ['mesial', 'distal'] as const) {
    answers.set(`root-${name}`, rootDistance(p, roots[name]).distance);
    answers.set(`root-${name}-shoulder`, rootAtShoulder(p, roots[name]));
  }
  const point = p.at(1, 0, 0);
  answers.set(
    'centring-mesiodistal-crest',
    (roots.mesial.toSurface(point) - roots.distal.toSurface(point)) / 2,
  );
  const lean = Math.sqrt(1 - p.axis.a[2] ** 2);
  const lowest = Math.min(...p.corners.map(([t, r]) => p.at(t, 0, 0)[2] - r * lean));
  answers.set('apex-to-floor', lowest - g.floor);
  answers.set('apex-to-concavity', concavity(g, p, plan.crestMargin));
  const canal = g.canal ? canalDistance(p, g.canal) : null;
  answers.set('canal', canal?.distance ?? null);
  answers.set('canal-level', canal?.level ?? null);
}

function exposed(plan: Plan, g: Ground, p: Placed, answers: Answers): void {
  const e = exposure(g, p);
  answers.set('exposure-dehiscence', e.dehiscence);
  answers.set('exposure-fenestration', e.fenestration);
  answers.set('exposure-socket', g.socket ? e.socket : null);
  answers.set('exposed-threads', e.longest / plan.implant.thread.pitch);
  answers.set('bone-contact', (100 * (e.whole - e.socket - e.dehiscence - e.fenestration)) / e.whole);
  answers.set('socket-gap-facial', socketGap(g, p));
}

/** From the envelope along `e_f` to the socket's last point, at level `max(0, t_rim)` (M12). */
function socketGap(g: Ground, p: Placed): number | null {
  if (!g.socket) return null;
  const t = Math.max(0, p.rim(0));
  const inside = intervalsWhere(-25, 25, 0.02, (x) => g.inSocket(p.at(t, x, 0)));
  const last = inside.at(-1);
  return last ? last[1] - p.radius(t) : null;
}

function neck(plan: Plan, answers: Answers): void {
  const { index, scallop } = plan.implant;
  if (index === 0) {
    answers.set('neck-facing', null);
    answers.set('neck-facing-cost', null);
    return;
  }
  const turn = 360 / index;
  const { roll } = plan.pose;
  answers.set('neck-facing', turn / 2 - (turn / 2 - roll - turn * Math.floor((turn / 2 - roll) / turn)));
  answers.set('neck-facing-cost', (scallop * (1 - cos(2 * roll))) / 2);
}
