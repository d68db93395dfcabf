/**
 * Fine meshes of the oracle's own surfaces, for second opinions by a solid modeller and a ray tracer. Site frame, mm; single
 * precision (1e-6 mm here). Vertices lie on the surfaces, so that a facet of edge `h` stands off by at most `κ h² / 8`: with the
 * steps below and curvatures up to 1.5 per mm (an eminence, the undercut) that is 0.003 mm, and on a round envelope 0.0001 mm.
 */
import type { Ground, Placed, PlacedTooth, Side } from './model.ts';
import { cos, inner, minus, plus, sin, type V } from './numbers.ts';
import { Root } from './obstacles.ts';

export const TESSELLATION = 0.003;

/** Stations along the arch, depths below the crest, and segments round an axis. */
const REACH = 8;
const DEEP = 24;
const STEP_Q = 0.125;
const STEP_D = 0.12;
const CREST_ROWS = 24;
const ROUND = 360;

export class Surface {
  readonly points: number[] = [];
  readonly triangles: number[] = [];

  add(p: V): number {
    this.points.push(p[0], p[1], p[2]);
    return this.points.length / 3 - 1;
  }

  quad(a: number, b: number, c: number, d: number): void {
    this.triangles.push(a, b, c, a, c, d);
  }

  point(i: number): V {
    return [this.points[3 * i]!, this.points[3 * i + 1]!, this.points[3 * i + 2]!];
  }

  /** Volume by the divergence theorem; the sign tells which way the facets are wound. */
  get volume(): number {
    let sum = 0;
    for (let i = 0; i < this.triangles.length; i += 3) {
      const [a, b, c] = [0, 1, 2].map((k) => this.point(this.triangles[i + k]!)) as [V, V, V];
      sum += inner(a, [b[1] * c[2] - b[2] * c[1], b[2] * c[0] - b[0] * c[2], b[0] * c[1] - b[1] * c[0]]) / 6;
    }
    return sum;
  }

  /** The same closed surface wound outward. */
  outward(): Surface {
    if (this.volume < 0) {
      for (let i = 0; i < this.triangles.length; i += 3) {
        const b = this.triangles[i + 1]!;
        this.triangles[i + 1] = this.triangles[i + 2]!;
        this.triangles[i + 2] = b;
      }
    }
    return this;
  }
}

/** Rows of depths, close together over the rounded crest; the entered depths are among them, for the half-width has a bend at the first. */
function depths({ site }: Ground): number[] {
  const rounding = site.ridge.crestRounding;
  const rows = Array.from(
    { length: CREST_ROWS },
    (_, i) => rounding * (1 - Math.cos(((i + 1) / CREST_ROWS) * (Math.PI / 2))),
  );
  const n = Math.ceil((DEEP - rounding) / STEP_D);
  for (let i = 1; i <= n; i += 1) rows.push(rounding + ((DEEP - rounding) * i) / n);
  const entered = [site.ridge, site.mesial.ridge, site.distal.ridge].flatMap((x) =>
    x.widths.map((w) => w.depth),
  );
  const all = [...rows, ...entered].sort((a, b) => a - b);
  return all.filter((d, i) => i === 0 || d - all[i - 1]! > 1e-4);
}

const STATIONS = Array.from({ length: (2 * REACH) / STEP_Q + 1 }, (_, i) => -REACH + i * STEP_Q);

/** The ridge solid (S5), closed at both ends and 24 mm below the crest. */
export function ridgeMesh(g: Ground): Surface {
  const s = new Surface();
  const rows = depths(g);
  const k = rows.length;
  // Round each section: up the palatal side, over the crest, down the facial side.
  const sections = STATIONS.map((q) => [
    ...[...rows].reverse().map((d) => s.add(g.sheetPoint('palatal', q, d))),
    s.add(g.place(q, 0, 0)),
    ...rows.map((d) => s.add(g.sheetPoint('facial', q, d))),
  ]);
  sections.slice(1).forEach((next, i) => {
    const here = sections[i]!;
    for (let j = 0; j <= 2 * k; j += 1) {
      const l = (j + 1) % (2 * k + 1);
      s.quad(here[j]!, here[l]!, next[l]!, next[j]!);
    }
  });
  const close = (o: readonly number[], turn: boolean): void => {
    for (let j = 0; j < k; j += 1) {
      const [a, b] = [o[j]!, o[j + 1]!];
      const [c, d] = [o[2 * k - j]!, o[2 * k - j - 1]!];
      const facets =
        j === k - 1
          ? [[a, c, b]]
          : [
              [a, c, b],
              [b, c, d],
            ];
      for (const [x, y, z] of facets) s.triangles.push(x!, ...(turn ? [z!, y!] : [y!, z!]));
    }
  };
  close(sections[0]!, false);
  close(sections.at(-1)!, true);
  return s.outward();
}

