import { withSmoothNormals } from '../geometry/crease.ts';
import { MeshBuilder } from '../geometry/loft.ts';
import { along, dot, rad, smoothstep, sub, type Vec3 } from '../geometry/vec.ts';
import type { Anatomy } from './anatomy.ts';
import { fromArch } from './arch.ts';
import { type Collar, collarOf } from './gumCollar.ts';
import { addCaps, RIDGE_BEYOND, type RidgeMesh, type RidgeMeshOptions, rowsAlong } from './ridgeMesh.ts';

/** How far below the crest the gum is drawn, and from where on it thins out toward that edge, mm of ridge depth. */
const REACH = 9;
const THINS = 5;
/** Depth at which the dome over the ridge begins, mm. */
const BASE = 1;
/** Least thickness, mm: the edge stays just outside the bone. */
const EDGE = 0.06;
/** Exponent of the dome's superellipse. */
const ROUND = 2.2;

/** A point across the arch: `e` facial of the arc, `c` coronal; mm. */
type Across = readonly [e: number, c: number];

/** One section of the gum across the arch, from the palatal edge over the top to the facial edge. */
function sectionAt(anatomy: Anatomy, collar: Collar, q: number, below: number, dome: number): Across[] {
  const { ridge, site } = anatomy;
  const h = ridge.crest(q);
  const at = (u: number, d: number): Across => [
    u * ridge.cos - d * ridge.sin,
    -u * ridge.sin - d * ridge.cos + h,
  ];
  const side = (s: 1 | -1, d: number): Across => {
    const full = s > 0 ? site.gum.facial : site.gum.palatal;
    return at(s * (ridge.half(s, q, d) + EDGE + full * (1 - smoothstep(d, THINS, REACH))), d);
  };
  const centre = at(0, BASE);
  const { lean, foot, margin, half } = collar(q);
  // The tooth's axis across the arch, and the point of its facial surface that the margin has to meet.
  const axis: Across = [Math.sin(rad(lean)), Math.cos(rad(lean))];
  const meet: Across = [
    Math.tan(rad(lean)) * (margin - foot) + half * axis[1] - centre[0],
    margin - half * axis[1] * Math.tan(rad(lean)) - centre[1],
  ];
  const [be, bc] = [side(1, BASE)[0] - centre[0], side(1, BASE)[1] - centre[1]];
  const det = be * axis[1] - bc * axis[0];
  const share = Math.min(0.92, Math.max(0, (meet[0] * axis[1] - meet[1] * axis[0]) / det));
  const rise = (be * meet[1] - bc * meet[0]) / det;
  const top = Math.max(0.4, rise) / (1 - share ** ROUND) ** (1 / ROUND);
  const arc = (s: 1 | -1, i: number): Across => {
    const [e, c] = side(s, BASE);
    const angle = (Math.PI / 2) * (i / dome);
    const out = Math.cos(angle) ** (2 / ROUND);
    const up = top * Math.sin(angle) ** (2 / ROUND);
    return [
      centre[0] + (e - centre[0]) * out + axis[0] * up,
      centre[1] + (c - centre[1]) * out + axis[1] * up,
    ];
  };
  const flank = (s: 1 | -1): Across[] => [
    ...Array.from({ length: below }, (_, i) => side(s, REACH + ((BASE - REACH) * i) / below)),
    ...Array.from({ length: dome }, (_, i) => arc(s, i)),
  ];
  return [...flank(-1), arc(1, dome), ...flank(1).reverse()];
}

/** Lets the top of the gum down into a fresh socket, so that it stands round the opening as a collar. */
function intoSocket(anatomy: Anatomy, p: Vec3): Vec3 {
  const { socket } = anatomy;
  if (!socket) return p;
  const r = sub(p, socket.centre);
  const x = dot(r, socket.em) / (0.94 * socket.semi[0]);
  const y = dot(r, socket.ef) / (0.94 * socket.semi[1]);
  const out = x * x + y * y;
  const z = dot(r, socket.a);
  if (out >= 1 || z < 0.5) return p;
  return along(p, socket.a, -(z - 0.5) * Math.min(1, 1.6 * Math.sqrt(1 - out)));
}

/**
 * The gum as a closed solid, outward, in the site frame, mm: at the site's numbers outside the ridge from 9 mm below the crest up, thinning
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
