import { envelopePolyline, rimHeight } from '../core/implant/profile.ts';
import { type ImplantShape, totalLength } from '../core/implant/shape.ts';
import type { Point } from '../marks/path.ts';

/** Share of the pitch that a crest and a root of the thread are flat. */
const FLAT = 0.16;

/** Radius of the envelope at a station, mm apical of the platform plane. */
function envelopeRadius(shape: ImplantShape, station: number): number {
  const { x, r } = envelopePolyline(shape);
  const i = x.findIndex((next, k) => k > 0 && station <= next);
  if (i < 0) return r[r.length - 1];
  const span = x[i] - x[i - 1];
  return span === 0 ? r[i] : r[i - 1] + ((station - x[i - 1]) / span) * (r[i] - r[i - 1]);
}

/** One flank of the body from shoulder to apical rim: crests on the envelope, roots the thread's depth within. */
function flank(shape: ImplantShape, rim: number, phase: number): Point[] {
  const { transmucosalLength: from, thread } = shape;
  const to = totalLength(shape);
  const { pitch, depth } = thread;
  const points: Point[] = [
    { x: shape.platformDiameter / 2, y: -rim },
    { x: envelopeRadius(shape, from), y: from },
  ];
  const put = (station: number, drop: number) => {
    if (station > from && station < to) points.push({ x: envelopeRadius(shape, station) - drop, y: station });
  };
  for (let crest = from + phase - pitch; crest < to + pitch; crest += pitch) {
    put(crest - FLAT * pitch, 0);
    put(crest + FLAT * pitch, 0);
    put(crest + (0.5 - FLAT) * pitch, depth);
    put(crest + (0.5 + FLAT) * pitch, depth);
  }
  points.push({ x: shape.apicalDiameter / 2 - depth / 2, y: to });
  return points;
}

/**
 * The implant's silhouette in the section: `x` + facial of the axis, `y` apical of the platform plane, mm, with
 * the thread at half a turn's offset on the two sides. `roll` (radians) turns a scalloped shoulder.
 */
export function implantOutline(shape: ImplantShape, roll: number): Point[] {
  const { pitch, starts } = shape.thread;
  const facial = flank(shape, rimHeight(shape, -roll), 0);
  const palatal = flank(shape, rimHeight(shape, Math.PI - roll), ((starts * pitch) / 2) % pitch);
  return [...facial, ...palatal.reverse().map(({ x, y }) => ({ x: -x, y }))];
}

/** The shoulder's edge on the far (mesial) side, from palatal to facial; flat unless it is scalloped. */
export function shoulderEdge(shape: ImplantShape, roll: number): Point[] {
  const radius = shape.platformDiameter / 2;
  const steps = 24;
  return Array.from({ length: steps + 1 }, (_, i) => {
    const azimuth = (Math.PI * (steps - i)) / steps;
    return { x: radius * Math.cos(azimuth), y: -rimHeight(shape, azimuth - roll) };
  });
}

/** The post of a one-piece shape, from the platform plane up; empty where there is none. */
export function postOutline({ abutment }: ImplantShape): Point[] {
  if (!abutment) return [];
  const { height, baseDiameter, topDiameter } = abutment;
  return [
    { x: -baseDiameter / 2, y: 0 },
    { x: -topDiameter / 2, y: -height },
    { x: topDiameter / 2, y: -height },
    { x: baseDiameter / 2, y: 0 },
  ];
}
