/**
 * The oracle's own model of a site and an implant, written from the numbered rules (F1–F6, S1–S15) alone. It shares no code
 * with `src/core`: only types come from there. Site frame `(m, f, c)`, mm; degrees outside, radians inside a function.
 */
import type { Neighbour, Site, SocketState, ToothNumbers } from '../../src/core/anatomy/site.ts';
import type { Pose, Tilt } from '../../src/core/geometry/pose.ts';
import type { ImplantShape } from '../../src/core/implant/shape.ts';
import {
  across,
  change,
  cos,
  cube,
  direction,
  inner,
  minus,
  monotoneCubic,
  plus,
  RAD,
  root,
  sin,
  step,
  tan,
  times,
  type V,
} from './numbers.ts';

export type Side = 'facial' | 'palatal';
export const signOf = (side: Side): 1 | -1 => (side === 'facial' ? 1 : -1);

// ---------------------------------------------------------------- F: frames

/** Unit axis of a tilt and its two perpendiculars (F4), in the frame whose mesial, facial and coronal directions are given. */
export interface Axis {
  readonly a: V;
  readonly ef: V;
  readonly em: V;
}

export function axisIn(tilt: Tilt, mesial: V, facial: V, coronal: V): Axis {
  const raw = plus(plus(coronal, facial, tan(tilt.faciopalatal)), mesial, tan(tilt.mesiodistal));
  const a = direction(raw);
  const ef = direction(plus(facial, a, -inner(facial, a)));
  let em: V = [a[1] * ef[2] - a[2] * ef[1], a[2] * ef[0] - a[0] * ef[2], a[0] * ef[1] - a[1] * ef[0]];
  if (inner(em, mesial) < 0) em = times(em, -1);
  return { a, ef, em };
}

export const axisOfTilt = (tilt: Tilt): Axis => axisIn(tilt, [1, 0, 0], [0, 1, 0], [0, 0, 1]);

/** The arch (F3): stations along it and distances across it. */
export class Arch {
  readonly radius: number;
  constructor(arch: Site['arch']) {
    this.radius = arch.depth === 0 ? Infinity : (arch.width ** 2 / 4 + arch.depth ** 2) / (2 * arch.depth);
  }
  /** Station `q` and offset `e` of a point given by `m` and `f`. */
  q(m: number, f: number): number {
    return this.radius === Infinity ? m : this.radius * Math.atan2(m, f + this.radius);
  }
  e(m: number, f: number): number {
    const y = f + this.radius;
    return this.radius === Infinity ? f : Math.sqrt(m * m + y * y) - this.radius;
  }
  point(q: number, e: number, c: number): V {
    if (this.radius === Infinity) return [q, e, c];
    const turn = q / this.radius;
    return [(this.radius + e) * Math.sin(turn), (this.radius + e) * Math.cos(turn) - this.radius, c];
  }
  /** Along the arch toward mesial, and facially across it, at a station. */
  tangent(q: number): V {
    return this.radius === Infinity ? [1, 0, 0] : [Math.cos(q / this.radius), -Math.sin(q / this.radius), 0];
  }
  normal(q: number): V {
    return this.radius === Infinity ? [0, 1, 0] : [Math.sin(q / this.radius), Math.cos(q / this.radius), 0];
  }
}

// ---------------------------------------------------------------- S7–S10: teeth

/** Contact heights as shares of the crown's length; corner sizes, falls of the edge and how far mesially a premolar's cusp stands, mm: the textbook proportions again. */
const PROPORTIONS = [
  { contact: [0.86, 0.72], corner: [0.9, 1.8], fall: [0, 0.3] },
  { contact: [0.8, 0.64], corner: [1.1, 1.9], fall: [0, 0.4] },
  { contact: [0.7, 0.55], corner: [1.0, 0.8], fall: [1.5, 2.4] },
  { contact: [0.66, 0.62], cusp: 0.27, mesial: -0.3 },
  { contact: [0.66, 0.64], cusp: 0.27, mesial: 0.15 },
] as const;

/** A tooth in its place: origin (facial CEJ level on the axis), its axes, and those of its root. */
export interface PlacedTooth {
  readonly numbers: ToothNumbers;
  readonly origin: V;
  readonly axis: Axis;
  readonly rootAxis: Axis;
  /** Contact point and edge end on the side that faces the gap. */
  readonly contact: V;
  readonly end: V;
  /** The tooth's own mesial contact. */
  readonly mesialContact: V;
  /** Contact point on the side away from the gap. */
  readonly outer: V;
}

