import { hermite } from '../geometry/spline.ts';
import { clamp, smoothstep, type Vec3 } from '../geometry/vec.ts';
import { CLASS_NUMBERS, CUSP_FACIAL } from './landmarks.ts';
import { cejHeight } from './root-mesh.ts';
import type { ToothNumbers } from './site.ts';

/** What tells the two upper premolars apart; proportions of carving texts, from memory, then by eye. mm below the facial cusp. */
interface PremolarForm {
  readonly palatalShorter: number;
  readonly ridgeMesial: number;
  readonly ridgeDistal: number;
  readonly groove: number;
  /** Inner slope of the marginal ridges: the steeper, the longer the central groove between the pits. */
  readonly ridgeSlope: number;
  /** How steeply the cusps' ridges fall to mesial and distal, and how round the tips are. */
  readonly cuspFall: number;
  readonly tipRound: number;
  /** How far mesially the palatal half is drawn, and by what share it is narrower than the facial one. */
  readonly palatalMesial: number;
  readonly taper: number;
  /** How square the facial half stands over its line angles, added to the section's power. */
  readonly square: number;
  /** Depth of the groove across the mesial marginal ridge and of the hollow below the mesial contact. */
  readonly mesialGroove: number;
  readonly mesialHollow: number;
}

const FORMS: Readonly<Record<'premolar1' | 'premolar2', PremolarForm>> = {
  premolar1: {
    palatalShorter: 1,
    ridgeMesial: 1.95,
    ridgeDistal: 2.2,
    groove: 3.1,
    ridgeSlope: 2,
    cuspFall: 0.65,
    tipRound: 0.35,
    palatalMesial: 0.65,
    taper: 0.12,
    square: 1,
    mesialGroove: 0.45,
    mesialHollow: 0.4,
  },
  premolar2: {
    palatalShorter: 0.4,
    ridgeMesial: 1.6,
    ridgeDistal: 1.8,
    groove: 2.6,
    ridgeSlope: 0.6,
    cuspFall: 0.48,
    tipRound: 0.9,
    palatalMesial: 0.45,
    taper: 0.02,
    square: 0.35,
    mesialGroove: 0,
    mesialHollow: 0,
  },
};

const scaled = (f: PremolarForm, by: number): PremolarForm => ({
  ...f,
  palatalShorter: f.palatalShorter * by,
  ridgeMesial: f.ridgeMesial * by,
  ridgeDistal: f.ridgeDistal * by,
  groove: f.groove * by,
});

/** Central groove, a little palatal of the axis; its grain, the rounding of ridges against the wall, mm. */
const GROOVE_Y = -0.15;
const VALLEY = 0.22;
const RIDGE = 0.9;
const TRIANGULAR = 0.3;
/** Where the groove across the mesial marginal ridge runs, and its half-width, mm. */
const NOTCH_Y = -0.5;
const NOTCH = 0.85;
/** Palatal cusp tip: share of the crown's depth palatally of the axis. */
const CUSP_PALATAL = 0.26;

/** Maximum with its corner rounded over `k`: exact where the two differ by more. */
function smoothMax(a: number, b: number, k: number): number {
  const h = Math.max(k - Math.abs(a - b), 0) / k;
  return Math.max(a, b) + (h * h * k) / 4;
}

/** `max(u, 0)` with its corner rounded over about `e`. */
const ramp = (u: number, e: number): number => (u + Math.sqrt(u * u + e * e)) / 2;

/** Half-width over height: neck → widest at `zMost` → `inner` at `zTop` and on inwards to `least`. */
function profile(
  z0: number,
  neck: number,
  zMost: number,
  most: number,
  zTop: number,
  inner: number,
  least = 0.3 * inner,
) {
  return (z: number): number => {
    if (z <= zMost) return hermite((z - z0) / (zMost - z0), neck, most, 1.9 * (most - neck), 0);
    const t = (z - zMost) / (zTop - zMost);
    return Math.max(least, most - (most - inner) * t * t);
  };
}

/** An upper premolar as a solid: its outer wall cut, with rounded edges, by the relief of its chewing surface. */
export interface PremolarSolid {
  /** Point of the wall at an angle from mesial (90° facial) and a share of the height from CEJ to where the relief begins. */
  readonly wall: (share: number, angle: number) => Vec3;
  /** Distance from `inside` along a unit direction to the surface above the wall; quicker with the distance of a ray close by. */
  readonly meet: (direction: Vec3, guess?: number) => number;
  readonly inside: Vec3;
  /** Height of the chewing surface over a place beside the axis. */
  readonly height: (x: number, y: number) => number;
  /** The way from a point along a unit direction out through the surface, + or −; 0 where that is not within {@link NEAR}, or down on the wall. */
  readonly onto: (p: Vec3, direction: Vec3) => number;
}

