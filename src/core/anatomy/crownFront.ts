import { cubicSpline, hermite } from '../geometry/spline.ts';
import { smoothstep, type Vec3 } from '../geometry/vec.ts';
import type { FrontForm, Knots, Relief, SideForm } from './crownForm.ts';
import { EDGE_FACIAL } from './landmarks.ts';
import type { ToothNumbers } from './site.ts';

/** A point of a crown's wall: `v` runs from the CEJ (0) to the edge (1), the angle from mesial (0) over facial (90°). */
export type CrownWall = (v: number, angle: number) => Vec3;

const spline = (knots: Knots): ((v: number) => number) =>
  cubicSpline(
    knots.map((k) => k[0]),
    knots.map((k) => k[1]),
  );

/** `(1 − u²)³` inside, 0 outside; flat: `(1 − u⁴)³`, a level floor with steeper flanks. */
function bump(u: number, flat = false): number {
  const w = 1 - (flat ? u ** 4 : u * u);
  return w > 0 ? w * w * w : 0;
}

const reliefAt = (list: readonly Relief[], across: number, up: number): number => {
  let sum = 0;
  for (const r of list)
    sum += r.height * bump((across - r.across) / r.halfAcross, r.flat) * bump((up - r.up) / r.halfUp);
  return sum;
};

/** Half-width of one side of the facial outline over the height `z` of the tooth's flank, mm. */
function outline(form: SideForm, n: ToothNumbers, cej: number): (z: number) => number {
  const neck = n.cervixWidth / 2;
  const half = n.crownWidth / 2;
  const contact = form.contact * n.crownLength;
  const end = n.crownLength - form.fall;
  const inner = half - form.corner;
  return (z) => {
    if (z <= contact) {
      const t = (z - cej) / (contact - cej);
      return hermite(t, neck, half, form.flare * (half - neck), 0);
    }
    const t = Math.min(1, (z - contact) / (end - contact));
    if (form.power === null) {
      const slope = (-inner / form.fall) * (end - contact);
      return hermite(t, half, inner, 0, Math.max(slope, -2.6 * form.corner));
    }
    return inner + form.corner * (1 - t ** form.power) ** (1 / form.power);
  };
}

/** How far the edge has fallen at a share of the half-width: 0 at the tip, 1 at the end, straight between, round at the tip. */
const fallen = (across: number, round: number): number =>
  (Math.sqrt(across * across + round * round) - round) / (Math.sqrt(1 + round * round) - round);

/**
 * Wall of an incisor or canine in tooth coordinates (rule S7): every ring is a superellipse between the facial outline and
 * the facial and palatal profiles, carved by the reliefs, bent to the CEJ at its foot and to the edge at its top.
 */
export function frontWall(form: FrontForm, n: ToothNumbers): CrownWall {
  const length = n.crownLength;
  const neck = n.cervixDepth / 2;
  const facialMost = neck + form.facialShare * (n.crownDepth - n.cervixDepth);
  const palatalMost = facialMost - n.crownDepth;
  const facialEdge = EDGE_FACIAL + form.edge / 2;
  const palatalEdge = EDGE_FACIAL - form.edge / 2;
  const sides = [
    { form: form.mesial, cej: n.cejCurveMesial, at: outline(form.mesial, n, n.cejCurveMesial) },
    { form: form.distal, cej: n.cejCurveDistal, at: outline(form.distal, n, n.cejCurveDistal) },
  ];
  const facialPower = spline(form.facialPower);
  const palatalPower = spline(form.palatalPower);
  const start = (palatalEdge + neck) / (palatalEdge - palatalMost);
  const palatalShare = spline([[0, start], ...form.palatal.slice(1)]);
  const facialProfile = (v: number): number => {
    const rise = form.facialContour;
    if (v < rise) {
      const t = v / rise;
      return neck + (facialMost - neck) * t * (2 - t);
    }
    const t = (v - rise) / (1 - rise);
    const k = form.facialTurn;
    return facialMost - ((facialMost - facialEdge) * t * t * (1 + k)) / (k + t);
  };
  const palatalProfile = (v: number): number => palatalEdge - (palatalEdge - palatalMost) * palatalShare(v);

  const tipAt = form.tipMesial / (n.crownWidth / 2 - form.mesial.corner);
  /** How far the edge has fallen at a signed share of the half-width, + mesial, mm. */
  const edgeFall = (signed: number): number =>
    signed >= tipAt
      ? form.mesial.fall * fallen((signed - tipAt) / (1 - tipAt), form.tip)
      : form.distal.fall * fallen((tipAt - signed) / (1 + tipAt), form.tip);

  return (v, angle) => {
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    const { form: s, cej, at } = sides[cos >= 0 ? 0 : 1];
    const power = sin >= 0 ? facialPower(v) : palatalPower(v);
    const r = (Math.abs(cos) ** power + Math.abs(sin) ** power) ** (-1 / power);
    const across = r * Math.abs(cos);
    const signed = across * Math.sign(cos);
    const z = length * v + cej * (1 - v) * across * across - edgeFall(signed) * v * v;
    const half = at(length * v + cej * (1 - v) - s.fall * v * v);
    const middle = EDGE_FACIAL * smoothstep(v, 0.35, 1);
    const up = z / length;
    const carved = smoothstep(v, 0, 0.15);
    const y =
      sin >= 0
        ? middle + (facialProfile(v) - middle) * r * sin + carved * reliefAt(form.facialRelief, signed, up)
        : middle + (middle - palatalProfile(v)) * r * sin - carved * reliefAt(form.palatalRelief, signed, up);
    const q = Math.max(0, 1 - (length * (1 - v)) / form.edgeRound);
    const thin = Math.sqrt(Math.max(0, 1 - q * q));
    const lean =
      sin < 0 ? form.cingulumDistal * sin * sin * (1 - smoothstep(v, 0.2, 0.7)) * smoothstep(v, 0, 0.12) : 0;
    return [signed * half - lean, EDGE_FACIAL + (y - EDGE_FACIAL) * (v === 1 ? 0 : thin === 1 ? 1 : thin), z];
  };
}