function placeAt(
  arch: Arch,
  n: Neighbour,
  place: number,
  q: number,
  ownMesial: 1 | -1,
  facesGapWith: 'mesial' | 'distal',
): PlacedTooth {
  const mesial = times(arch.tangent(q), ownMesial);
  const facial = arch.normal(q);
  const up: V = [0, 0, 1];
  const axis = axisIn(n.tilt, mesial, facial, up);
  const rootTilt = {
    faciopalatal: n.tilt.faciopalatal + n.rootTilt.faciopalatal,
    mesiodistal: n.tilt.mesiodistal + n.rootTilt.mesiodistal,
  };
  const rootAxis = axisIn(rootTilt, mesial, facial, up);
  const origin = plus(arch.point(q, 0, n.boneLevel), axis.a, n.cejAboveBone / axis.a[2]);
  const at = (x: number, y: number, z: number): V =>
    plus(plus(plus(origin, axis.em, x), axis.ef, y), axis.a, z);
  const p = PROPORTIONS[place - 1]!;
  const side = facesGapWith === 'mesial' ? 0 : 1;
  const outward = facesGapWith === 'mesial' ? 1 : -1;
  const end =
    'cusp' in p
      ? at(p.mesial, p.cusp * n.crownDepth, n.crownLength)
      : at(outward * (n.crownWidth / 2 - p.corner[side]), 0.4, n.crownLength - p.fall[side]);
  return {
    numbers: n,
    origin,
    axis,
    rootAxis,
    contact: at((outward * n.crownWidth) / 2, 0, p.contact[side] * n.crownLength),
    end,
    mesialContact: at(n.crownWidth / 2, 0, p.contact[0] * n.crownLength),
    outer: at((-outward * n.crownWidth) / 2, 0, p.contact[1 - side]! * n.crownLength),
  };
}

/** Both neighbours, each at the station where its contact point has `m = ±gap/2` (S9). */
export function placeNeighbours(site: Site, arch: Arch): { mesial: PlacedTooth; distal: PlacedTooth } {
  const place = site.tooth % 10;
  const across = place === 1;
  const mesialAt = (q: number): PlacedTooth =>
    across
      ? placeAt(arch, site.mesial, 1, q, -1, 'mesial')
      : placeAt(arch, site.mesial, place - 1, q, 1, 'distal');
  const distalAt = (q: number): PlacedTooth => placeAt(arch, site.distal, place + 1, q, 1, 'mesial');
  const qm = root(0, 16, (q) => mesialAt(q).contact[0] - site.gap / 2);
  const qd = root(-16, 0, (q) => distalAt(q).contact[0] + site.gap / 2);
  return { mesial: mesialAt(qm), distal: distalAt(qd) };
}

// ---------------------------------------------------------------- the whole site

export interface Canal {
  readonly start: V;
  /** Unit, from the foramen into the bone. */
  readonly into: V;
  readonly length: number;
  /** Radius at a distance from the foramen along the tube's axis. */
  radius(s: number): number;
}

export class Ground {
  readonly site: Site;
  readonly arch: Arch;
  readonly mesial: PlacedTooth;
  readonly distal: PlacedTooth;
  readonly canal: Canal | null;
  readonly socket: { readonly state: SocketState; readonly axis: Axis; readonly facialShift: number } | null;
  private readonly si: number;
  private readonly co: number;
  private readonly here: Record<Side, (d: number) => number>;
  private readonly there: Record<'mesial' | 'distal', Record<Side, (d: number) => number>>;
  private readonly outer: readonly number[];
  private readonly eminences: readonly { q0: number; q1: number; d0: number; length: number }[];

