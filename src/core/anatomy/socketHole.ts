import type { Opening } from '../geometry/grid.ts';
import { MeshBuilder, type Ring } from '../geometry/loft.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import { fallingRoot } from '../geometry/root.ts';
import { along, dot, sub, type Vec3 } from '../geometry/vec.ts';
import type { RidgeShell } from './ridgeShell.ts';
import type { Socket } from './socket.ts';

/** Place on a shell's sheet. */
interface Place {
  readonly q: number;
  readonly v: number;
}

/** Where the sheet ends at the void, and the way from there to the socket's wall. */
interface RimPoint extends Place {
  /** On a dehiscence's cut face: where it ends at its back, and where the socket's wall begins; on a socket's own rim both are the rim. */
  readonly back: Vec3 | null;
  readonly inner: Vec3 | null;
  /** Where the socket's wall begins: its angle about the axis (0 mesial, π/2 facial), and its height over the socket's centre, along its axis, mm. */
  readonly angle: number;
  readonly height: number;
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

/** The opening of a socket in a shell's grid: a rectangle of cells that is left out, and a place on the sheet that sees all of the rim. */
export interface Hole extends Opening {
  readonly socket: Socket;
  readonly centre: Place;
}

/** Steps from the centre of an opening outward, and how far outward its rim is looked for: mm along the arch and units of `v`. */
const STEPS = 8;
const REACH = { q: 7, v: 13 } as const;
/** Directions in which the extent of an opening is looked for. */
const DIRECTIONS = 48;

/** Both voids as functions that are below 0 inside (rules S11, S12). */
class Void {
  /** Last point's coordinates about the socket's axis: mesial, facial, and along it. */
  x = 0;
  y = 0;
  z = 0;

  constructor(
    readonly socket: Socket,
    private readonly shell: RidgeShell,
  ) {}

  root(p: Vec3): number {
    const { centre, em, ef, a, semi } = this.socket;
    const r = sub(p, centre);
    this.x = dot(r, em);
    this.y = dot(r, ef);
    this.z = dot(r, a);
    const below = Math.min(0, this.z) / semi[2];
    return (this.x / semi[0]) ** 2 + (this.y / semi[1]) ** 2 + below * below - 1;
  }

  /** To be asked after {@link root}. */
  private dehiscence(p: Vec3): number {
    const { depth, width } = this.socket.numbers.dehiscence;
    if (depth === 0 || this.y < 0) return Infinity;
    const { sin, cos } = this.shell.ridge;
    const d = -p[1] * sin - p[2] * cos;
    return ((2 * p[0]) / width) ** 2 + (d / depth) ** 2 - 1;
  }

  /** Of the place on the sheet. */
  at({ q, v }: Place): number {
    const p = this.shell.point(q, v);
    const root = this.root(p);
    return Math.min(root, this.dehiscence(p));
  }

