import type { Opening } from '../geometry/grid.ts';
import { MeshBuilder, type Ring } from '../geometry/loft.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import { fallingRoot } from '../geometry/root.ts';
import { along, sub, type Vec3 } from '../geometry/vec.ts';
import type { RidgeShell } from './ridgeShell.ts';
import type { Socket } from './socket.ts';

/** Where the socket's wall and the sheet are at one angle round the socket's axis (0 mesial, π/2 facial). */
interface RimPoint {
  readonly angle: number;
  /** Height of the wall's upper end over the socket's centre, along its axis, mm. */
  readonly height: number;
  /** Parameters of the rim on the sheet. */
  readonly q: number;
  readonly v: number;
  /** The rim lies off the wall: a dehiscence's cut face is between them. */
  readonly cut: boolean;
}

/** The sheet of a shell as a grid: rows of `2 mid + 1` points, from the palatal edge over the crest to the facial one. */
export interface Sheet {
  readonly shell: RidgeShell;
  /** Arch places of the rows. */
  readonly rows: readonly number[];
  readonly mid: number;
  /** Each point's `v` on the shell, row by row. */
  readonly params: Float64Array;
  /** Three numbers each, site frame, mm. */
  readonly points: Float64Array;
}

/** The opening of a socket in a shell's grid: a rectangle of cells that is left out, and the rim in it. */
export interface Hole extends Opening {
  readonly socket: Socket;
  readonly rim: readonly RimPoint[];
  readonly centre: readonly [q: number, v: number];
}

const SAMPLES = 120;

/** Point of the void's wall (rule S11) at an angle and a height over the half-ellipsoid's top plane. */
function wallPoint(socket: Socket, angle: number, height: number): Vec3 {
  const [sa, sb, sl] = socket.semi;
  const r = height >= 0 ? 1 : Math.sqrt(Math.max(0, 1 - (height / sl) ** 2));
  const p = along(socket.centre, socket.em, sa * r * Math.cos(angle));
  return along(along(p, socket.ef, sb * r * Math.sin(angle)), socket.a, height);
}

/** Least bone left between the drawn wall and the sheet, mm: where the void breaks through the side of the ridge, that side stays closed. */
const SKIN = 0.04;

/** As {@link wallPoint}, drawn in toward the socket's axis where it would come through the sheet. */
function wallInside(socket: Socket, shell: RidgeShell, angle: number, height: number): Vec3 {
  const p = wallPoint(socket, angle, height);
  if (shell.solid(p) <= -SKIN) return p;
  const core = along(socket.centre, socket.a, height);
  if (shell.solid(core) > -SKIN) return core;
  const toward = (w: number): Vec3 => along(p, sub(core, p), w);
  return toward(fallingRoot((w) => shell.solid(toward(w)) + SKIN, 0, 1, 1e-6));
}

/** ≤ 1 within the dehiscence's outline (rule S12), for points facial of the socket's axis; drawn no wider than the socket. */
function lens(socket: Socket, shell: RidgeShell, p: Vec3): number {
  const { depth, width } = socket.numbers.dehiscence;
  if (depth === 0) return Infinity;
  const half = Math.min(width / 2, 0.98 * socket.semi[0]);
  const d = -p[1] * shell.ridge.sin - p[2] * shell.ridge.cos;
  return (p[0] / half) ** 2 + (Math.max(0, d) / depth) ** 2;
}

/** Least stride of the search down a wall, mm. */
const STRIDE = 0.15;

/** Highest root of `f` going down from `from` to `to`, `f > 0` first; null where there is none. `stride`: how far `f` surely stays above 0 at a value. */
function firstBelow(
  f: (x: number) => number,
  stride: (value: number) => number,
  from: number,
  to: number,
): number | null {
  let value = f(from);
  if (value <= 0) return null;
  for (let x = from; x > to; ) {
    const next = x - Math.max(STRIDE, stride(value));
    value = f(next);
    if (value <= 0) return fallingRoot(f, x, next, 1e-10);
    x = next;
  }
  return null;
}

/** The rim at one angle, or null where the void's wall meets no bone. */
function rimAt(socket: Socket, shell: RidgeShell, angle: number): RimPoint | null {
  const facial = Math.sin(angle) > 1e-9;
  const open = (h: number): number => {
    const p = wallPoint(socket, angle, h);
    const k = shell.solid(p);
    return k <= 0 && facial && lens(socket, shell, p) < 1 ? 1 : k;
  };
  const top = socket.numbers.parallel + 8;
  // In the dehiscence's outline bone counts as open: there its value is no distance.
  const stride = (value: number): number => (value === 1 ? 0 : value / shell.ridge.steepCrest);
  const height = firstBelow(open, stride, top, -0.97 * socket.semi[2]);
  if (height === null) return null;
  const foot = wallPoint(socket, angle, height);
  const inside = shell.solid(foot) < -1e-6;
  const edge = inside ? sheetBeside(shell, foot) : foot;
  const [q, v] = shell.place(edge);
  return { angle, height, q, v, cut: inside };
}

/** Facially across the ridge's own axis from a point in the bone to the sheet. */
function sheetBeside(shell: RidgeShell, p: Vec3): Vec3 {
  const across: Vec3 = [0, shell.ridge.cos, -shell.ridge.sin];
  return along(
    p,
    across,
    fallingRoot((w) => -shell.solid(along(p, across, w)), 0, 12, 1e-10),
  );
}