  constructor(site: Site) {
    this.site = site;
    this.arch = new Arch(site.arch);
    this.si = sin(site.ridge.inclination);
    this.co = cos(site.ridge.inclination);
    const { mesial, distal } = placeNeighbours(site, this.arch);
    this.mesial = mesial;
    this.distal = distal;
    this.here = { facial: this.facialHere(), palatal: this.curve('palatal', site.ridge.widths) };
    const about = (side: 'mesial' | 'distal') => ({
      facial: this.curve('facial', site[side].ridge.widths),
      palatal: this.curve('palatal', site[side].ridge.widths),
    });
    this.there = { mesial: about('mesial'), distal: about('distal') };
    this.outer = [mesial, distal].map((tooth) => this.arch.q(tooth.outer[0], tooth.outer[1]));
    this.eminences = [mesial, distal].map((tooth) => {
      const apex = plus(tooth.origin, tooth.rootAxis.a, -tooth.numbers.rootLength);
      const d0 = this.depth(tooth.origin);
      return {
        q0: this.arch.q(tooth.origin[0], tooth.origin[1]),
        q1: this.arch.q(apex[0], apex[1]),
        d0,
        length: this.depth(apex) - d0,
      };
    });
    this.canal = this.placeCanal();
    this.socket = site.state.kind === 'socket' ? this.placeSocket(site.state) : null;
  }

  // ------------------------------------------------ S1–S6: ridge

  /** Height of the crest (S1). */
  crest(q: number): number {
    const { from, to } = this.site.ridge.blend;
    let level =
      q >= 0
        ? this.site.mesial.boneLevel * step(q, from, to)
        : this.site.distal.boneLevel * step(-q, from, to);
    for (const place of this.outer) {
      const x = (q - place) / 3;
      if (Math.abs(x) < 1) level += this.site.ridge.scallop * cube(1 - x * x);
    }
    return level;
  }

  /** Sine and cosine of the ridge's inclination at a station (S1). */
  private lean(q: number): readonly [number, number] {
    const { blend, inclination } = this.site.ridge;
    const share = step(Math.abs(q), blend.from, blend.to);
    if (share === 0) return [this.si, this.co];
    const there = (q < 0 ? this.site.distal : this.site.mesial).ridge.inclination;
    const angle = (inclination + (there - inclination) * share) * RAD;
    return [Math.sin(angle), Math.cos(angle)];
  }

  /** Station, across and depth of a point: `[q, u, d]` (S1). */
  section(p: V): [number, number, number] {
    const q = this.arch.q(p[0], p[1]);
    const e = this.arch.e(p[0], p[1]);
    const y = p[2] - this.crest(q);
    const [si, co] = this.lean(q);
    return [q, e * co - y * si, -e * si - y * co];
  }

  depth(p: V): number {
    return this.section(p)[2];
  }

  /** The point at a station, across and depth: the inverse of `section`. */
  place(q: number, u: number, d: number): V {
    const [si, co] = this.lean(q);
    return this.arch.point(q, u * co - d * si, this.crest(q) - u * si - d * co);
  }

  cap(d: number): number {
    const rounding = this.site.ridge.crestRounding;
    if (d >= rounding) return 1;
    if (d < 0) return 0;
    const x = 1 - d / rounding;
    return Math.sqrt(1 - x * x);
  }

  private curve(
    side: Side,
    entries: Site['ridge']['widths'],
    extra: (d: number) => number = () => 0,
  ): (d: number) => number {
    return monotoneCubic(
      entries.map((w) => w.depth),
      entries.map((w) => w[side] / this.cap(w.depth) + extra(w.depth)),
    );
  }

  /** The facial half-width at the site with its undercut (S2, S3). */
  private facialHere(): (d: number) => number {
    const { widths, undercut } = this.site.ridge;
    const contained = widths.some((w) => Math.abs(w.depth - undercut.level) <= undercut.halfHeight / 2);
    const loss = (d: number): number => {
      if (contained) return 0;
      const x = (d - undercut.level) / undercut.halfHeight;
      return Math.abs(x) < 1 ? undercut.depth * cube(1 - x * x) : 0;
    };
    const smooth = this.curve('facial', widths, loss);
    return (d) => smooth(d) - loss(d);
  }

  /** `W` of a side before the crest's rounding (S2–S4). */
  halfWidth(side: Side, q: number, d: number): number {
    const { blend, eminence } = this.site.ridge;
    const share = step(Math.abs(q), blend.from, blend.to);
    let w = 0;
    if (share < 1) w += (1 - share) * this.here[side](d);
    if (share > 0) w += share * this.there[q < 0 ? 'distal' : 'mesial'][side](d);
    if (side === 'facial' && eminence.height > 0) {
      for (const { q0, q1, d0, length } of this.eminences) {
        const z = (d - d0 - length / 2) / (length / 2);
        if (Math.abs(z) >= 1) continue;
        const x = (q - q0 - ((q1 - q0) * (d - d0)) / length) / eminence.halfWidth;
        if (Math.abs(x) < 1) w += eminence.height * cube((1 - x * x) * (1 - z * z));
      }
    }
    return w;
  }