  /** Both at once: whether a place on the sheet lies in the socket and, where there is one, in its dehiscence. */
  inBoth({ q, v }: Place): boolean {
    const p = this.shell.point(q, v);
    const { depth } = this.socket.numbers.dehiscence;
    return this.root(p) < 0 && (depth === 0 || this.dehiscence(p) < 0);
  }
}

const toward = (from: Place, to: Place, w: number): Place => ({
  q: from.q + w * (to.q - from.q),
  v: from.v + w * (to.v - from.v),
});

/** The first place outside the void on the way from the centre; null where there is none. */
function edgeToward(voids: Void, centre: Place, to: Place): Place | null {
  const f = (w: number) => voids.at(toward(centre, to, w));
  for (let k = 1; k <= STEPS; k++) {
    if (f(k / STEPS) <= 0) continue;
    return toward(centre, to, fallingRoot(f, k / STEPS, (k - 1) / STEPS, 1e-6));
  }
  return null;
}

/** Middle of what the socket (and its dehiscence) takes of the section through its axis. */
function centreOf(voids: Void, shell: RidgeShell): Place | null {
  const { centre, a } = voids.socket;
  const [q] = shell.place(along(centre, a, -centre[2] / a[2]));
  let first = Number.NaN;
  let last = Number.NaN;
  for (let v = -6; v <= 6; v += 0.08) {
    if (!voids.inBoth({ q, v })) continue;
    if (Number.isNaN(first)) first = v;
    last = v;
  }
  return Number.isNaN(first) ? null : { q, v: (first + last) / 2 };
}

/** The way from a place on the rim to the socket's wall. */
function rimAt(voids: Void, shell: RidgeShell, place: Place): RimPoint {
  const { socket } = voids;
  const [sa, sb, sl] = socket.semi;
  const p = shell.point(place.q, place.v);
  const begin = (inner: Vec3 | null, back: Vec3 | null): RimPoint => ({
    ...place,
    back,
    inner,
    angle: Math.atan2(voids.y / sb, voids.x / sa),
    height: Math.max(-0.97 * sl, voids.z),
  });
  if (voids.root(p) < 1e-6) return begin(null, null);
  // A dehiscence's side runs across the ridge to the socket's wall, or to the plane at its back and along that to the wall.
  const inward: Vec3 = [0, -shell.ridge.cos, shell.ridge.sin];
  const toBack = -voids.y / dot(inward, socket.ef);
  const hit = socket.rootVoid(p, inward);
  if (hit && hit[0] >= 0 && hit[0] <= toBack) {
    const inner = along(p, inward, hit[0]);
    voids.root(inner);
    return begin(inner, inner);
  }
  const back = along(p, inward, toBack);
  voids.root(back);
  const below = Math.min(0, Math.max(-0.97 * sl, voids.z)) / sl;
  const inner = along(back, socket.em, Math.sign(voids.x) * sa * Math.sqrt(1 - below * below) - voids.x);
  voids.root(inner);
  return begin(inner, back);
}

/** Looks for the cells that the opening needs; null where the void does not open through the sheet as one hole. */
export function holeOf(socket: Socket, { shell, rows, mid, params }: Sheet): Hole | null {
  const voids = new Void(socket, shell);
  const centre = centreOf(voids, shell);
  if (!centre) return null;
  const rim: Place[] = [];
  for (let k = 0; k < DIRECTIONS; k++) {
    const angle = (2 * Math.PI * k) / DIRECTIONS;
    const far = { q: centre.q + REACH.q * Math.cos(angle), v: centre.v + REACH.v * Math.sin(angle) };
    const found = edgeToward(voids, centre, far);
    if (!found) return null;
    rim.push(found);
  }
  const range = (pick: (r: Place) => number): [number, number] => [
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
  return { i0, i1, j0, j1, socket, centre };
}

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

/** How deep the wall is drawn, as an angle of the half-ellipsoid (π/2 its bottom): as far as the socket's axis lies well within the sheet. */
function deepest({ centre, a, semi }: Socket, shell: RidgeShell): number {
  for (let angle = Math.PI / 2; angle > 0.1; angle -= 0.05)
    if (shell.solid(along(centre, a, -semi[2] * Math.sin(angle))) < -3 * SKIN) return angle;
  return 0.1;
}

/** Angles of a walk once round, unrolled; where they would run back, a stretch of them is drawn together to its mean, so that the wall does not fold. */
function rising(angles: readonly number[]): number[] {
  const pools: { mean: number; count: number }[] = [];
  let last = angles[0];
  for (const angle of angles) {
    last = angle + 2 * Math.PI * Math.round((last - angle) / (2 * Math.PI));
    let pool = { mean: last, count: 1 };
    for (let before = pools.at(-1); before && before.mean > pool.mean; before = pools.at(-1)) {
      const count = before.count + pool.count;
      pool = { mean: (before.mean * before.count + pool.mean * pool.count) / count, count };
      pools.pop();
    }
    pools.push(pool);
  }
  return pools.flatMap(({ mean, count }) => new Array<number>(count).fill(mean));
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
  const voids = new Void(socket, shell);
  const rim = corners.map((c) =>
    rimAt(voids, shell, edgeToward(voids, centre, c) ?? toward(centre, c, 0.97)),
  );
  const angles = rising(rim.map((r) => r.angle));
  const n = corners.length;
  const edge: Ring = corners.map((c) => c.vertex);
  const between = [0.35, 0.65, 0.85].map((w) =>
    builder.ring(n, (j) =>
      shell.point(corners[j].q + w * (rim[j].q - corners[j].q), corners[j].v + w * (rim[j].v - corners[j].v)),
    ),
  );
  const outer = builder.ring(n, (j) => shell.point(rim[j].q, rim[j].v));
  const back = rim.map((r, j) => (r.back ? builder.vertex(r.back) : outer[j]));
  const inner = rim.map((r, j) => (r.inner && r.inner !== r.back ? builder.vertex(r.inner) : back[j]));
  const count = 18;
  const sl = socket.semi[2];
  const end = deepest(socket, shell);
  const down = (share: number): Ring =>
    builder.ring(n, (j) => {
      const top = rim[j].height;
      const start = top < 0 ? Math.min(end, Math.asin(Math.min(1, -top / sl))) : 0;
      const straight = Math.max(0, top);
      const bowl = sl * (end - start);
      const way = share * (straight + bowl);
      const deep = start + (way - straight) / sl;
      const height = way < straight ? top - way : -sl * Math.sin(deep);
      return wallInside(socket, shell, angles[j], height);
    });
  const wall = Array.from({ length: count - 1 }, (_, i) => down((i + 1) / count));
  builder.bands([edge, ...between, outer, back, inner, ...wall]);
  builder.capAbove(wall[wall.length - 1], along(socket.centre, socket.a, -sl * Math.sin(end)));
  return builder.build();
}
