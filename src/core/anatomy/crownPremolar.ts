import { hermite } from '../geometry/spline.ts';
import { clamp, smoothstep, type Vec3 } from '../geometry/vec.ts';
import type { CrownWall } from './crownFront.ts';
import { CLASS_NUMBERS, CUSP_FACIAL } from './landmarks.ts';
import { cejHeight } from './root-mesh.ts';
import type { ToothNumbers } from './site.ts';

/** What tells the two upper premolars apart; proportions of carving texts, from memory, then by eye. */
interface PremolarForm {
  /** How much shorter the palatal cusp is, mm, and how far mesially its tip stands, mm. */
  readonly palatalShorter: number;
  readonly palatalMesial: number;
  /** How far the marginal ridges lie below the facial cusp, mm. */
  readonly ridgeMesial: number;
  readonly ridgeDistal: number;
  /** How far the middle of the central groove and its pits lie below the facial cusp, mm. */
  readonly groove: number;
  readonly pits: number;
  /** Half-length of the central groove over the half-width. */
  readonly grooveLength: number;
  /** Roundness of the cusp ridges: small is a sharp tip. */
  readonly tip: number;
  /** Depth of the mesial marginal groove and of the hollow below the mesial contact, mm. */
  readonly mesialGroove: number;
  readonly mesialHollow: number;
}

const FORMS: Readonly<Record<'premolar1' | 'premolar2', PremolarForm>> = {
  premolar1: {
    palatalShorter: 1,
    palatalMesial: 0.5,
    ridgeMesial: 2,
    ridgeDistal: 1.8,
    groove: 2.7,
    pits: 3,
    grooveLength: 0.5,
    tip: 0.25,
    mesialGroove: 0.3,
    mesialHollow: 0.2,
  },
  premolar2: {
    palatalShorter: 0.4,
    palatalMesial: 0.35,
    ridgeMesial: 1.6,
    ridgeDistal: 1.6,
    groove: 2.3,
    pits: 2.5,
    grooveLength: 0.36,
    tip: 0.4,
    mesialGroove: 0,
    mesialHollow: 0,
  },
};

const CONTOUR_AT = 0.3;
const RIDGE_AT = 0.64;

/**
 * Wall of an upper premolar in tooth coordinates (rule S7), down to its central groove: at every angle one smooth meridian
 * CEJ → height of contour → cusp or marginal ridge → groove. The ridge is crossed level, so that cusps and ridges are rounded.
 */
export function premolarWall(cls: 'premolar1' | 'premolar2', n: ToothNumbers): CrownWall {
  const form = FORMS[cls];
  const k = CLASS_NUMBERS[cls];
  const length = n.crownLength;
  const half = n.crownWidth / 2;
  const facialMost = n.cervixDepth / 2 + 0.45 * (n.crownDepth - n.cervixDepth);
  const palatalMost = n.crownDepth - facialMost;
  const tipY = CUSP_FACIAL * n.crownDepth;
  const palatalTipY = 0.25 * n.crownDepth;
  const superellipse = (cos: number, sin: number, power: number): number =>
    (Math.abs(cos) ** power + Math.abs(sin) ** power) ** (-1 / power);

  const contour = (cos: number, sin: number): Vec3 => {
    const r = superellipse(cos, sin, sin >= 0 ? 2.25 : 2.05);
    const height =
      (sin >= 0 ? 0.3 : 0.42) * sin * sin + (cos >= 0 ? k.contactMesial : k.contactDistal) * cos * cos;
    return [half * r * cos, (sin >= 0 ? facialMost : palatalMost) * r * sin, height * length];
  };
  const ridge = (cos: number, sin: number): Vec3 => {
    const r = superellipse(cos, sin, 2.15);
    const facial = sin >= 0;
    const cusp = facial ? length : length - form.palatalShorter;
    const margin = length - (cos >= 0 ? form.ridgeMesial : form.ridgeDistal);
    const e = form.tip;
    const fall = (Math.sqrt(cos * cos + e * e) - e) / (Math.sqrt(1 + e * e) - e);
    const notch = cos > 0 ? form.mesialGroove * Math.max(0, 1 - ((sin + 0.2) / 0.35) ** 2) ** 3 : 0;
    const inset = facial ? 0.9 : 1.1;
    return [
      (half - inset) * r * cos + (facial ? 0 : form.palatalMesial * sin * sin),
      (facial ? tipY : palatalTipY) * r * sin,
      cusp + (margin - cusp) * fall - notch,
    ];
  };
  const groove = (cos: number): Vec3 => {
    const x = form.grooveLength * half * cos;
    return [x, -0.15, length - form.groove - (form.pits - form.groove) * cos * cos];
  };

  return (v, angle) => {
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    const c = contour(cos, sin);
    const join = (t: number, p: Vec3, q: Vec3, dp: Vec3, dq: Vec3): Vec3 => [
      hermite(t, p[0], q[0], dp[0], dq[0]),
      hermite(t, p[1], q[1], dp[1], dq[1]),
      hermite(t, p[2], q[2], dp[2], dq[2]),
    ];
    if (v <= CONTOUR_AT) {
      const foot: Vec3 = [(n.cervixWidth / 2) * cos, (n.cervixDepth / 2) * sin, cejHeight(n, cos)];
      const t = v / CONTOUR_AT;
      const rise = c[2] - foot[2];
      const p = join(t, foot, c, [1.7 * (c[0] - foot[0]), 1.7 * (c[1] - foot[1]), 0.9 * rise], [0, 0, rise]);
      const hollow = cos > 0 ? form.mesialHollow * cos ** 8 * Math.sin(Math.PI * t) ** 2 : 0;
      return [p[0] - hollow, p[1], p[2]];
    }
    const top = ridge(cos, sin);
    const g = groove(cos);
    const inward: Vec3 = [g[0] - top[0], g[1] - top[1], 0];
    const reach = Math.hypot(inward[0], inward[1]);
    const over = (mm: number): Vec3 => [(inward[0] / reach) * mm, (inward[1] / reach) * mm, 0];
    if (v <= RIDGE_AT) {
      const t = (v - CONTOUR_AT) / (RIDGE_AT - CONTOUR_AT);
      const rise = top[2] - c[2];
      return join(t, c, top, [0, 0, 1.1 * rise], over(1.3));
    }
    const t = (v - RIDGE_AT) / (1 - RIDGE_AT);
    // Along the cusps' own meridians the inner slope stands out as a triangular ridge; between them it is hollowed.
    const between = clamp(4 * cos * cos * sin * sin, 0, 1);
    const fullness = 1 - 0.7 * smoothstep(Math.abs(cos), 0.05, 0.75);
    const drop = g[2] - top[2];
    return join(t, top, g, over(0.8 + 0.6 * fullness), [
      inward[0] * (0.9 + 0.4 * between),
      inward[1] * (0.9 + 0.4 * between),
      drop * (0.5 + 0.9 * fullness),
    ]);
  };
}