  /** How far a point stands outside the wall sheet of a side, measured across the ridge; NaN above the crest line (S5). */
  beyond(side: Side, p: V): number {
    const [q, u, d] = this.section(p);
    if (d < 0) return Number.NaN;
    return signOf(side) * u - this.halfWidth(side, q, d) * this.cap(d);
  }

  sheetPoint(side: Side, q: number, d: number): V {
    return this.place(q, signOf(side) * this.halfWidth(side, q, d) * this.cap(d), d);
  }

  /** Inside the ridge solid, floor and voids not looked at (S5). */
  inRidge(p: V): boolean {
    const [q, u, d] = this.section(p);
    if (d < 0) return false;
    const side: Side = u > 0 ? 'facial' : 'palatal';
    return Math.abs(u) <= this.halfWidth(side, q, d) * this.cap(d);
  }

  /** The floor plane's `c` (S6). */
  get floor(): number {
    return -this.site.ridge.height * this.co;
  }

  // ------------------------------------------------ S11–S14: voids and bone

  /** The socket's own equation: at most 0 inside. */
  private socketEquation(state: SocketState, axis: Axis, facialShift: number, p: V): number {
    const v = minus(p, [0, facialShift, 0]);
    const x = inner(v, axis.em) / (state.width / 2);
    const y = inner(v, axis.ef) / (state.breadth / 2);
    const below = -inner(v, axis.a) - state.parallel;
    const z = below > 0 ? below / (state.depth - state.parallel) : 0;
    return x * x + y * y + z * z - 1;
  }

  /** The socket is pushed facially until the wall at `wall.level` has its thickness (S11). */
  private placeSocket(state: SocketState): Ground['socket'] {
    const axis = axisOfTilt(state.axis);
    const { level, thickness } = state.wall;
    const sheet = this.halfWidth('facial', 0, level) * this.cap(level);
    // Shift 0, then slide along `u`: the void's last point on the line `d = level` of the section m = 0.
    const onLine = (u: number, shift: number): boolean =>
      this.socketEquation(state, axis, shift, [
        0,
        u * this.co - level * this.si,
        -u * this.si - level * this.co,
      ]) <= 0;
    const last = (shift: number): number => {
      let from = Number.NaN;
      for (let u = 25; u > -25; u -= 0.02) {
        if (onLine(u, shift)) {
          from = u;
          break;
        }
      }
      return Number.isNaN(from) ? Number.NaN : change(from, from + 0.02, (u) => onLine(u, shift));
    };
    const wanted = sheet - thickness;
    let shift = 0;
    for (let i = 0; i < 60; i += 1) {
      const u = last(shift);
      if (Number.isNaN(u)) throw new RangeError('the socket misses the section m = 0 at its wall level');
      const move = (wanted - u) / this.co;
      shift += move;
      if (Math.abs(move) < 1e-9) break;
    }
    return { state, axis, facialShift: shift };
  }

  socketLevel(p: V): number {
    const s = this.socket;
    return s === null ? Infinity : this.socketEquation(s.state, s.axis, s.facialShift, p);
  }

  inSocket(p: V): boolean {
    return this.socketLevel(p) <= 0;
  }

  inDehiscence(p: V): boolean {
    const s = this.socket;
    if (s === null || !(s.state.dehiscence.depth > 0)) return false;
    if (inner(minus(p, [0, s.facialShift, 0]), s.axis.ef) <= 0) return false;
    const d = -p[1] * this.si - p[2] * this.co;
    return (p[0] / (s.state.dehiscence.width / 2)) ** 2 + (d / s.state.dehiscence.depth) ** 2 <= 1;
  }

  /** Stands at the midline (S9, S13); modelled where it can be met: at the incisors. */
  private placeCanal(): Canal | null {
    const place = this.site.tooth % 10;
    if (place > 2) return null;
    const contact = this.mesial.mesialContact;
    const q = this.arch.q(contact[0], contact[1]);
    const n = this.site.canal;
    const start = this.arch.point(q, -n.behind, this.site.ridge.crestDrop - n.below);
    const into = times(direction(plus([0, 0, 1], this.arch.normal(q), tan(n.inclination))), -1);
    const radius = monotoneLine(n.length, n.foramen / 2, n.middle / 2, n.nasal / 2);
    return { start, into, length: n.length, radius };
  }

