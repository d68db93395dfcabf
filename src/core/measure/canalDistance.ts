import { gridMinimum } from '../geometry/compass.ts';
import { axisFrame } from '../geometry/pose.ts';
import { along, scale, type Vec3 } from '../geometry/vec.ts';
import type { Placement } from './placement.ts';
import { deepest } from './rootDistance.ts';
import type { Clearance } from './sheetDistance.ts';

/** Envelope to the canal's tube (rule M10), negative: greatest depth inside. Site frame, mm. */
export function envelopeToCanal(at: Placement): Clearance {
  const { canal } = at.anatomy;
  const { ef, em } = axisFrame(scale(canal.run, -1));
  const wall = (x: number, phi: number): Vec3 =>
    along(
      along(along(canal.mouth, canal.run, x), ef, canal.body.radius(x) * Math.cos(phi)),
      em,
      canal.body.radius(x) * Math.sin(phi),
    );
  const value = (phi: number, x: number): number => {
    if (x < 0 || x > canal.length) return Infinity;
    return at.signed(at.envelope, wall(x, phi));
  };
  const rows = 9;
  const best = gridMinimum(
    value,
    12,
    rows,
    (i) => (Math.PI * i) / 6,
    (j) => (canal.length * j) / (rows - 1),
    0.35,
    1 / 1024,
  );
  const place = best ?? { x: 0, y: 0, value: 0 };
  const to = wall(place.y, place.x);
  const near: Clearance = { value: value(place.x, place.y), from: at.footOf(at.envelope, to), to };
  if (near.value > 0) return near;
  return deepest(at, (p) => -canal.distance(p)) ?? { ...near, value: 0 };
}
