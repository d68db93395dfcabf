import type { Anatomy } from '../anatomy/anatomy.ts';
import type { Void } from '../drilling/bodies.ts';
import type { Interval } from '../geometry/interval.ts';
import { along, type Vec3 } from '../geometry/vec.ts';
import type { Placement } from '../measure/placement.ts';

/** What lies at a point of the envelope (rule T1). Only `press` and `solid` are contact. */
export const CELL = {
  /** No bone here, drilled or not: outside the ridge, under the floor, in the socket, in the canal. */
  none: 0,
  /** In the hole; the hole's surface outward of it is bone. */
  gap: 1,
  /** In the hole; where the hole ends outward there is no bone: it has broken out. */
  open: 2,
  /** In bone; inward of it lies the hole. */
  press: 3,
  /** In bone, and no hole between the axis and here: undrilled. */
  solid: 4,
} as const;

/** How fine the envelope is looked at: stations along it (about, its corners are always among them) and azimuths (even). */
export interface GridSize {
  readonly rows: number;
  readonly columns: number;
}

export const CONTACT_GRID: GridSize = { rows: 40, columns: 48 };

/**
 * The envelope from the platform plane to the apical rim as a grid of points, row by row from the platform, in each row from azimuth 0 (`ef`) toward
 * `em`; column `j` stands at `2π j / columns`. For drawing on the implant and for the chart. mm.
 */
export interface ContactGrid {
  readonly rows: number;
  readonly columns: number;
  /** Stations of the rows, apical of the platform plane, and the envelope's radii there. */
  readonly stations: Float64Array;
  readonly radii: Float64Array;
  /** Row of the last thread: rows from here on are threaded. */
  readonly threadFrom: number;
  /** {@link CELL} of each point. */
  readonly kinds: Uint8Array;
  /** + gap, − press, along the radial line; NaN where there is no bone. */
  readonly values: Float64Array;
}

/** A thread that only touches the hole's side, to this, holds nothing: a gap of 0, mm. */
export const TOUCH = 1e-6;
/** Past the hole's end by so much, what is there is what the gap ends in, mm. */
const BEYOND = 2 * TOUCH;

export const isContact = (kind: number): boolean => kind >= CELL.press;

/** Whether a point of the site frame is bone before anything is drilled (rule S14). `canal`: whether the canal may be near. */
export function isBone({ ridge, socket, canal }: Anatomy, p: Vec3, canalNear: boolean): boolean {
  if (p[2] < ridge.floor || ridge.solid(p[0], p[1], p[2]) > 0) return false;
  if (socket?.contains(p)) return false;
  return !canalNear || canal.distance(p) > 0;
}

/** Stations so that the corners of the envelope are among them: even steps between each two. */
function stationsOf({ shape, length }: Placement, rows: number): { stations: number[]; threadFrom: number } {
  const corners = [0, shape.transmucosalLength, length - shape.taperLength, length];
  const stations = [0];
  let threadFrom = 0;
  for (let i = 1; i < corners.length; i++) {
    const from = corners[i - 1];
    const run = corners[i] - from;
    if (run > 1e-9) {
      const steps = Math.max(1, Math.round((rows * run) / length));
      for (let k = 1; k <= steps; k++) stations.push(from + (run * k) / steps);
    }
    if (i === 1) threadFrom = stations.length - 1;
  }
  return { stations, threadFrom };
}

/** The envelope against the hole, point by point (rule T1). One question to the hole for every two points that face each other. */
export function contactGrid(at: Placement, hole: Void, size: GridSize = CONTACT_GRID): ContactGrid {
  const { stations: places, threadFrom } = stationsOf(at, size.rows);
  const columns = 2 * Math.ceil(size.columns / 2);
  const rows = places.length;
  const stations = Float64Array.from(places);
  const radii = stations.map((x) => at.envelope.radius(x));
  const kinds = new Uint8Array(rows * columns);
  const values = new Float64Array(rows * columns);
  const half = columns / 2;
  const across = Array.from({ length: half }, (_, j) => at.across((2 * Math.PI * j) / columns));
  for (let i = 0; i < rows; i++) {
    const axis = along(at.platform, at.a, -stations[i]);
    for (let j = 0; j < half; j++) {
      const parts = hole.stretches(axis, across[j]);
      for (const way of [1, -1] as const) {
        const k = i * columns + j + (way === 1 ? 0 : half);
        kinds[k] = look(at, axis, across[j], way, radii[i], parts, values, k);
      }
    }
  }
  return { rows, columns, stations, radii, threadFrom, kinds, values };
}

/** One point, `way` along the line from the axis or against it: its kind; its value goes to `values[k]`. */
function look(
  at: Placement,
  axis: Vec3,
  v: Vec3,
  way: 1 | -1,
  r: number,
  parts: readonly NonNullable<Interval>[],
  values: Float64Array,
  k: number,
): number {
  values[k] = Number.NaN;
  const { anatomy, canalTouches } = at;
  if (!isBone(anatomy, along(axis, v, way * r), canalTouches)) return CELL.none;
  let inner = 0;
  for (const part of parts) {
    const from = way === 1 ? part[0] : -part[1];
    const to = way === 1 ? part[1] : -part[0];
    if (from <= r && r < to + TOUCH) {
      values[k] = Math.max(0, to - r);
      const end = along(axis, v, way * (to + BEYOND));
      return isBone(anatomy, end, at.canalNear) ? CELL.gap : CELL.open;
    }
    if (to <= r && to > inner) inner = to;
  }
  values[k] = inner - r;
  return inner > 0 ? CELL.press : CELL.solid;
}

/** Halvings of an edge of the grid on which contact begins or ends otherwise than by the hole's side. */
const HALVINGS = 5;

/**
 * How far along the edge from point `a` to point `b` of the grid contact begins or ends, as a share of it. Between gap and press the values say it in a
 * straight line; at a crest, a floor, a void the edge is halved.
 */
export function crossingShare(
  at: Placement,
  hole: Void,
  grid: ContactGrid,
  a: readonly [row: number, column: number],
  b: readonly [row: number, column: number],
): number {
  const { columns, kinds, values, stations } = grid;
  const ka = a[0] * columns + (a[1] % columns);
  const kb = b[0] * columns + (b[1] % columns);
  const beside = (k: number) => kinds[k] === CELL.press || kinds[k] === CELL.gap || kinds[k] === CELL.open;
  if (beside(ka) && beside(kb)) return values[ka] / (values[ka] - values[kb]);
  const touches = (w: number): boolean => {
    const x = stations[a[0]] + w * (stations[b[0]] - stations[a[0]]);
    const p = at.surface(at.tP + x, (2 * Math.PI * (a[1] + w * (b[1] - a[1]))) / columns);
    return isBone(at.anatomy, p, at.canalTouches) && !hole.contains(p);
  };
  const first = isContact(kinds[ka]);
  let lo = 0;
  let hi = 1;
  for (let i = 0; i < HALVINGS; i++) {
    const mid = (lo + hi) / 2;
    if (touches(mid) === first) lo = mid;
    else hi = mid;
  }
  return (lo + hi) / 2;
}