  inCanal(p: V): boolean {
    const tube = this.canal;
    if (tube === null) return false;
    const v = minus(p, tube.start);
    const s = inner(v, tube.into);
    if (s < 0 || s > tube.length) return false;
    return inner(v, v) - s * s <= tube.radius(s) ** 2;
  }

  inVoid(p: V): boolean {
    return this.inSocket(p) || this.inDehiscence(p) || this.inCanal(p);
  }

  /** Bone as a wall's ray sees it: the floor is not looked at (S14). */
  inWallBone(p: V): boolean {
    return this.inRidge(p) && !this.inVoid(p);
  }

  inBone(p: V): boolean {
    return p[2] >= this.floor && this.inWallBone(p);
  }
}

function monotoneLine(length: number, first: number, middle: number, last: number): (s: number) => number {
  return (s) =>
    s < length / 2
      ? first + ((middle - first) * s) / (length / 2)
      : middle + ((last - middle) * (s - length / 2)) / (length / 2);
}

// ---------------------------------------------------------------- S15: the implant in its pose

export class Placed {
  readonly shape: ImplantShape;
  readonly axis: Axis;
  readonly entry: V;
  /** Levels (F5) of platform plane, last thread and apical rim. */
  readonly platform: number;
  readonly lastThread: number;
  readonly apex: number;
  /** Level and radius of the corners of the profile, from the platform to the middle of the end face. */
  readonly corners: readonly (readonly [number, number])[];
  private readonly roll: number;

  constructor(shape: ImplantShape, pose: Pose) {
    this.shape = shape;
    this.roll = pose.roll;
    this.axis = axisOfTilt(pose.tilt);
    const p: V = [pose.platform.m, pose.platform.f, pose.platform.c];
    this.platform = -p[2] / this.axis.a[2];
    this.entry = plus(p, this.axis.a, this.platform);
    this.lastThread = this.platform + shape.transmucosalLength;
    this.apex = this.lastThread + shape.implantedLength;
    const ra = shape.apicalDiameter / 2;
    const ri = shape.implantedDiameter / 2;
    this.corners = [
      [this.platform, shape.platformDiameter / 2],
      [this.lastThread, ri],
      [this.apex - shape.taperLength, ri],
      [this.apex, ra],
      [this.apex, 0],
    ];
  }

  radius(t: number): number {
    const ra = this.shape.apicalDiameter / 2;
    const ri = this.shape.implantedDiameter / 2;
    const rp = this.shape.platformDiameter / 2;
    const up = this.apex - t;
    if (up <= this.shape.taperLength) return ra + ((ri - ra) * up) / this.shape.taperLength;
    if (t >= this.lastThread) return ri;
    if (t > this.platform) return ri + ((rp - ri) * (this.lastThread - t)) / this.shape.transmucosalLength;
    return rp;
  }

  /** Point at level `t`, at a distance from the axis, on an azimuth (radians, from `e_f` toward `e_m`). */
  at(t: number, distance: number, azimuth: number): V {
    const { a, ef, em } = this.axis;
    const x = distance * Math.cos(azimuth);
    const y = distance * Math.sin(azimuth);
    const e = this.entry;
    return [
      e[0] - t * a[0] + x * ef[0] + y * em[0],
      e[1] - t * a[1] + x * ef[1] + y * em[1],
      e[2] - t * a[2] + x * ef[2] + y * em[2],
    ];
  }

  surface(t: number, azimuth: number): V {
    return this.at(t, this.radius(t), azimuth);
  }

  /** Level, distance from the axis and azimuth of a point. */
  cylindrical(p: V): [number, number, number] {
    const v = minus(p, this.entry);
    const x = inner(v, this.axis.ef);
    const y = inner(v, this.axis.em);
    return [-inner(v, this.axis.a), across(x, y), Math.atan2(y, x)];
  }

  /** Level of the shoulder's rim on an azimuth (S15). */
  rim(azimuth: number): number {
    const fromMark = azimuth - (this.roll * Math.PI) / 180;
    return this.platform - (this.shape.scallop * (1 - Math.cos(2 * fromMark))) / 2;
  }
}