/** Looks for the rim and for the cells it needs; null where the void does not open through the sheet as one hole. */
export function holeOf(socket: Socket, { shell, rows, mid, params }: Sheet): Hole | null {
  const rim: RimPoint[] = [];
  for (let k = 0; k < SAMPLES; k++) {
    const found = rimAt(socket, shell, (2 * Math.PI * k) / SAMPLES);
    if (!found) return null;
    rim.push(found);
  }
  const range = (pick: (r: RimPoint) => number): [number, number] => [
    Math.min(...rim.map(pick)),
    Math.max(...rim.map(pick)),
  ];
  const [q0, q1] = range((r) => r.q);
  const [v0, v1] = range((r) => r.v);
  const i0 = rows.findLastIndex((q) => q < q0 - 0.5);
  const i1 = rows.findIndex((q) => q > q1 + 0.5);
  if (i0 < 1 || i1 < 0 || i1 > rows.length - 2) return null;
  const across = 2 * mid + 1;
  const inside = rows.slice(i0, i1 + 1).map((_, k) => {
    const row = (i0 + k) * across;
    return params.subarray(row, row + across);
  });
  const j0 = Math.min(...inside.map((row) => row.findLastIndex((v) => v < v0 - 0.25)));
  const j1 = Math.max(...inside.map((row) => row.findIndex((v) => v > v1 + 0.25)));
  if (j0 < 1 || j1 < 0 || j1 > across - 2) return null;
  return { i0, i1, j0, j1, socket, rim, centre: [(q0 + q1) / 2, (v0 + v1) / 2] };
}

/** Rim points in the directions that the corners of the opening lie in, as seen from its centre on the sheet. */
function rimToward(hole: Hole, directions: readonly number[]): RimPoint[] {
  const { rim, centre } = hole;
  const turn = 2 * Math.PI;
  const bearing = (q: number, v: number) => Math.atan2(v - centre[1], q - centre[0]);
  const start = bearing(rim[0].q, rim[0].v);
  const unrolled: number[] = [];
  let last = 0;
  for (const r of rim) {
    let b = bearing(r.q, r.v) - start;
    while (b < last - Math.PI) b += turn;
    while (b > last + Math.PI) b -= turn;
    last = Math.max(last + 1e-9, b);
    unrolled.push(last);
  }
  return directions.map((direction) => {
    let b = direction - start;
    while (b < 0) b += turn;
    while (b >= turn) b -= turn;
    let k = unrolled.findLastIndex((u) => u <= b);
    if (k < 0) k = 0;
    const a = rim[k];
    const z = rim[(k + 1) % rim.length];
    const to = k + 1 < rim.length ? unrolled[k + 1] : turn;
    const w = Math.min(1, Math.max(0, (b - unrolled[k]) / (to - unrolled[k])));
    const angle = a.angle + (w * turn) / rim.length;
    return { ...a, angle, height: a.height + w * (z.height - a.height) };
  });
}

/** What fills the opening: from its edge over the rim to the void's wall, closed at the bottom. Its triangles go on counting from the sheet's points. */
export function holeMesh(hole: Hole, { shell, rows, mid, params }: Sheet): TriangleMesh {
  const { i0, i1, j0, j1, socket, centre } = hole;
  const cells: [i: number, j: number][] = [];
  for (let i = i0; i < i1; i++) cells.push([i, j0]);
  for (let j = j0; j < j1; j++) cells.push([i1, j]);
  for (let i = i1; i > i0; i--) cells.push([i, j1]);
  for (let j = j1; j > j0; j--) cells.push([i0, j]);
  const builder = new MeshBuilder(params.length);
  const corners = cells.map(([i, j]) => {
    const vertex = i * (2 * mid + 1) + j;
    return { q: rows[i], v: params[vertex], vertex };
  });
  const wanted = rimToward(
    hole,
    corners.map((c) => Math.atan2(c.v - centre[1], c.q - centre[0])),
  );
  const rim = wanted.map((r) => rimAt(socket, shell, r.angle) ?? r);
  const n = corners.length;
  const edge: Ring = corners.map((c) => c.vertex);
  const between = [0.35, 0.65, 0.85].map((w) =>
    builder.ring(n, (j) =>
      shell.point(corners[j].q + w * (rim[j].q - corners[j].q), corners[j].v + w * (rim[j].v - corners[j].v)),
    ),
  );
  const outer = builder.ring(n, (j) => shell.point(rim[j].q, rim[j].v));
  const inner = rim.map((r, j) => (r.cut ? builder.vertex(wallPoint(socket, r.angle, r.height)) : outer[j]));
  const count = 18;
  const sl = socket.semi[2];
  const down = (share: number): Ring =>
    builder.ring(n, (j) => {
      const top = rim[j].height;
      const start = top < 0 ? Math.asin(Math.min(1, -top / sl)) : 0;
      const straight = Math.max(0, top);
      const bowl = sl * (Math.PI / 2 - start);
      const way = share * (straight + bowl);
      const deep = start + (way - straight) / sl;
      const height = way < straight ? top - way : -sl * Math.sin(deep);
      return wallInside(socket, shell, rim[j].angle, height);
    });
  const wall = Array.from({ length: count - 1 }, (_, i) => down((i + 1) / count));
  builder.bands([edge, ...between, outer, inner, ...wall]);
  builder.capAbove(wall[wall.length - 1], along(socket.centre, socket.a, -sl));
  return builder.build();
}