/** The form's numbers are those of a crown of the table's length; another crown's grow with it. */
const TABLE_LENGTH = 8.5;

/** How far a guessed distance may be off to be of use, mm. */
const NEAR = 0.4;

/** Root of `f`, which is `fLo`, negative, at `lo` and `fHi`, positive, at `hi`: false position (Illinois), to about 1e-7. */
function rootOf(f: (t: number) => number, lo: number, hi: number, fLo = f(lo), fHi = f(hi)): number {
  let [a, b, fa, fb] = [lo, hi, fLo, fHi];
  for (let i = 0; i < 40 && b - a > 1e-7; i++) {
    const t = (a * fb - b * fa) / (fb - fa);
    const ft = f(t);
    if (Math.abs(ft) < 1e-7) return t;
    if (ft > 0) {
      [b, fb] = [t, ft];
      fa /= 2;
    } else {
      [a, fa] = [t, ft];
      fb /= 2;
    }
  }
  return (a + b) / 2;
}

/** How far the palatal half is drawn mesially at a height, mm: nothing at the neck and facially of the axis. */
const drawn = (form: PremolarForm, n: ToothNumbers, y: number, z: number): number =>
  form.palatalMesial *
  smoothstep(-y, 0.3, 0.45 * n.crownDepth) *
  smoothstep(z, Math.max(n.cejCurveMesial, n.cejCurveDistal), 0.5 * n.crownLength);

/** Outer wall: polar radius at a direction, with the facial or palatal half-width and the flank's taken each at its own height. */
function wallRadius(form: PremolarForm, n: ToothNumbers, cls: 'premolar1' | 'premolar2') {
  const k = CLASS_NUMBERS[cls];
  const length = n.crownLength;
  const half = n.crownWidth / 2;
  const [halfNeck, neck] = [n.cervixWidth / 2, n.cervixDepth / 2];
  const grown = n.crownDepth - n.cervixDepth;
  const [facialMost, palatalMost] = [neck + 0.45 * grown, neck + 0.55 * grown];
  const top = length - form.palatalShorter;
  const facial = profile(0, neck, 0.3 * length, facialMost, length, CUSP_FACIAL * n.crownDepth + 0.55);
  const palatal = profile(0, neck, 0.42 * length, palatalMost, top, CUSP_PALATAL * n.crownDepth + 0.5);
  const flankTop = 0.94 * length;
  const flanks = [
    profile(n.cejCurveMesial, halfNeck, k.contactMesial * length, half, flankTop, 0.55 * half, 0.5 * half),
    profile(n.cejCurveDistal, halfNeck, k.contactDistal * length, half, flankTop, 0.55 * half, 0.5 * half),
  ];
  const reach = 0.24 * length;
  return (cos: number, sin: number, zAcross: number, zFlank: number): number => {
    const bulge = smoothstep(zAcross, 0, 0.4 * length);
    const boxy = smoothstep(zAcross, 0.35 * length, 0.9 * length);
    const x = flanks[cos >= 0 ? 0 : 1](zFlank) * (sin < 0 ? 1 - form.taper * sin * sin * boxy : 1);
    const y = (sin >= 0 ? facial : palatal)(zAcross);
    const power = 2 + (sin >= 0 ? 0.3 * bulge + form.square * boxy : 0.1 * bulge + 0.3 * boxy);
    const off = (zFlank - n.cejCurveMesial) / reach - 1;
    const hollow = cos > 0 && Math.abs(off) < 1 ? form.mesialHollow * cos ** 8 * (1 - off * off) ** 2 : 0;
    return (Math.abs(cos / (x - hollow)) ** power + Math.abs(sin / y) ** power) ** (-1 / power);
  };
}

/** Height of the chewing surface: the highest of two cusps and two marginal ridges, their valleys rounded. */
function chewingSurface(form: PremolarForm, n: ToothNumbers, tipMesial: number) {
  const length = n.crownLength;
  const crest = n.crownWidth / 2 - 0.85;
  const facialTip = CUSP_FACIAL * n.crownDepth;
  const palatalTip = CUSP_PALATAL * n.crownDepth;
  /** One cusp as a roof: a triangular ridge down to the groove, falling away to mesial and distal. */
  const cusp = (peak: number, tip: number, x: number, outward: number, reach: number): number => {
    const e = form.tipRound;
    const slope = (peak - (length - form.groove)) / reach;
    const u = clamp((tip - outward) / reach, 0, 1);
    const triangular = TRIANGULAR * Math.sin(Math.PI * u) ** 2 * Math.exp(-((x / 0.75) ** 2));
    const fall = form.cuspFall * (Math.sqrt(x * x + e * e) - e);
    return peak + triangular - fall - slope * ramp(tip - outward, 0.5);
  };
  /** One marginal ridge: bowed inward toward the cusps and rising to them. */
  const marginal = (level: number, x: number, y: number): number => {
    const bow = Math.min(y * y, 6);
    return length - level + 0.11 * bow - form.ridgeSlope * ramp(crest - 0.06 * bow - x, 0.6);
  };
  return (x: number, y: number, facialPeak: number, palatalPeak: number): number => {
    const cusps = smoothMax(
      cusp(
        facialPeak,
        facialTip,
        x - tipMesial * smoothstep(y, GROOVE_Y, facialTip),
        y,
        facialTip - GROOVE_Y,
      ),
      cusp(palatalPeak, palatalTip, x, -y, palatalTip + GROOVE_Y),
      VALLEY,
    );
    const notch = form.mesialGroove * Math.max(0, 1 - ((y - NOTCH_Y) / NOTCH) ** 2) ** 2;
    const ridges = smoothMax(
      marginal(form.ridgeMesial + notch, x, y),
      marginal(form.ridgeDistal, -x, y),
      VALLEY,
    );
    return smoothMax(cusps, ridges, 3 * VALLEY);
  };
}

