import { withSmoothNormals } from '../geometry/crease.ts';
import { MeshBuilder } from '../geometry/loft.ts';
import { along, dot, rad, smoothstep, sub, type Vec3 } from '../geometry/vec.ts';
import type { Anatomy } from './anatomy.ts';
import { fromArch } from './arch.ts';
import { type Collar, collarOf } from './gumCollar.ts';
import { addCaps, RIDGE_BEYOND, type RidgeMesh, type RidgeMeshOptions, rowsAlong } from './ridgeMesh.ts';

/** How far below the crest the gum is drawn, and from where on it thins out toward that edge, mm of ridge depth; by side. */
const REACH = { facial: 9.5, palatal: 12 } as const;
const THINS = { facial: 4, palatal: 3 } as const;
/** Depth at which the dome over the ridge begins, mm. */
const BASE = 1;
/** In a fresh socket the gum's solid begins at this depth, mm: above its own foot. */
const PLUG = 8;
/** Least thickness, mm: the edge stays just outside the bone. */
const EDGE = 0.2;
/** Exponent of the dome's superellipse over a healed crest; round a tooth it grows squarer, so that its top stays within the crown. */
const ROUND = 2.2;

/** A point across the arch: `e` facial of the arc, `c` coronal; mm. */
type Across = readonly [e: number, c: number];

/** Exponent of the superellipse with that top that passes through a point, kept between 1.1 and 5. */
function exponent(share: number, rise: number, top: number): number {
  const miss = (n: number) => share ** n + Math.max(0.01, rise / top) ** n - 1;
  let lo = 1.1;
  let hi = 5;
  for (let i = 0; i < 30; i++) {
    const mid = (lo + hi) / 2;
    if (miss(mid) > 0) lo = mid;
    else hi = mid;
  }
  return (lo + hi) / 2;
}

/** One section of the gum across the arch, from the palatal edge over the top to the facial edge. */
function sectionAt(anatomy: Anatomy, collar: Collar, q: number, below: number, dome: number): Across[] {
  const { ridge, site } = anatomy;
  const at = (u: number, d: number): Across => ridge.acrossPoint(q, u, d);
  const side = (s: 1 | -1, d: number): Across => {
    const name = s > 0 ? 'facial' : 'palatal';
    const thick = site.gum[name] * (1 - smoothstep(d, THINS[name], REACH[name]));
    return at(s * (ridge.half(s, q, d) + EDGE + thick), d);
  };
  const centre = at(0, BASE);
  const { lean, foot, margin, half } = collar(q);
  // The tooth's axis across the arch, and the point of its facial surface that the margin has to meet.
  const axis: Across = [Math.sin(rad(lean)), Math.cos(rad(lean))];
  const slope = Math.tan(rad(lean));
  /** Where the margin meets a side of the tooth, as shares of that side's base and mm along the axis. */
  const meet = (s: 1 | -1): readonly [share: number, rise: number] => {
    const [be, bc] = side(s, BASE);
    const base: Across = [be - centre[0], bc - centre[1]];
    const out = s * half * axis[1];
    const point: Across = [slope * (margin - foot) + out - centre[0], margin - out * slope - centre[1]];
    const det = base[0] * axis[1] - base[1] * axis[0];
    const share = (point[0] * axis[1] - point[1] * axis[0]) / det;
    return [Math.min(0.95, Math.max(0, share)), (base[0] * point[1] - base[1] * point[0]) / det];
  };
  const [share, rise] = meet(1);
  const facial = ROUND + 6 * Math.max(0, share - 0.6);
  const top = Math.max(0.4, rise) / (1 - share ** facial) ** (1 / facial);
  const beside = smoothstep(half, 0.5, 2);
  const palatal = beside > 0 ? ROUND + beside * (exponent(...meet(-1), top) - ROUND) : ROUND;
  const arc = (s: 1 | -1, i: number): Across => {
    const [e, c] = side(s, BASE);
    const round = s > 0 ? facial : palatal;
    const angle = (Math.PI / 2) * (i / dome);
    const out = Math.cos(angle) ** (2 / round);
    const up = top * Math.sin(angle) ** (2 / round);
    return [
      centre[0] + (e - centre[0]) * out + axis[0] * up,
      centre[1] + (c - centre[1]) * out + axis[1] * up,
    ];
  };
  const flank = (s: 1 | -1): Across[] => [
    ...Array.from({ length: below }, (_, i) => {
      const deepest = s > 0 ? REACH.facial : REACH.palatal;
      return side(s, deepest + ((BASE - deepest) * i) / below);
    }),
    ...Array.from({ length: dome }, (_, i) => arc(s, i)),
  ];
  return [...flank(-1), arc(1, dome), ...flank(1).reverse()];
}

/** Lets the top of the gum down onto the wall of a fresh socket, so that it stands round the opening as a collar. */
function intoSocket(anatomy: Anatomy, p: Vec3): Vec3 {
  const { socket } = anatomy;
  if (!socket) return p;
  const r = sub(p, socket.centre);
  const [sa, sb, sl] = socket.semi;
  const out = (dot(r, socket.em) / sa) ** 2 + (dot(r, socket.ef) / sb) ** 2;
  if (out >= 1) return p;
  const wall = -sl * Math.sqrt(Math.max(0, 1 - 0.96 * out)) - 0.2 - dot(r, socket.a);
  const plug =
    (anatomy.ridge.depth(p) - PLUG) / (socket.a[1] * anatomy.ridge.sin + socket.a[2] * anatomy.ridge.cos);
  const down = Math.max(wall, plug);
  return down < 0 ? along(p, socket.a, down * (1 - smoothstep(out, 0.72, 1))) : p;
}

/**
 * The gum as a closed solid, outward, in the site frame, mm: at the site's numbers outside the ridge from about 10 mm below the crest up, thinning
 * out downward; scalloped round the neighbours, its margin 1 mm coronal of their CEJ; with papillae; and flat over a healed crest. It
 * holds the bone within it.
 */
export function gumMesh(anatomy: Anatomy, options: RidgeMeshOptions = {}): RidgeMesh {
  const { teeth, arch } = anatomy;
  const density = options.density ?? 1;
  const from = options.from ?? teeth.distal.station - RIDGE_BEYOND;
  const to = options.to ?? teeth.mesial.station + RIDGE_BEYOND;
  const rows = rowsAlong(from, to, 0.4 / density);
  const below = Math.round(14 * density);
  const dome = Math.round(16 * density);
  const mid = below + dome;
  const collar = collarOf(anatomy);
  const builder = new MeshBuilder();
  const grid = rows.map((q) =>
    sectionAt(anatomy, collar, q, below, dome).map(([e, c]) =>
      builder.vertex(intoSocket(anatomy, fromArch(arch, q, e, c))),
    ),
  );
  for (let i = 0; i + 1 < rows.length; i++) {
    for (let j = 0; j < 2 * mid; j++) {
      builder.quad(grid[i][j], grid[i + 1][j], grid[i + 1][j + 1], grid[i][j + 1]);
    }
  }
  const walls = builder.triangleCount;
  addCaps(builder, grid, mid);
  return { mesh: withSmoothNormals(builder.build(), walls), walls };
}
