import { golden } from '../geometry/golden.ts';
import { hull, type Interval, intersect } from '../geometry/interval.ts';
import { along, type Vec3 } from '../geometry/vec.ts';
import type { Placement } from './placement.ts';

const STRIPS = 96;
/** Strips that one look may pass over together, halved as long as it cannot; a power of two. */
const BUNDLE = 8;
/** How often a strip beside a jump is halved, and what counts as a jump, mm. */
const HALVINGS = 3;
const JUMP = 0.2;
/** Crossings closer together than this along a generatrix are not told apart, mm. */
const FINEST = 0.05;

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

/** A stretch of one strip outside bone, by stations; `kind`: in a socket's void, in the canal, or outside. */
interface Bare {
  readonly from: number;
  readonly to: number;
  readonly kind: 'socket' | 'canal' | 'out';
  joined: boolean;
}

/** A strip of the envelope along a generatrix: its middle's azimuth, its width (radians), and what of it is bare. */
interface Strip {
  readonly azimuth: number;
  readonly width: number;
  readonly parts: readonly Bare[];
  /** Stations outside which it is known to lie in the ridge; null: all of it does. */
  readonly doubt: readonly [number, number] | null;
}

/** Cost: some hundreds of evaluations where the threads are well inside, some thousands where they are not. */
export function exposureOf(at: Placement): Exposure {
  const top = at.shape.transmucosalLength;
  const end = at.length;
  const whole = lateralArea(at, top, end);
  const strips = refined(at, coarseStrips(at, top, end), top, end);
  flood(strips, top);
  const area = { dehiscence: 0, fenestration: 0, socket: 0 };
  let worst: Strip | null = null;
  for (const strip of strips) {
    for (const part of strip.parts) {
      const a = (lateralArea(at, part.from, part.to) * strip.width) / (2 * Math.PI);
      if (part.kind === 'socket') area.socket += a;
      else if (part.joined) area.dehiscence += a;
      else area.fenestration += a;
    }
    if (bareLength(strip.parts) > bareLength(worst?.parts ?? [])) worst = strip;
  }
  const bare = area.dehiscence + area.fenestration + area.socket;
  const contact = (100 * (whole - bare)) / whole;
  if (!worst) return { ...area, threads: 0, contact, worst: null };
  const longest = worstGeneratrix(at, worst, top, end);
  const middle = (longest.parts[0].from + longest.parts[longest.parts.length - 1].to) / 2;
  return {
    ...area,
    threads: bareLength(longest.parts) / at.shape.thread.pitch,
    contact,
    worst: at.surface(at.tP + middle, longest.azimuth),
  };
}

const bareLength = (parts: readonly Bare[]): number => parts.reduce((sum, p) => sum + p.to - p.from, 0);

/** Even strips; bundles of them that are proved to lie in bone are not looked at one by one. */
function coarseStrips(at: Placement, top: number, end: number): Strip[] {
  const strips: Strip[] = [];
  const width = (2 * Math.PI) / STRIPS;
  const voids = hasVoids(at);
  const fill = (first: number, count: number, from: number, to: number): void => {
    const middle = (first + count / 2) * width;
    const range = doubtful(at, middle, from, to, (count / 2) * width);
    if (!range || count === 1) {
      for (let i = 0; i < count; i++) {
        const azimuth = (first + i + 0.5) * width;
        const parts = range || voids ? bareParts(at, azimuth, top, end, range) : [];
        strips.push({ azimuth, width, parts, doubt: range });
      }
    } else {
      fill(first, count / 2, range[0], range[1]);
      fill(first + count / 2, count / 2, range[0], range[1]);
    }
  };
  for (let b = 0; b < STRIPS; b += BUNDLE) fill(b, BUNDLE, top, end);
  return strips;
}

/** Strips beside a jump (an edge that runs along the axis, a corner) are halved, and again while a half still stands beside one. */
function refined(at: Placement, strips: readonly Strip[], top: number, end: number): Strip[] {
  let out = [...strips];
  for (let pass = 0; pass < HALVINGS; pass++) {
    out = out.flatMap((strip, i, all) => {
      const before = all[(i + all.length - 1) % all.length];
      const after = all[(i + 1) % all.length];
      if (alike(strip, before) && alike(strip, after)) return [strip];
      const width = strip.width / 2;
      const doubt = hull(hull(before.doubt, strip.doubt), after.doubt);
      return [-0.5, 0.5].map((k) => {
        const azimuth = strip.azimuth + k * width;
        return { azimuth, width, doubt, parts: bareParts(at, azimuth, top, end, doubt) };
      });
    });
  }
  return out;
}

function alike(a: Strip, b: Strip): boolean {
  if (a.parts.length !== b.parts.length) return false;
  return a.parts.every((p, i) => {
    const o = b.parts[i];
    return p.kind === o.kind && Math.abs(p.from - o.from) < JUMP && Math.abs(p.to - o.to) < JUMP;
  });
}

/** The azimuth near the worst strip's at which most is bare: golden section over its neighbourhood. */
function worstGeneratrix(at: Placement, strip: Strip, top: number, end: number): Strip {
  let best = strip;
  golden(
    (azimuth) => {
      const parts = bareParts(at, azimuth, top, end, [top, end]);
      if (bareLength(parts) > bareLength(best.parts)) best = { azimuth, width: 0, parts, doubt: null };
      return -bareLength(parts);
    },
    strip.azimuth - 2 * strip.width,
    strip.azimuth + 2 * strip.width,
    14,
  );
  return best;
}

