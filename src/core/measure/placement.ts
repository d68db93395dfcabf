import type { Anatomy } from '../anatomy/anatomy.ts';
import type { Interval } from '../geometry/interval.ts';
import { axisFrame, axisOf, entryOf, type Pose, platformOf } from '../geometry/pose.ts';
import type { Revolved } from '../geometry/revolve.ts';
import { along, dot, rad, sub, type Vec3 } from '../geometry/vec.ts';
import { envelopeOf, envelopeParts, rimHeight } from '../implant/profile.ts';
import { type ImplantShape, totalLength } from '../implant/shape.ts';

interface Body {
  readonly envelope: Revolved;
  readonly parts: readonly Revolved[];
}

/** Outlines of a shape, kept as long as its numbers are. */
const bodies = new WeakMap<ImplantShape, Body>();

function bodyOf(shape: ImplantShape): Body {
  const known = bodies.get(shape);
  if (known) return known;
  const made = { envelope: envelopeOf(shape), parts: envelopeParts(shape) };
  bodies.set(shape, made);
  return made;
}

/**
 * An implant in its place: frame of its axis, levels and envelope, all in the site frame (rules F4, F5, S15). Levels `t` count
 * apically from the entry; stations `x = t − tP` count apically from the platform plane; azimuths from `ef` toward `em`, radians.
 */
export class Placement {
  readonly a: Vec3;
  readonly ef: Vec3;
  readonly em: Vec3;
  readonly platform: Vec3;
  readonly entry: Vec3;
  readonly tP: number;
  readonly tA: number;
  readonly length: number;
  readonly envelope: Revolved;
  /** The same as convex bodies. */
  readonly parts: readonly Revolved[];
  /** Whether the canal is near enough to meet a wall's ray. */
  readonly canalNear: boolean;
  /** Whether it is near enough to meet the envelope. */
  readonly canalTouches: boolean;
  private readonly mark: number;

  constructor(
    readonly anatomy: Anatomy,
    readonly shape: ImplantShape,
    readonly pose: Pose,
    readonly crestMargin: number,
  ) {
    const frame = axisFrame(axisOf(pose.tilt));
    this.a = frame.a;
    this.ef = frame.ef;
    this.em = frame.em;
    this.platform = platformOf(pose);
    this.entry = entryOf(pose);
    this.length = totalLength(shape);
    this.tP = -this.platform[2] / this.a[2];
    this.tA = this.tP + this.length;
    const body = bodyOf(shape);
    this.envelope = body.envelope;
    this.parts = body.parts;
    this.mark = rad(pose.roll);
    const toCanal = anatomy.canal.distance(this.axisPoint(this.tP + this.length / 2)) - this.length / 2;
    this.canalNear = toCanal < 11;
    this.canalTouches = toCanal < this.radius(this.tP) + shape.implantedDiameter / 2;
  }

  /** Point of the axis at level `t`. */
  axisPoint(t: number): Vec3 {
    return along(this.entry, this.a, -t);
  }

  /** Radius of the envelope at level `t`, carried on coronally at the platform's. */
  radius(t: number): number {
    return this.envelope.radius(t - this.tP);
  }

  /** Direction across the axis at an azimuth. */
  across(azimuth: number): Vec3 {
    const c = Math.cos(azimuth);
    const s = Math.sin(azimuth);
    const { ef, em } = this;
    return [c * ef[0] + s * em[0], c * ef[1] + s * em[1], c * ef[2] + s * em[2]];
  }

  /** Point of the envelope's surface at level and azimuth. */
  surface(t: number, azimuth: number): Vec3 {
    return along(this.axisPoint(t), this.across(azimuth), this.radius(t));
  }

  /** Level of the shoulder's rim at an azimuth about the axis. */
  rimLevel(azimuth: number): number {
    return this.tP - rimHeight(this.shape, azimuth - this.mark);
  }

  /** The rim's point at an azimuth. */
  rimPoint(azimuth: number): Vec3 {
    return along(this.axisPoint(this.rimLevel(azimuth)), this.across(azimuth), this.radius(this.tP));
  }

  /** Signed distance, in its half-plane, from a point to a body about the axis (stations from the platform plane); negative inside. */
  signed(body: Revolved, p: Vec3): number {
    const { platform, a } = this;
    const rx = p[0] - platform[0];
    const ry = p[1] - platform[1];
    const rz = p[2] - platform[2];
    const x = -(rx * a[0] + ry * a[1] + rz * a[2]);
    return body.signed(x, Math.sqrt(Math.max(0, rx * rx + ry * ry + rz * rz - x * x)));
  }

  /** The body's point nearest to `p` in its half-plane. */
  footOf(body: Revolved, p: Vec3): Vec3 {
    this.signed(body, p);
    const r = sub(p, this.platform);
    const radial = along(r, this.a, -dot(r, this.a));
    const rho = Math.sqrt(dot(radial, radial)) || 1;
    return along(along(this.platform, this.a, -body.footX), radial, body.footR / rho);
  }

  /** Stretches of the line `p + λ v` in the voids: socket, dehiscence and canal (rule S14). */
  voids(p: Vec3, v: Vec3): Interval[] {
    const { socket, canal } = this.anatomy;
    const out: Interval[] = socket ? [socket.rootVoid(p, v), socket.dehiscence(p, v)] : [];
    if (this.canalNear) out.push(...canal.voids(p, v));
    return out;
  }

  get hasVoids(): boolean {
    return this.anatomy.socket !== null || this.canalNear;
  }
}
