import { hermite } from '../geometry/spline.ts';
import { clamp, smoothstep, type Vec3 } from '../geometry/vec.ts';
import { CLASS_NUMBERS, CUSP_FACIAL } from './landmarks.ts';
import { cejHeight } from './root-mesh.ts';
import type { ToothNumbers } from './site.ts';

/** What tells the two upper premolars apart; proportions of carving texts, from memory, then by eye. mm below the facial cusp. */
interface PremolarForm {
  /** How much shorter the palatal cusp is, and how far mesially its tip stands. */
  readonly palatalShorter: number;
  readonly palatalMesial: number;
  readonly ridgeMesial: number;
  readonly ridgeDistal: number;
  readonly groove: number;
  /** How steeply the cusps' ridges fall to mesial and distal, and how round the tips are. */
  readonly cuspFall: number;
  readonly tipRound: number;
  /** Depth of the groove across the mesial marginal ridge and of the hollow below the mesial contact. */
  readonly mesialGroove: number;
  readonly mesialHollow: number;
}

const FORMS: Readonly<Record<'premolar1' | 'premolar2', PremolarForm>> = {
  premolar1: {
    palatalShorter: 1,
    palatalMesial: 0.45,
    ridgeMesial: 2.15,
    ridgeDistal: 2,
    groove: 3,
    cuspFall: 0.56,
    tipRound: 0.4,
    mesialGroove: 0.22,
    mesialHollow: 0.2,
  },
  premolar2: {
    palatalShorter: 0.4,
    palatalMesial: 0.35,
    ridgeMesial: 1.8,
    ridgeDistal: 1.85,
    groove: 2.6,
    cuspFall: 0.52,
    tipRound: 0.6,
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
/** Palatal cusp tip: share of the crown's depth palatally of the axis. */
const CUSP_PALATAL = 0.26;

/** Maximum with its corner rounded over `k`: exact where the two differ by more. */
function smoothMax(a: number, b: number, k: number): number {
  const h = Math.max(k - Math.abs(a - b), 0) / k;
  return Math.max(a, b) + (h * h * k) / 4;
}

/** `max(u, 0)` with its corner rounded over about `e`. */
const ramp = (u: number, e: number): number => (u + Math.sqrt(u * u + e * e)) / 2;

/** Half-width over height: neck → widest at `zMost` → `inner` at `zTop` and on inwards. */
function profile(z0: number, neck: number, zMost: number, most: number, zTop: number, inner: number) {
  return (z: number): number => {
    if (z <= zMost) return hermite((z - z0) / (zMost - z0), neck, most, 1.9 * (most - neck), 0);
    const t = (z - zMost) / (zTop - zMost);
    return Math.max(0.3 * inner, most - (most - inner) * t * t);
  };
}

/** An upper premolar as a solid: its outer wall cut, with rounded edges, by the relief of its chewing surface. */
export interface PremolarSolid {
  /** Point of the wall at an angle from mesial (90° facial) and a share of the height from CEJ to where the relief begins. */
  readonly wall: (share: number, angle: number) => Vec3;
  /** Distance from `inside` along a unit direction to the surface above the wall; quicker with the distance of a ray close by. */
  readonly meet: (direction: Vec3, guess?: number) => number;
  readonly inside: Vec3;
}

/** The form's numbers are those of a crown of the table's length; another crown's grow with it. */
const TABLE_LENGTH = 8.5;

/** How far a guessed distance may be off to be of use, mm. */
const NEAR = 0.4;

/** Root of `f`, negative at `lo` and positive at `hi`: false position (Illinois), to about 1e-7. */
function rootOf(f: (t: number) => number, lo: number, hi: number): number {
  let [a, b] = [lo, hi];
  let [fa, fb] = [f(a), f(b)];
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
  const flanks = [
    profile(n.cejCurveMesial, halfNeck, k.contactMesial * length, half, length, 0.52 * half),
    profile(n.cejCurveDistal, halfNeck, k.contactDistal * length, half, length, 0.52 * half),
  ];
  const reach = 0.2 * length;
  return (cos: number, sin: number, zAcross: number, zFlank: number): number => {
    const x = flanks[cos >= 0 ? 0 : 1](zFlank);
    const y = (sin >= 0 ? facial : palatal)(zAcross);
    const bulge = smoothstep(zAcross, 0, 0.4 * length);
    const boxy = smoothstep(zAcross, 0.35 * length, 0.9 * length);
    const power = 2 + (sin >= 0 ? 0.3 * bulge + 0.85 * boxy : 0.1 * bulge + 0.3 * boxy);
    const off = (zFlank - n.cejCurveMesial) / reach - 1;
    const hollow = cos > 0 && Math.abs(off) < 1 ? form.mesialHollow * cos ** 8 * (1 - off * off) ** 2 : 0;
    return (Math.abs(cos / (x - hollow)) ** power + Math.abs(sin / y) ** power) ** (-1 / power);
  };
}

/** Height of the chewing surface: the highest of two cusps and two marginal ridges, their valleys rounded. */
function chewingSurface(form: PremolarForm, n: ToothNumbers) {
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
  const marginal = (level: number, x: number, y: number): number =>
    length - level - 0.07 * y * y - 0.9 * ramp(crest - x, 0.6);
  return (x: number, y: number, facialPeak: number, palatalPeak: number): number => {
    const lean = form.palatalMesial * smoothstep(-y, 0, palatalTip);
    const cusps = smoothMax(
      cusp(facialPeak, facialTip, x, y, facialTip - GROOVE_Y),
      cusp(palatalPeak, palatalTip, x - lean, -y, palatalTip + GROOVE_Y),
      VALLEY,
    );
    const notch = form.mesialGroove * Math.max(0, 1 - ((y + 0.3) / 0.9) ** 2) ** 2;
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
  const radius = wallRadius(form, n, cls);
  const surface = chewingSurface(form, n);
  let facialPeak = length;
  let palatalPeak = length - form.palatalShorter;
  /** Negative inside; near the surface about the distance to it. Ridges are rounder at the cusps than at the marginal ridges. */
  const field = (x: number, y: number, z: number): number => {
    const rho = Math.hypot(x, y) || 1e-9;
    const round = RIDGE * (1 - 0.5 * smoothstep(Math.abs(x), 0.2 * n.crownWidth, 0.4 * n.crownWidth));
    const relief = 0.72 * (z - surface(x, y, facialPeak, palatalPeak));
    return smoothMax(rho - radius(x / rho, y / rho, z, z), relief, round);
  };
  const meet = (from: Vec3, d: Vec3, guess?: number): number => {
    const f = (t: number): number => field(from[0] + t * d[0], from[1] + t * d[1], from[2] + t * d[2]);
    if (guess !== undefined && f(guess - NEAR) < 0 && f(guess + NEAR) > 0)
      return rootOf(f, guess - NEAR, guess + NEAR);
    return rootOf(f, 0, 1.2 * length);
  };
  // The rounding takes a little off both cusps: give it back, so that the tips stand at their heights.
  const low = 0.45 * length;
  for (let i = 0; i < 8; i++) {
    facialPeak += length - low - meet([0, CUSP_FACIAL * n.crownDepth, low], [0, 0, 1]);
    const palatal = low + meet([form.palatalMesial, -CUSP_PALATAL * n.crownDepth, low], [0, 0, 1]);
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
      return [r * cos, r * sin, z];
    },
    meet: (d, guess) => meet(inside, d, guess),
  };
}
