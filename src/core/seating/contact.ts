import type { Void } from '../drilling/bodies.ts';
import type { Placement } from '../measure/placement.ts';
import {
  CELL,
  CONTACT_GRID,
  type ContactGrid,
  contactGrid,
  crossingShare,
  type GridSize,
  isContact,
  TOUCH,
} from './contactGrid.ts';

/** The widest gap between envelope and hole, where bone lies beyond it. */
export interface WidestGap {
  /** mm, along the radial line. */
  readonly gap: number;
  /** mm apical of the platform plane. */
  readonly station: number;
  /** Level `t` (rule F5), mm. */
  readonly level: number;
  /** Degrees from `ef` toward `em`. */
  readonly azimuth: number;
}

/** The rows of the grid as a chart. Arrays have one entry a row. */
export interface ContactLevels {
  /** Share of the circumference in contact, 0…1. */
  readonly share: Float64Array;
  /** Mean press over what is in contact, mm, ≥ 0; NaN where nothing is. */
  readonly press: Float64Array;
  /** Widest gap, mm; NaN where there is none. */
  readonly gap: Float64Array;
}

/** An implant against a hole (rules T1 to T3). */
export interface Contact {
  readonly grid: ContactGrid;
  readonly levels: ContactLevels;
  /** Of the whole threaded envelope, mm². */
  readonly threaded: number;
  /** Threaded envelope in contact: per cent of the whole of it, and of what of it lies within the bone's outline (0 where none does). */
  readonly percent: number;
  readonly percentWithin: number;
  /** Of the threaded envelope, per cent: in a hole that has broken out. */
  readonly openPercent: number;
  /** Mean press over the threaded envelope in contact, mm; 0 where nothing is. */
  readonly meanPress: number;
  readonly widest: WidestGap | null;
  /** Room between the envelope and the hole's side over the implant's whole length, mm³. */
  readonly gapVolume: number;
}

export function contactOf(at: Placement, hole: Void, size: GridSize = CONTACT_GRID): Contact {
  const grid = contactGrid(at, hole, size);
  const edges = edgesOf(at, hole, grid);
  const levels = levelsOf(grid, edges);
  return {
    grid,
    levels,
    ...areasOf(grid, edges),
    widest: widestOf(at, grid),
    gapVolume: gapVolumeOf(grid),
  };
}

/** Where contact begins or ends on the edges that leave a point toward the next azimuth and toward the next row, as shares; NaN: nowhere. */
interface Edges {
  readonly round: Float64Array;
  readonly down: Float64Array;
}

function edgesOf(at: Placement, hole: Void, grid: ContactGrid): Edges {
  const { rows, columns, kinds } = grid;
  const round = new Float64Array(rows * columns).fill(Number.NaN);
  const down = new Float64Array(rows * columns).fill(Number.NaN);
  for (let i = 0; i < rows; i++) {
    for (let j = 0; j < columns; j++) {
      const k = i * columns + j;
      const here = isContact(kinds[k]);
      const next = i * columns + ((j + 1) % columns);
      if (isContact(kinds[next]) !== here) round[k] = crossingShare(at, hole, grid, [i, j], [i, j + 1]);
      if (i + 1 < rows && isContact(kinds[k + columns]) !== here)
        down[k] = crossingShare(at, hole, grid, [i, j], [i + 1, j]);
    }
  }
  return { round, down };
}

function levelsOf({ rows, columns, kinds, values }: ContactGrid, { round }: Edges): ContactLevels {
  const share = new Float64Array(rows);
  const press = new Float64Array(rows);
  const gap = new Float64Array(rows).fill(Number.NaN);
  for (let i = 0; i < rows; i++) {
    let pressed = 0;
    let touching = 0;
    for (let j = 0; j < columns; j++) {
      const k = i * columns + j;
      const here = isContact(kinds[k]);
      const w = round[k];
      share[i] += (Number.isNaN(w) ? Number(here) : here ? w : 1 - w) / columns;
      if (here) {
        pressed -= values[k];
        touching++;
      } else if (kinds[k] === CELL.gap && !(values[k] <= gap[i])) gap[i] = values[k];
    }
    press[i] = touching === 0 ? Number.NaN : pressed / touching;
  }
  return { share, press, gap };
}

/** Lateral area of the frustum between row `i` and the next, over one column, mm². */
export function cellArea({ stations, radii, columns }: ContactGrid, i: number): number {
  const h = stations[i + 1] - stations[i];
  return (Math.PI * (radii[i] + radii[i + 1]) * Math.hypot(h, radii[i + 1] - radii[i])) / columns;
}