const hasVoids = (at: Placement): boolean => at.anatomy.socket !== null || at.canalTouches;

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

/**
 * The stations between which a bundle of strips is not proved to lie in bone; null: all of it does. The proof: the solid's function
 * cannot rise faster than its slope's bound.
 */
function doubtful(
  at: Placement,
  azimuth: number,
  from: number,
  to: number,
  spread: number,
): [number, number] | null {
  const cos = Math.cos(azimuth);
  const sin = Math.sin(azimuth);
  const reach = spread * (at.shape.implantedDiameter / 2);
  let lo = Infinity;
  let hi = -Infinity;
  const look = (x0: number, x1: number): void => {
    // What lies between two doubtful stretches is doubtful anyway.
    if (x0 >= lo && x1 <= hi) return;
    const half = (x1 - x0) / 2;
    const value = solidAt(at, x0 + half, cos, sin);
    const away = Math.sqrt(1.1 * half * half + reach * reach);
    if (value < 0 && -value > at.anatomy.ridge.steepWithin(away) * away) return;
    if (value >= 0 || half < Math.max(0.04, reach / 2)) {
      lo = Math.min(lo, x0);
      hi = Math.max(hi, x1);
      return;
    }
    look(x0, x0 + half);
    look(x0 + half, x1);
  };
  look(from, to);
  return lo < hi ? [lo, hi] : null;
}

/** Stretches of a strip outside bone, coronal first. `doubt`: the stations outside which the strip is known to lie in the ridge. */
function bareParts(
  at: Placement,
  azimuth: number,
  from: number,
  to: number,
  doubt: readonly [number, number] | null,
): Bare[] {
  const cos = Math.cos(azimuth);
  const sin = Math.sin(azimuth);
  const cuts: number[] = [];
  const f = (x: number) => solidAt(at, x, cos, sin);
  /** Bound of the slope over the stretch that is looked at, known from the middle of the one it is half of. */
  let steep = Infinity;
  const look = (x0: number, f0: number, x1: number, f1: number): void => {
    const half = (x1 - x0) / 2;
    const crosses = f0 <= 0 !== f1 <= 0;
    if (half < FINEST) {
      if (crosses) cuts.push(crossing(f, x0, f0, x1, f1));
      return;
    }
    // From one end down to zero and up again to the other it would have to be steeper than the solid is anywhere near.
    if (!crosses && Math.abs(f0) + Math.abs(f1) > steep * 2.1 * half) return;
    const value = f(x0 + half);
    steep = at.anatomy.ridge.steepWithin(1.05 * half);
    if (Math.abs(value) > steep * 1.05 * half) return;
    const slope = steep;
    look(x0, f0, x0 + half, value);
    steep = slope;
    look(x0 + half, value, x1, f1);
  };
  const first = doubt ? f(doubt[0]) : -1;
  if (doubt) look(doubt[0], first, doubt[1], f(doubt[1]));
  const startsBare = first > 0 && doubt !== null && doubt[0] === from;
  const voids = hasVoids(at) ? voidStations(at, azimuth) : { socket: [], canal: [] };
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
    const outside = crossed !== startsBare;
    const kind = holds(voids.socket, mid)
      ? 'socket'
      : holds(voids.canal, mid)
        ? 'canal'
        : outside
          ? 'out'
          : null;
    if (!kind) continue;
    const last = out[out.length - 1];
    if (last && last.kind === kind && a - last.to < 1e-12) out[out.length - 1] = { ...last, to: b };
    else out.push({ from: a, to: b, kind, joined: false });
  }
  return out;
}

/** Where `f` changes sign between two stations: false position, and halving while that is slow, as over a square crest. */
function crossing(f: (x: number) => number, x0: number, f0: number, x1: number, f1: number): number {
  let [a, fa, b, fb] = [x0, f0, x1, f1];
  let x = a;
  for (let i = 0; i < 24 && b - a > 1e-7; i++) {
    x = i % 2 === 1 ? (a + b) / 2 : a + ((b - a) * fa) / (fa - fb);
    const value = f(x);
    if (Math.abs(value) < 1e-4) break;
    if (value <= 0 === fa <= 0) [a, fa] = [x, value];
    else [b, fb] = [x, value];
  }
  return x;
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
    if (at.canalTouches) out.canal.push(...canal.voids(p, v).map(shift));
  }
  return out;
}

/** Marks every outside part that is joined to the last thread's level, strip by strip round the implant, until nothing changes. */
function flood(strips: readonly Strip[], top: number): void {
  const n = strips.length;
  const queue: [strip: number, part: Bare][] = [];
  const mark = (strip: number, part: Bare) => {
    if (part.joined || part.kind !== 'out') return;
    part.joined = true;
    queue.push([strip, part]);
  };
  strips.forEach(({ parts }, i) => {
    for (const part of parts) if (part.from < top + 1e-9) mark(i, part);
  });
  for (let next = queue.pop(); next; next = queue.pop()) {
    const [i, part] = next;
    for (const j of [(i + 1) % n, (i + n - 1) % n]) {
      for (const other of strips[j].parts) if (other.from < part.to && part.from < other.to) mark(j, other);
    }
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