/** The wall sheet of a side alone, from a depth down; `keep` leaves out facets that have a corner it refuses. */
export function sheetMesh(
  g: Ground,
  side: Side,
  from: number,
  keep: (p: V) => boolean = () => true,
): Surface {
  const s = new Surface();
  const rows = [from, ...depths(g).filter((d) => d > from + 1e-6)];
  const grid = STATIONS.map((q) => rows.map((d) => s.add(g.sheetPoint(side, q, d))));
  for (let i = 1; i < grid.length; i += 1) {
    for (let j = 1; j < rows.length; j += 1) {
      const corners = [grid[i - 1]![j - 1]!, grid[i - 1]![j]!, grid[i]![j]!, grid[i]![j - 1]!] as const;
      if (corners.every((x) => keep(s.point(x)))) s.quad(...corners);
    }
  }
  return s;
}

/** A profile of levels and radii turned round an axis: `at(level, radius, azimuth)`. Closed where the profile begins and ends at radius 0. */
export function turned(
  profile: readonly (readonly [number, number])[],
  at: (level: number, radius: number, azimuth: number) => V,
  round = ROUND,
): Surface {
  const s = new Surface();
  const rings = profile.map(([level, radius]) =>
    radius === 0
      ? [s.add(at(level, 0, 0))]
      : Array.from({ length: round }, (_, j) => s.add(at(level, radius, (2 * Math.PI * j) / round))),
  );
  rings.slice(1).forEach((next, i) => {
    const here = rings[i]!;
    for (let j = 0; j < round; j += 1) {
      const l = (j + 1) % round;
      if (here.length === 1) s.triangles.push(here[0]!, next[j]!, next[l]!);
      else if (next.length === 1) s.triangles.push(here[l]!, here[j]!, next[0]!);
      else s.quad(here[l]!, here[j]!, next[j]!, next[l]!);
    }
  });
  return s;
}

/** Long steps along a cone make no error; short ones keep the facets of a boolean well shaped. */
function stepped(profile: readonly (readonly [number, number])[], h: number): [number, number][] {
  const out: [number, number][] = [];
  profile.forEach(([level, radius], i) => {
    const before = profile[i - 1];
    if (before && level > before[0]) {
      const n = Math.ceil((level - before[0]) / h);
      for (let k = 1; k < n; k += 1) {
        out.push([before[0] + ((level - before[0]) * k) / n, before[1] + ((radius - before[1]) * k) / n]);
      }
    }
    out.push([level, radius]);
  });
  return out.filter(([l, r], i) => i === 0 || l !== out[i - 1]![0] || r !== out[i - 1]![1]);
}

/** The threaded part of the envelope, apical rim to last thread, closed by both end faces. */
export function threadedMesh(p: Placed): Surface {
  const [, thread, bend, rim] = p.corners as [unknown, ...(readonly [number, number])[]];
  const profile = stepped([thread!, bend!, rim!], 0.5);
  return turned([[thread![0], 0], ...profile, [rim![0], 0]], (t, r, w) => p.at(t, r, w)).outward();
}

/** The envelope from the platform plane down, with the end face, open at the platform; `from`: only what lies apical of a level. */
export function envelopeMesh(p: Placed, from = p.platform): Surface {
  const below = p.corners.filter(([t]) => t > from + 1e-9);
  return turned(
    stepped([[from, p.radius(from + 1e-12)], ...below], 0.4),
    (t, r, w) => p.at(t, r, w),
    ROUND / 2,
  );
}

/** The curved surface of a root, open at its origin. */
export function rootMesh(tooth: PlacedTooth): Surface {
  const root = new Root(tooth);
  const n = 120;
  const profile = Array.from({ length: n + 1 }, (_, i): [number, number] => {
    const v = (Math.PI / 2) * (i / n);
    return [Math.sin(v), i === n ? 0 : 1];
  });
  return turned(profile, (z, _, w) => root.point(z, w), ROUND / 2);
}

