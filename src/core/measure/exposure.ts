import { type Interval, intersect } from '../geometry/interval.ts';
import { along, type Vec3 } from '../geometry/vec.ts';
import type { Placement } from './placement.ts';
import { steepness } from './shoulder.ts';

const STRIPS = 96;
/** Strips that one look ahead may pass over together. */
const BUNDLE = 8;
/** Crossings closer together than this along a generatrix are not told apart, mm. */
const FINEST = 0.02;

/** Threaded envelope outside bone (rule M11). Areas mm², threads in pitches, contact in per cent. */
export interface Exposure {
  readonly dehiscence: number;
  readonly fenestration: number;
  readonly socket: number;
  readonly threads: number;
  readonly contact: number;
  /** Middle of the worst generatrix's exposed part, site frame; null where nothing is exposed. */
  readonly worst: Vec3 | null;
}

/** A stretch of one strip outside bone, by stations; `kind`: in a socket's void, or outside. */
interface Bare {
  readonly from: number;
  readonly to: number;
  readonly kind: 'socket' | 'out';
  joined: boolean;
}

/** Cost: some hundreds of evaluations where the threads are well inside, some thousands where they are not. */
export function exposureOf(at: Placement): Exposure {
  const top = at.shape.transmucosalLength;
  const end = at.length;
  const strips: Bare[][] = [];
  const slope = steepness(at);
  const width = (2 * Math.PI) / STRIPS;
  for (let b = 0; b < STRIPS; b += BUNDLE) {
    const middle = (b + BUNDLE / 2) * width;
    const clear = !at.hasVoids && wellInside(at, middle, top, end, (BUNDLE / 2) * width, slope);
    for (let i = b; i < b + BUNDLE; i++)
      strips.push(clear ? [] : bareParts(at, (i + 0.5) * width, top, end, slope));
  }
  flood(strips, top);
  const area = { dehiscence: 0, fenestration: 0, socket: 0 };
  let longest = 0;
  let worst: Vec3 | null = null;
  strips.forEach((parts, i) => {
    let length = 0;
    for (const part of parts) {
      const a = lateralArea(at, part.from, part.to) / STRIPS;
      if (part.kind === 'socket') area.socket += a;
      else if (part.joined) area.dehiscence += a;
      else area.fenestration += a;
      length += part.to - part.from;
    }
    if (length > longest) {
      longest = length;
      worst = at.surface(at.tP + (parts[0].from + parts[parts.length - 1].to) / 2, (i + 0.5) * width);
    }
  });
  const whole = lateralArea(at, top, end);
  const bare = area.dehiscence + area.fenestration + area.socket;
  const contact = (100 * (whole - bare)) / whole;
  return { ...area, threads: longest / at.shape.thread.pitch, contact, worst };
}

/** The solid of bone (ridge above the floor) at a station and azimuth: ≤ 0 inside. */
function solidAt(at: Placement, x: number, cos: number, sin: number): number {
  const { platform, a, ef, em } = at;
  const r = at.envelope.radius(x);
  const cf = r * cos;
  const cm = r * sin;
  const pm = platform[0] - x * a[0] + cf * ef[0] + cm * em[0];
  const pf = platform[1] - x * a[1] + cf * ef[1] + cm * em[1];
  const pc = platform[2] - x * a[2] + cf * ef[2] + cm * em[2];
  const { ridge } = at.anatomy;
  return Math.max(ridge.solid(pm, pf, pc), ridge.floor - pc);
}

/** Whether a whole bundle of strips is in bone: the solid's function cannot rise faster than `slope`. */
function wellInside(
  at: Placement,
  azimuth: number,
  from: number,
  to: number,
  spread: number,
  slope: number,
): boolean {
  const cos = Math.cos(azimuth);
  const sin = Math.sin(azimuth);
  const reach = spread * (at.shape.implantedDiameter / 2);
  const look = (x0: number, x1: number): boolean => {
    const half = (x1 - x0) / 2;
    const value = solidAt(at, x0 + half, cos, sin);
    if (value >= 0) return false;
    if (-value > slope * Math.hypot(1.05 * half, reach)) return true;
    return half > 0.15 && look(x0, x0 + half) && look(x0 + half, x1);
  };
  return look(from, to);
}

