import { broughtInto, turnedInto } from '../geometry/carry.ts';
import type { Vec3 } from '../geometry/vec.ts';
import type { AbutmentNumbers } from '../implant/shape.ts';
import type { Placement } from '../measure/placement.ts';
import type { LeastPost } from './crownChoices.ts';
import { DistanceField } from './distanceField.ts';
import { type PalatalSide, palatalSide } from './palatalSide.ts';
import { type CrownCut, cutCrown, type PlannedCrown } from './plannedCrown.ts';

/** What a reduction keeps: the least distance from abutment to the crown's surface, and the least post; mm. */
export interface ReductionRule {
  readonly cover: number;
  readonly post: LeastPost;
}

const fields = new WeakMap<PlannedCrown['wall'], DistanceField>();
function fieldOf({ mesh, wall }: PlannedCrown): DistanceField {
  const known = fields.get(wall);
  if (known) return known;
  const made = new DistanceField(mesh, wall);
  fields.set(wall, made);
  return made;
}

/** Heights at which the palatal side is looked at. */
const LEVELS = 24;

/**
 * A one-piece abutment within the planned crown (rule C8). Its places: `x` over the shoulder along the axis, `rho` from the axis, and an azimuth's cosine and
 * sine, from `e_f` toward `e_m`; mm.
 */
export class AbutmentInCrown {
  /** The plane that its palatal side is ground to; null: it need not be ground there. */
  readonly palatal: PalatalSide | null;
  private readonly origin: Vec3;
  private readonly up: Vec3;
  private readonly ef: Vec3;
  private readonly em: Vec3;
  private readonly field: DistanceField;

  constructor(
    at: Placement,
    private readonly crown: PlannedCrown,
    readonly numbers: AbutmentNumbers,
    readonly rule: ReductionRule,
    /** The crown cut along axis and `e_f`. */
    across: CrownCut = cutCrown(crown, { origin: at.platform, x: at.ef, y: at.a }),
  ) {
    const { frame } = crown;
    this.origin = broughtInto(frame, at.platform);
    this.up = turnedInto(frame, at.a);
    this.ef = turnedInto(frame, at.ef);
    this.em = turnedInto(frame, at.em);
    this.field = fieldOf(crown);
    this.palatal = this.groundPalatally() ? palatalSide(across.loops, numbers.height, rule.cover) : null;
  }

  radius(x: number): number {
    const { baseDiameter, topDiameter, height } = this.numbers;
    return (baseDiameter + ((topDiameter - baseDiameter) * x) / height) / 2;
  }

  /** A place in the crown's coordinates. */
  point(x: number, rho: number, cos: number, sin: number): Vec3 {
    const { origin: o, up, ef, em } = this;
    const [f, m] = [rho * cos, rho * sin];
    return [
      o[0] + x * up[0] + f * ef[0] + m * em[0],
      o[1] + x * up[1] + f * ef[1] + m * em[1],
      o[2] + x * up[2] + f * ef[2] + m * em[2],
    ];
  }

  /** How much nearer to the crown's wall a place is than it may be, by the field; + too near. */
  tooNear(x: number, rho: number, cos: number, sin: number): number {
    const p = this.point(x, rho, cos, sin);
    return this.rule.cover + this.field.at(p[0], p[1], p[2]);
  }

  /** How far within what is ground off a place lies: too near, or palatal of the palatal plane; + ground off. */
  over(x: number, rho: number, cos: number, sin: number): number {
    const near = this.tooNear(x, rho, cos, sin);
    return this.palatal ? Math.max(near, this.palatal.beyond(rho * cos, x)) : near;
  }

  /** The same by the wall itself; leaves the wall's nearest point in the crown's `wall.foot`. */
  exactlyOver(x: number, rho: number, cos: number, sin: number): number {
    const near = this.rule.cover + this.crown.wall.signed(...this.point(x, rho, cos, sin));
    return this.palatal ? Math.max(near, this.palatal.beyond(rho * cos, x)) : near;
  }

  /** Distance from a place to the least post. */
  overPost(x: number, rho: number): number {
    const { diameter, height } = this.rule.post;
    return Math.hypot(Math.max(0, x - height), Math.max(0, rho - diameter / 2));
  }

  /** Side and top as one strip: `s` runs up the side and on along the top to the axis. */
  surface(s: number): readonly [x: number, rho: number] {
    const { height, topDiameter } = this.numbers;
    return s <= height ? [s, this.radius(s)] : [height, Math.max(0, topDiameter / 2 - (s - height))];
  }

  private groundPalatally(): boolean {
    for (let i = 0; i <= LEVELS; i++) {
      const x = (this.numbers.height * i) / LEVELS;
      const rho = this.radius(x);
      if (this.overPost(x, rho) > 0 && this.tooNear(x, rho, -1, 0) > 0) return true;
    }
    return false;
  }
}
