import { withSmoothNormals } from '../geometry/crease.ts';
import { gridTriangles } from '../geometry/grid.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import type { Anatomy } from './anatomy.ts';
import type { SideSign } from './ridge.ts';
import { RidgeShell, type ShellOffsets } from './ridgeShell.ts';
import { holeMesh, holeOf, type Sheet } from './socketHole.ts';

/** How far past the neighbours' stations the ridge is modelled, mm. */
export const RIDGE_BEYOND = 6;

export interface RidgeMeshOptions {
  /** Density: 1 the full mesh (about 20,000 triangles, within 0.01 mm of the surface), 0.5 half as many rows and columns. */
  readonly density?: number;
  /** Stretch of the arch, mm; default to {@link RIDGE_BEYOND} past both neighbours' stations. */
  readonly from?: number;
  readonly to?: number;
  /** A shell at a distance from the ridge instead (− inward); default the ridge itself. */
  readonly offsets?: ShellOffsets;
}

export interface RidgeMesh {
  /** Closed, outward; vertex normals smooth over the sheet, those of the caps not bent by it. */
  readonly mesh: TriangleMesh;
  /** The first so many triangles are the sheet and the socket's wall; after them come the flat caps. */
  readonly walls: number;
}

/** Rows along the arch, mm: 0 among them, 0.4 apart about the site, wider apart toward the ends. */
export function rowsAlong(from: number, to: number, step: number): number[] {
  const side = (end: number): number[] => {
    const out: number[] = [];
    for (let q = 0; q < end - step / 2; q += q < 5 ? step : 1.25 * step) if (q > 0) out.push(q);
    out.push(end);
    return out;
  };
  const mesial = side(to);
  const distal = side(-from).map((q) => -q);
  return [...distal.reverse(), 0, ...mesial];
}

/** Share of the way down a side at which each of `side` columns stands; closer together in its upper half. */
const sharesDown = (side: number): Float64Array =>
  Float64Array.from({ length: side }, (_, i) => {
    const w = (i + 1) / side;
    return 0.45 * w + 0.55 * w * w;
  });

/** Writes the parameters of one side's columns, outward from the crest at `middle`: `crest` of them over its rounding, the others down to `end`. */
function writeColumns(
  out: Float64Array,
  middle: number,
  sign: SideSign,
  end: number,
  crest: number,
  shares: Float64Array,
): void {
  const turn = Math.min(Math.PI / 2, end / 2);
  for (let k = 1; k <= crest; k++) out[middle + sign * k] = (sign * turn * k) / crest;
  for (let k = 0; k < shares.length; k++) {
    out[middle + sign * (crest + 1 + k)] = sign * (turn + (end - turn) * shares[k]);
  }
}

/** The sheet as a grid: points and their parameters, row by row. */
function sheetGrid(shell: RidgeShell, rows: readonly number[], crest: number, shares: Float64Array): Sheet {
  const { ridge } = shell;
  const mid = crest + shares.length;
  const across = 2 * mid + 1;
  const params = new Float64Array(rows.length * across);
  const points = new Float64Array(3 * params.length);
  for (let i = 0, k = 0; i < rows.length; i++) {
    shell.row(rows[i]);
    for (const sign of [-1, 1] as const) {
      writeColumns(params, i * across + mid, sign, shell.end(sign), crest, shares);
    }
    for (let j = 0; j < across; j++, k++) {
      shell.at(params[k]);
      points[3 * k] = ridge.m;
      points[3 * k + 1] = ridge.f;
      points[3 * k + 2] = ridge.c;
    }
  }
  return { shell, rows, mid, params, points };
}

/**
 * Solid of the ridge (rules S1–S6), in the site frame, mm: from the palatal sheet over the crest to the facial one, flat at the floor's
 * level and at both ends, with the void of a fresh socket let into it. Vertices of the sheet lie on the surface; those that a socket's
 * opening leaves out belong to no triangle. Cost: about 3 ms, 6 with a socket.
 */
export function ridgeMesh(anatomy: Anatomy, options: RidgeMeshOptions = {}): RidgeMesh {
  const { teeth, socket } = anatomy;
  const density = options.density ?? 1;
  const shell = new RidgeShell(anatomy.ridge, options.offsets);
  const from = options.from ?? teeth.distal.station - RIDGE_BEYOND;
  const to = options.to ?? teeth.mesial.station + RIDGE_BEYOND;
  const rows = rowsAlong(from, to, 0.4 / density);
  const sheet = sheetGrid(shell, rows, Math.round(20 * density), sharesDown(Math.round(72 * density)));
  const hole = socket ? holeOf(socket, sheet) : null;
  if (!hole) {
    const { triangles, walls } = gridTriangles(rows.length, sheet.mid);
    return { mesh: withSmoothNormals({ positions: sheet.points, triangles }, walls), walls };
  }
  const filling = holeMesh(hole, sheet);
  const { triangles, walls } = gridTriangles(rows.length, sheet.mid, hole, filling.triangles);
  const positions = new Float64Array(sheet.points.length + filling.positions.length);
  positions.set(sheet.points);
  positions.set(filling.positions, sheet.points.length);
  return { mesh: withSmoothNormals({ positions, triangles }, walls), walls };
}