/** Stretches of a strip outside bone, coronal first. */
function bareParts(at: Placement, azimuth: number, from: number, to: number, slope: number): Bare[] {
  const cos = Math.cos(azimuth);
  const sin = Math.sin(azimuth);
  const f = (x: number) => solidAt(at, x, cos, sin);
  const cuts: number[] = [];
  const look = (x0: number, f0: number, x1: number, f1: number): void => {
    const half = (x1 - x0) / 2;
    if (half < FINEST) {
      if (f0 <= 0 !== f1 <= 0) cuts.push(x0 + (2 * half * f0) / (f0 - f1));
      return;
    }
    const value = f(x0 + half);
    if (Math.abs(value) > slope * 1.05 * half) return;
    look(x0, f0, x0 + half, value);
    look(x0 + half, value, x1, f1);
  };
  const fFrom = f(from);
  look(from, fFrom, to, f(to));
  const voids = at.hasVoids ? voidStations(at, azimuth) : { socket: [], canal: [] };
  const marks = [from, to, ...cuts];
  for (const part of [...voids.socket, ...voids.canal]) {
    if (part) marks.push(...part.filter((x) => x > from && x < to));
  }
  marks.sort((x, y) => x - y);
  const holds = (parts: readonly Interval[], x: number) => parts.some((p) => p && p[0] <= x && x <= p[1]);
  const out: Bare[] = [];
  for (let i = 0; i + 1 < marks.length; i++) {
    const a = marks[i];
    const b = marks[i + 1];
    if (b - a < 1e-12) continue;
    const mid = (a + b) / 2;
    const crossed = cuts.filter((c) => c < mid).length % 2 === 1;
    const outside = crossed !== fFrom > 0;
    const kind = holds(voids.socket, mid) ? 'socket' : outside || holds(voids.canal, mid) ? 'out' : null;
    if (!kind) continue;
    const last = out[out.length - 1];
    if (last && last.kind === kind && a - last.to < 1e-12) out[out.length - 1] = { ...last, to: b };
    else out.push({ from: a, to: b, kind, joined: false });
  }
  return out;
}

/** Stations of a generatrix in the voids: it is straight between the envelope's corners. */
function voidStations(at: Placement, azimuth: number): { socket: Interval[]; canal: Interval[] } {
  const { socket, canal } = at.anatomy;
  const { shape, length } = at;
  const corners = [shape.transmucosalLength, length - shape.taperLength, length];
  const across = at.across(azimuth);
  const at2 = (x: number): Vec3 => along(along(at.platform, at.a, -x), across, at.envelope.radius(x));
  const out: { socket: Interval[]; canal: Interval[] } = { socket: [], canal: [] };
  for (let i = 0; i + 1 < corners.length; i++) {
    const x0 = corners[i];
    const l = corners[i + 1] - x0;
    if (l <= 0) continue;
    const p = at2(x0);
    const q = at2(corners[i + 1]);
    const v: Vec3 = [(q[0] - p[0]) / l, (q[1] - p[1]) / l, (q[2] - p[2]) / l];
    const shift = (part: Interval): Interval => {
      const cut = intersect(part, [0, l]);
      return cut && [cut[0] + x0, cut[1] + x0];
    };
    if (socket) out.socket.push(shift(socket.rootVoid(p, v)), shift(socket.dehiscence(p, v)));
    if (at.canalNear) out.canal.push(...canal.voids(p, v).map(shift));
  }
  return out;
}

/** Marks every outside part that is joined to the last thread's level, strip by strip round the implant, until nothing changes. */
function flood(strips: readonly Bare[][], top: number): void {
  const queue: [strip: number, part: Bare][] = [];
  const mark = (strip: number, part: Bare) => {
    if (part.joined || part.kind !== 'out') return;
    part.joined = true;
    queue.push([strip, part]);
  };
  strips.forEach((parts, i) => {
    for (const part of parts) if (part.from < top + 1e-9) mark(i, part);
  });
  for (let next = queue.pop(); next; next = queue.pop()) {
    const [i, part] = next;
    for (const j of [(i + 1) % STRIPS, (i + STRIPS - 1) % STRIPS]) {
      for (const other of strips[j]) if (other.from < part.to && part.from < other.to) mark(j, other);
    }
    for (const other of strips[i])
      if (Math.abs(other.from - part.to) < 1e-9 || Math.abs(other.to - part.from) < 1e-9) mark(i, other);
  }
}

/** Lateral area of the envelope between two stations: frusta in closed form, mm². */
export function lateralArea(at: Placement, from: number, to: number): number {
  const { shape, length } = at;
  const marks = [from, shape.transmucosalLength, length - shape.taperLength, length, to].filter(
    (x) => x >= from && x <= to,
  );
  marks.sort((x, y) => x - y);
  let sum = 0;
  for (let i = 0; i + 1 < marks.length; i++) {
    const h = marks[i + 1] - marks[i];
    const r0 = at.envelope.radius(marks[i]);
    const r1 = at.envelope.radius(marks[i + 1]);
    sum += Math.PI * (r0 + r1) * Math.hypot(h, r1 - r0);
  }
  return sum;
}