/** The socket's void (S11), cut off 12 mm coronal of its own point. */
export function socketMesh(g: Ground): Surface {
  const { state, axis, facialShift } = g.socket!;
  const n = 90;
  const profile: [number, number][] = [
    [-12, 0],
    [-12, 1],
    [state.parallel, 1],
  ];
  for (let i = 1; i <= n; i += 1) {
    const v = (Math.PI / 2) * (i / n);
    const z = state.parallel + (state.depth - state.parallel) * Math.sin(v);
    profile.push([z, i === n ? 0 : Math.cos(v)]);
  }
  const at = (z: number, r: number, w: number): V => {
    const x = plus([0, facialShift, 0], axis.em, r * (state.width / 2) * Math.cos(w));
    return plus(plus(x, axis.ef, r * (state.breadth / 2) * Math.sin(w)), axis.a, -z);
  };
  return turned(profile, at).outward();
}

/** The dehiscence (S12) before it is cut by the plane through the socket's axis: an elliptic cylinder across the ridge. */
export function dehiscenceMesh(g: Ground): Surface {
  const { width, depth } = g.socket!.state.dehiscence;
  const { inclination } = g.site.ridge;
  const across: V = [0, cos(inclination), -sin(inclination)];
  const down: V = [0, -sin(inclination), -cos(inclination)];
  const at = (u: number, r: number, w: number): V => {
    const p = plus([0, 0, 0], across, u);
    return plus([p[0] + ((r * width) / 2) * Math.cos(w), p[1], p[2]], down, r * depth * Math.sin(w));
  };
  return turned(
    [
      [-20, 0],
      [-20, 1],
      [20, 1],
      [20, 0],
    ],
    at,
  ).outward();
}

export function canalMesh(g: Ground): Surface {
  const tube = g.canal!;
  const helper: V = [1, 0, 0];
  const raw = minus(helper, plus([0, 0, 0], tube.into, inner(helper, tube.into)));
  const x = plus([0, 0, 0], raw, 1 / Math.hypot(...raw));
  const i = tube.into;
  const y: V = [i[1] * x[2] - i[2] * x[1], i[2] * x[0] - i[0] * x[2], i[0] * x[1] - i[1] * x[0]];
  const half = tube.length / 2;
  const at = (s: number, r: number, w: number): V =>
    plus(plus(plus(tube.start, i, s), x, r * Math.cos(w)), y, r * Math.sin(w));
  const profile = [0, half, tube.length].map((s): [number, number] => [s, tube.radius(s)]);
  return turned([[0, 0], ...profile, [tube.length, 0]], at).outward();
}

/** The canal's wall alone, without its two ends. */
export function canalWallMesh(g: Ground): Surface {
  const whole = canalMesh(g);
  const ends = whole.points.length / 3 - 1;
  const wall = new Surface();
  wall.points.push(...whole.points);
  for (let i = 0; i < whole.triangles.length; i += 3) {
    const t = whole.triangles.slice(i, i + 3);
    if (!t.includes(0) && !t.includes(ends)) wall.triangles.push(...t);
  }
  return wall;
}

/** A square prism about a line, `half` wide to each side. */
export function prismMesh(from: V, to: V, half: number): Surface {
  const along = minus(to, from);
  const length = Math.hypot(...along);
  const w = plus([0, 0, 0], along, 1 / length);
  const helper: V = Math.abs(w[0]) < 0.5 ? [1, 0, 0] : [0, 1, 0];
  const raw = minus(helper, plus([0, 0, 0], w, inner(helper, w)));
  const x = plus([0, 0, 0], raw, 1 / Math.hypot(...raw));
  const y: V = [w[1] * x[2] - w[2] * x[1], w[2] * x[0] - w[0] * x[2], w[0] * x[1] - w[1] * x[0]];
  const s = new Surface();
  const corner = (base: V, i: number, j: number): number => s.add(plus(plus(base, x, i * half), y, j * half));
  const a = [corner(from, -1, -1), corner(from, 1, -1), corner(from, 1, 1), corner(from, -1, 1)] as const;
  const b = [corner(to, -1, -1), corner(to, 1, -1), corner(to, 1, 1), corner(to, -1, 1)] as const;
  s.quad(...a);
  s.quad(b[3], b[2], b[1], b[0]);
  for (let i = 0; i < 4; i += 1) s.quad(a[(i + 1) % 4]!, a[i]!, b[i]!, b[(i + 1) % 4]!);
  return s.outward();
}
