import { withSmoothNormals } from '../geometry/crease.ts';
import { MeshBuilder } from '../geometry/loft.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import type { Anatomy } from './anatomy.ts';
import { RidgeShell, type ShellOffsets } from './ridgeShell.ts';
import { addHole, type Hole, holeOf } from './socketHole.ts';

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

/** Columns from the crest down one side, for a side that ends at `end`; closer together over the crest and in its upper half. */
export function columnsDown(end: number, crest: number, side: number): number[] {
  const turn = Math.min(Math.PI / 2, end / 2);
  return Array.from({ length: crest + side }, (_, i) => {
    const k = i + 1;
    if (k <= crest) return (turn * k) / crest;
    const w = (k - crest) / side;
    return turn + (end - turn) * (0.45 * w + 0.55 * w * w);
  });
}

/**
 * Solid of the ridge (rules S1–S6), in the site frame, mm: from the palatal sheet over the crest to the facial one, flat at the floor's
 * level and at both ends, with the void of a fresh socket let into it. Vertices of the sheet lie on the surface. Cost: about 15 ms.
 */
export function ridgeMesh(anatomy: Anatomy, options: RidgeMeshOptions = {}): RidgeMesh {
  const { teeth } = anatomy;
  const density = options.density ?? 1;
  const shell = new RidgeShell(anatomy.ridge, options.offsets);
  const from = options.from ?? teeth.distal.station - RIDGE_BEYOND;
  const to = options.to ?? teeth.mesial.station + RIDGE_BEYOND;
  const rows = rowsAlong(from, to, 0.4 / density);
  const crest = Math.round(20 * density);
  const side = Math.round(72 * density);
  const mid = crest + side;
  const params = rows.map((q) => {
    const palatal = columnsDown(shell.end(q, -1), crest, side).map((v) => -v);
    return [...palatal.reverse(), 0, ...columnsDown(shell.end(q, 1), crest, side)];
  });
  const hole = anatomy.socket ? holeOf(anatomy.socket, shell, rows, params) : null;
  const builder = new MeshBuilder();
  const grid = rows.map((q, i) =>
    params[i].map((v, j) => (hidden(hole, i, j) ? -1 : builder.vertex(shell.point(q, v)))),
  );
  for (let i = 0; i + 1 < rows.length; i++) {
    for (let j = 0; j < 2 * mid; j++) {
      if (hole && i >= hole.i0 && i < hole.i1 && j >= hole.j0 && j < hole.j1) continue;
      builder.quad(grid[i][j], grid[i + 1][j], grid[i + 1][j + 1], grid[i][j + 1]);
    }
  }
  if (hole) addHole(builder, hole, shell, grid, rows, params);
  const walls = builder.triangleCount;
  addCaps(builder, grid, mid);
  return { mesh: withSmoothNormals(builder.build(), walls), walls };
}

const hidden = (hole: Hole | null, i: number, j: number): boolean =>
  hole !== null && i > hole.i0 && i < hole.i1 && j > hole.j0 && j < hole.j1;

/** Closes a grid of rows of `2 mid + 1` corners, from the palatal edge over the top to the facial one: its bottom and both ends, as ladders from side to side. */
export function addCaps(builder: MeshBuilder, grid: readonly (readonly number[])[], mid: number): void {
  const last = grid.length - 1;
  for (let k = 0; k < mid; k++) {
    const rung = (row: readonly number[], at: number): [number, number] => [row[mid - at], row[mid + at]];
    const [p0, f0] = rung(grid[last], k);
    const [p1, f1] = rung(grid[last], k + 1);
    builder.quad(p1, f1, f0, p0);
    const [a0, b0] = rung(grid[0], k);
    const [a1, b1] = rung(grid[0], k + 1);
    builder.quad(b1, a1, a0, b0);
  }
  for (let i = 0; i < last; i++) {
    builder.quad(grid[i][0], grid[i][2 * mid], grid[i + 1][2 * mid], grid[i + 1][0]);
  }
}
