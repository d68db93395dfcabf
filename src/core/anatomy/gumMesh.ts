import { withSmoothNormals } from '../geometry/crease.ts';
import { gridTriangles } from '../geometry/grid.ts';
import { smoothstep } from '../geometry/vec.ts';
import type { Anatomy } from './anatomy.ts';
import { fromArch, toArch } from './arch.ts';
import { collarOf } from './gumCollar.ts';
import { type GumColumns, GumSections } from './gumSection.ts';
import { type Mouth, openSocket } from './gumSocket.ts';
import { RIDGE_BEYOND, type RidgeMesh, type RidgeMeshOptions, rowsAlong } from './ridgeMesh.ts';

/** The gum ends this much inside the ends of the ridge, mm, so that both cut faces are seen. */
const INSIDE = 0.05;
/** The papilla over the incisive foramen, mm: height, half-width, half-length along the palate, and how far it narrows toward the teeth (assumed). */
const INCISIVE = { height: 1.5, half: 3.2, length: 4, narrow: 0.35 } as const;

export interface GumMesh extends RidgeMesh {
  /** By vertex: 1 the whole gum, 0 its lower edge. */
  readonly cover: Float64Array;
  /** By vertex: 0 attached gum, 1 the thin mucosa below it. */
  readonly loose: Float64Array;
}

/** The low pear-shaped swelling of the palatal gum over the nasopalatine foramen, mm, by arch place and ridge depth. */
function incisivePapilla({ ridge, canal, arch }: Anatomy): (q: number, d: number) => number {
  const [middle] = toArch(arch, canal.mouth);
  const at = Math.min(9, Math.max(3, ridge.depth(canal.mouth)));
  return (q, d) => {
    const y = (d - at) / INCISIVE.length;
    if (y <= -1 || y >= 1) return 0;
    const x = (q - middle) / (INCISIVE.half * (1 + INCISIVE.narrow * y));
    if (x <= -1 || x >= 1) return 0;
    const w = (1 - x * x) * (1 - y * y);
    return INCISIVE.height * w * w;
  };
}

/** Moves the keel of the rows about a socket below its bottom. */
function lowerKeel(
  anatomy: Anatomy,
  positions: Float64Array,
  columns: number,
  rows: readonly number[],
): void {
  const { socket, arch } = anatomy;
  if (!socket) return;
  const deep = socket.semi[2] + 0.6;
  const [q0, e0] = toArch(arch, socket.centre);
  rows.forEach((q, i) => {
    const [e, c] = [e0 - deep * socket.a[1], socket.centre[2] - deep * socket.a[2]];
    const near = 1 - smoothstep(Math.abs(q - q0), socket.semi[0] + 0.4, socket.semi[0] + 3);
    for (const [j, off] of [
      [0, -0.3],
      [columns - 1, 0.3],
    ]) {
      const p = 3 * (i * columns + j);
      const [qHere, eHere] = toArch(arch, [positions[p], positions[p + 1], positions[p + 2]]);
      positions.set(
        fromArch(
          arch,
          qHere,
          eHere + near * (e + off - eHere),
          positions[p + 2] + near * (c - positions[p + 2]),
        ),
        p,
      );
    }
  });
}

/** The cells between the margins that lie in the mouth of the socket. */
function mouthOf(anatomy: Anatomy, rows: readonly number[], count: GumColumns): Mouth | null {
  const { socket } = anatomy;
  if (!socket) return null;
  const [q] = toArch(anatomy.arch, socket.centre);
  const reach = 0.98 * socket.semi[0];
  const i0 = rows.findIndex((x) => x > q - reach);
  const i1 = rows.findLastIndex((x) => x < q + reach);
  const j0 = count.flank + count.rise;
  return i1 - i0 < 4 ? null : { i0, i1, j0, j1: j0 + 2 * count.cap };
}

/**
 * The gum as a closed solid, outward, in the site frame, mm: at the site's numbers outside the ridge, running out onto it about 10 mm below the crest;
 * scalloped round the neighbours, its margin 1 mm coronal of their CEJ; with papillae, the incisive one among them; flat over a healed crest, a
 * collar about a fresh socket. It holds the bone within it.
 */
export function gumMesh(anatomy: Anatomy, options: RidgeMeshOptions = {}): GumMesh {
  const { teeth, arch, socket, ridge } = anatomy;
  const density = options.density ?? 1;
  const from = (options.from ?? teeth.distal.station - RIDGE_BEYOND) + INSIDE;
  const to = (options.to ?? teeth.mesial.station + RIDGE_BEYOND) - INSIDE;
  const rows = rowsAlong(from, to, 0.4 / density);
  const count: GumColumns = {
    flank: Math.round(16 * density),
    rise: Math.round(9 * density),
    cap: socket ? 8 : 2,
  };
  const collar = collarOf(anatomy);
  const sections = new GumSections(anatomy, count);
  const { columns } = sections;
  const lines = new Float64Array(2 * rows.length * columns);
  const leans = new Float64Array(2 * rows.length);
  rows.forEach((q, i) => {
    const line = lines.subarray(2 * i * columns, 2 * (i + 1) * columns);
    sections.write(q, collar(q), line, leans.subarray(2 * i, 2 * i + 2));
  });
  const swelling = incisivePapilla(anatomy);
  sections.finishPalate(lines, rows.length, leans, (row, d) => swelling(rows[row], d));
  const positions = new Float64Array(3 * rows.length * columns);
  for (let k = 0; k < rows.length * columns; k++)
    positions.set(fromArch(arch, rows[Math.floor(k / columns)], lines[2 * k], lines[2 * k + 1]), 3 * k);
  const mouth = mouthOf(anatomy, rows, count);
  if (socket && mouth) {
    openSocket(positions, columns, mouth, socket, ridge);
    lowerKeel(anatomy, positions, columns, rows);
  }
  const everyRow = (own: Float64Array): Float64Array => {
    const out = new Float64Array(rows.length * columns);
    for (let i = 0; i < rows.length; i++) out.set(own, i * columns);
    return out;
  };
  const cover = everyRow(sections.byColumn('cover', 1, 0));
  const loose = everyRow(sections.byColumn('loose', 0, 0));
  const { triangles, walls } = gridTriangles(rows.length, (columns - 1) / 2);
  return { mesh: withSmoothNormals({ positions, triangles }, walls), walls, cover, loose };
}