function areasOf(
  grid: ContactGrid,
  edges: Edges,
): Pick<Contact, 'threaded' | 'percent' | 'percentWithin' | 'openPercent' | 'meanPress'> {
  const { rows, columns, kinds, values, threadFrom } = grid;
  let whole = 0;
  let touching = 0;
  let within = 0;
  let open = 0;
  let pressed = 0;
  for (let i = threadFrom; i + 1 < rows; i++) {
    const area = cellArea(grid, i);
    whole += area * columns;
    for (let j = 0; j < columns; j++) {
      touching += area * cellShare(grid, edges, i, j);
      // The four corners stand for the cell where its inside matters less.
      for (const row of [i, i + 1]) {
        const k = row * columns + j;
        if (kinds[k] !== CELL.none) within += area / 2;
        if (kinds[k] === CELL.open) open += area / 2;
        if (isContact(kinds[k])) pressed -= (values[k] * area) / 2;
      }
    }
  }
  const corners = pressedWeight(grid);
  return {
    threaded: whole,
    percent: (100 * touching) / whole,
    percentWithin: within === 0 ? 0 : Math.min(100, (100 * touching) / within),
    openPercent: (100 * open) / whole,
    meanPress: corners === 0 ? 0 : pressed / corners,
  };
}

/** Area that the points in contact stand for, mm²: what the mean press is taken over. */
function pressedWeight(grid: ContactGrid): number {
  const { rows, columns, kinds, threadFrom } = grid;
  let sum = 0;
  for (let i = threadFrom; i + 1 < rows; i++) {
    const area = cellArea(grid, i) / 2;
    for (let j = 0; j < columns; j++) {
      if (isContact(kinds[i * columns + j])) sum += area;
      if (isContact(kinds[(i + 1) * columns + j])) sum += area;
    }
  }
  return sum;
}

/** Share of the cell between row `i` and the next, column `j` and the next, that is in contact: the polygon that its corners and crossings make. */
function cellShare({ columns, kinds }: ContactGrid, { round, down }: Edges, i: number, j: number): number {
  const next = (j + 1) % columns;
  const a = i * columns + j;
  const b = i * columns + next;
  const c = (i + 1) * columns + next;
  const d = (i + 1) * columns + j;
  const [ina, inb, inc, ind] = [a, b, c, d].map((k) => isContact(kinds[k]));
  if (ina === inb && inb === inc && inc === ind) return Number(ina);
  let twice = 0;
  let first: [number, number] | null = null;
  let last: [number, number] | null = null;
  const to = (u: number, w: number): void => {
    if (last) twice += last[0] * w - u * last[1];
    first ??= [u, w];
    last = [u, w];
  };
  if (ina) to(0, 0);
  if (ina !== inb) to(round[a], 0);
  if (inb) to(1, 0);
  if (inb !== inc) to(1, down[b]);
  if (inc) to(1, 1);
  if (inc !== ind) to(round[d], 1);
  if (ind) to(0, 1);
  if (ind !== ina) to(0, down[a]);
  if (first) to(first[0], first[1]);
  return Math.abs(twice) / 2;
}

function widestOf(at: Placement, { rows, columns, kinds, values, stations }: ContactGrid): WidestGap | null {
  let best = -1;
  for (let k = 0; k < rows * columns; k++) {
    if (kinds[k] === CELL.gap && (best < 0 || values[k] > values[best] + TOUCH)) best = k;
  }
  if (best < 0) return null;
  const station = stations[Math.floor(best / columns)];
  return {
    gap: values[best],
    station,
    level: at.tP + station,
    azimuth: (360 * (best % columns)) / columns,
  };
}

/** Integral of the ring between envelope and hole over the stations (trapezium), mm³. */
function gapVolumeOf({ rows, columns, kinds, values, stations, radii }: ContactGrid): number {
  const ring = (i: number): number => {
    let sum = 0;
    for (let k = i * columns; k < (i + 1) * columns; k++) {
      if (kinds[k] !== CELL.gap && kinds[k] !== CELL.open) continue;
      sum += (radii[i] + values[k]) ** 2 - radii[i] ** 2;
    }
    return (Math.PI * sum) / columns;
  };
  let volume = 0;
  let before = ring(0);
  for (let i = 1; i < rows; i++) {
    const here = ring(i);
    volume += ((before + here) / 2) * (stations[i] - stations[i - 1]);
    before = here;
  }
  return volume;
}
