import { broughtInto, turnedInto } from '../geometry/carry.ts';
import type { Vec3 } from '../geometry/vec.ts';
import type { AbutmentNumbers } from '../implant/shape.ts';
import type { Placement } from '../measure/placement.ts';
import type { LeastPost } from './crownChoices.ts';
import { DistanceField } from './distanceField.ts';
import { movedOut, type PalatalSide, palatalSide } from './palatalSide.ts';
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

/** Heights at which the palatal side is looked at, and those about the worst of them. */
const LEVELS = 24;
const FINER = 8;

/** Where at most less than this is too near, the palatal side is ground only by that share, mm (ours). */
const WHOLE_SIDE = 0.2;

/** The field is off by less than this, between two levels' worst too, mm. */
const UNSURE = 0.05;

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
    this.palatal = this.palatalPlane(across);
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
  private exactlyTooNear(x: number, rho: number, cos: number, sin: number): number {
    return this.rule.cover + this.crown.wall.signed(...this.point(x, rho, cos, sin));
  }

  /** As {@link over}, by the wall itself; leaves the wall's nearest point in the crown's `wall.foot`. */
  exactlyOver(x: number, rho: number, cos: number, sin: number): number {
    const near = this.exactlyTooNear(x, rho, cos, sin);
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

  /** Moved in by as large a share of its way as what is too near palatally is of {@link WHOLE_SIDE}. */
  private palatalPlane({ loops }: CrownCut): PalatalSide | null {
    const lack = this.tooNearPalatally();
    const side =
      lack > 0 ? palatalSide(loops, { height: this.numbers.height, cover: this.rule.cover }) : null;
    if (!side || lack >= WHOLE_SIDE) return side;
    const { height } = this.numbers;
    const way = Math.max(0, side.beyond(-this.radius(0), 0), side.beyond(-this.radius(height), height));
    return movedOut(side, way * (1 - lack / WHOLE_SIDE));
  }

  /** How much nearer to the crown's wall than it may be the palatal side is at most, the least post left out; exact where it decides. */
  private tooNearPalatally(): number {
    const step = this.numbers.height / LEVELS;
    const at = (x: number, ask: 'tooNear' | 'exactlyTooNear'): number => {
      const rho = this.radius(x);
      return this.overPost(x, rho) > 0 ? this[ask](x, rho, -1, 0) : -Infinity;
    };
    let [worst, most] = [0, -Infinity];
    for (let i = 0; i <= LEVELS; i++) {
      const lack = at(i * step, 'tooNear');
      if (lack > most) [worst, most] = [i * step, lack];
    }
    if (most < -UNSURE || most > WHOLE_SIDE + UNSURE) return most;
    most = -Infinity;
    for (let i = -FINER; i <= FINER; i++) {
      const x = Math.min(this.numbers.height, Math.max(0, worst + (i * step) / FINER));
      most = Math.max(most, at(x, 'exactlyTooNear'));
    }
    return most;
  }
}
