import { Revolved } from '../geometry/revolve.ts';
import { type ImplantShape, totalLength } from './shape.ts';

/** Stations of the envelope, mm apical of the platform plane, and its radii there (rule S15); without the end face. */
export function envelopePolyline(shape: ImplantShape): { x: number[]; r: number[] } {
  const length = totalLength(shape);
  return {
    x: [0, shape.transmucosalLength, length - shape.taperLength, length],
    r: [
      shape.platformDiameter / 2,
      shape.implantedDiameter / 2,
      shape.implantedDiameter / 2,
      shape.apicalDiameter / 2,
    ],
  };
}

/** The envelope (thread crests) with its apical end face; stations in mm apical of the platform plane. */
export function envelopeOf(shape: ImplantShape): Revolved {
  const { x, r } = envelopePolyline(shape);
  return new Revolved([...x, x[3]], [...r, 0]);
}

/**
 * The envelope cut into convex bodies, where its outline is hollow (below a flared neck): between two convex bodies a distance has one least place, so
 * that a search may start anywhere. The end face belongs to the last.
 */
export function envelopeParts(shape: ImplantShape): Revolved[] {
  const { x, r } = envelopePolyline(shape);
  const slope = (i: number) => (x[i + 1] > x[i] ? (r[i + 1] - r[i]) / (x[i + 1] - x[i]) : null);
  const parts: { x: number[]; r: number[] }[] = [{ x: [x[0]], r: [r[0]] }];
  let before: number | null = null;
  for (let i = 0; i + 1 < x.length; i++) {
    const s = slope(i);
    if (s === null) continue;
    if (before !== null && s > before + 1e-12) parts.push({ x: [x[i]], r: [r[i]] });
    parts[parts.length - 1].x.push(x[i + 1]);
    parts[parts.length - 1].r.push(r[i + 1]);
    before = s;
  }
  const last = parts[parts.length - 1];
  last.x.push(x[3]);
  last.r.push(0);
  return parts.map((p) => new Revolved(p.x, p.r));
}

/** The apical third of the implanted length, with the end face. */
export function apicalThird(shape: ImplantShape): Revolved {
  const { x, r } = envelopePolyline(shape);
  const from = x[3] - shape.implantedLength / 3;
  const whole = new Revolved(x, r);
  const keep = x.map((v, i) => [v, r[i]] as const).filter(([v]) => v > from);
  return new Revolved(
    [from, ...keep.map((k) => k[0]), x[3]],
    [whole.radius(from), ...keep.map((k) => k[1]), 0],
  );
}

/** Height of the shoulder's rim above the platform plane at an azimuth from the index mark, radians → mm (rule S15). */
export function rimHeight(shape: ImplantShape, azimuth: number): number {
  return shape.scallop === 0 ? 0 : (shape.scallop * (1 - Math.cos(2 * azimuth))) / 2;
}