/** In tooth coordinates (rule S7), mm. */
export function premolarSolid(cls: 'premolar1' | 'premolar2', n: ToothNumbers): PremolarSolid {
  const length = n.crownLength;
  const form = scaled(FORMS[cls], length / TABLE_LENGTH);
  const { tipMesial } = CLASS_NUMBERS[cls];
  const radius = wallRadius(form, n, cls);
  const surface = chewingSurface(form, n, tipMesial);
  let facialPeak = length;
  let palatalPeak = length - form.palatalShorter;
  /** Negative inside; near the surface about the distance to it. Ridges are rounder at the cusps than at the marginal ridges. */
  const field = (px: number, y: number, z: number): number => {
    const x = px - drawn(form, n, y, z);
    const rho = Math.hypot(x, y) || 1e-9;
    const round = RIDGE * (1 - 0.3 * smoothstep(Math.abs(x), 0.2 * n.crownWidth, 0.4 * n.crownWidth));
    const relief = 0.72 * (z - surface(x, y, facialPeak, palatalPeak));
    return smoothMax(rho - radius(x / rho, y / rho, z, z), relief, round);
  };
  const meet = (from: Vec3, d: Vec3, guess?: number): number => {
    const f = (t: number): number => field(from[0] + t * d[0], from[1] + t * d[1], from[2] + t * d[2]);
    if (guess !== undefined) {
      const [lo, hi] = [f(guess - NEAR), f(guess + NEAR)];
      if (lo < 0 && hi > 0) return rootOf(f, guess - NEAR, guess + NEAR, lo, hi);
    }
    return rootOf(f, 0, 1.2 * length);
  };
  // The rounding takes a little off both cusps: give it back, so that the tips stand at their heights.
  const low = 0.45 * length;
  const palatalY = -CUSP_PALATAL * n.crownDepth;
  for (let i = 0; i < 8; i++) {
    facialPeak += length - low - meet([tipMesial, CUSP_FACIAL * n.crownDepth, low], [0, 0, 1]);
    const palatal = low + meet([drawn(form, n, palatalY, length), palatalY, low], [0, 0, 1]);
    palatalPeak += length - form.palatalShorter - palatal;
  }

  const inside: Vec3 = [0, GROOVE_Y, 0.32 * length];
  const [acrossTop, flankTop] = [0.36 * length, 0.62 * length];
  return {
    inside,
    wall: (share, angle) => {
      const [a, b] = [n.cervixWidth * Math.cos(angle), n.cervixDepth * Math.sin(angle)];
      const [cos, sin] = [a / Math.hypot(a, b), b / Math.hypot(a, b)];
      const foot = cejHeight(n, Math.cos(angle));
      const z = foot + (acrossTop * sin * sin + flankTop * cos * cos - foot) * share;
      const curve = cos >= 0 ? n.cejCurveMesial : n.cejCurveDistal;
      // At the foot each half-width stands at its own end of the curved ring; at the top both stand at the point's height.
      const w = smoothstep(share, 0, 1);
      const zAcross = (1 - w) * acrossTop * share + w * z;
      const zFlank = (1 - w) * (curve + (flankTop - curve) * share) + w * z;
      const r = radius(cos, sin, zAcross, zFlank);
      return [r * cos + drawn(form, n, r * sin, z), r * sin, z];
    },
    meet: (d, guess) => meet(inside, d, guess),
    onto: (p, d) => {
      const f = (t: number): number => field(p[0] + t * d[0], p[1] + t * d[1], p[2] + t * d[2]);
      return p[2] > flankTop && f(-NEAR) < 0 && f(NEAR) > 0 ? rootOf(f, -NEAR, NEAR) : 0;
    },
    height: (x, y) => low + meet([x, y, low], [0, 0, 1]),
  };
}
