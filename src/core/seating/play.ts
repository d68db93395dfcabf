import { deg } from '../geometry/vec.ts';
import type { Contact } from './contact.ts';
import { CELL, type ContactGrid, isContact } from './contactGrid.ts';

/** Below this share of the thread (of what lies within the bone's outline) in contact the implant spins in place, per cent: ours, no source. */
export const SPINS_BELOW = 15;

/** How much of a level's circumference must have bone round it for the level to hold anything, as a share: ours. */
const WALLED = 0.5;

export const PLAY_CODES = ['held', 'loose', 'spins'] as const;
export type PlayCode = (typeof PLAY_CODES)[number];

/** How far an implant can move in a hole that is too wide (rule T4). */
export interface Play {
  /** `spins`: too little thread holds it; `loose`: it can be moved; `held`: it cannot. */
  readonly code: PlayCode;
  /** Sideways from the middle of the hole, mm. */
  readonly shift: number;
  /** From the hole's own direction, about whatever point allows most, degrees. 90: nothing limits it. */
  readonly tilt: number;
  /** Per cent of the thread within the bone's outline that is in contact. */
  readonly thread: number;
}

/** A level at which the hole's side limits the implant: its station and how far the axis can move there, mm, ≥ 0. */
export interface Stop {
  readonly station: number;
  readonly room: number;
}

export function playOf(contact: Contact): Play {
  const stops = stopsOf(contact.grid);
  const { shift, tilt } = playBetween(stops);
  const thread = contact.percentWithin;
  const code = thread < SPINS_BELOW ? 'spins' : shift > 0 || tilt > 0 ? 'loose' : 'held';
  return { code, shift, tilt, thread };
}

/**
 * Greatest shift and tilt of a straight axis that must pass each stop within its room (exact in each plane through the hole's axis): of a coaxial
 * cylinder in a wider one, `r_hole − r` and `atan(2 (r_hole − r) / length)`.
 */
export function playBetween(stops: readonly Stop[]): { readonly shift: number; readonly tilt: number } {
  let shift = Infinity;
  let slope = Infinity;
  stops.forEach((a, i) => {
    shift = Math.min(shift, a.room);
    for (const b of stops.slice(0, i))
      slope = Math.min(slope, (a.room + b.room) / Math.abs(a.station - b.station));
  });
  return { shift, tilt: deg(Math.atan(slope)) };
}

/** The levels of a grid with bone round most of them. */
function stopsOf(grid: ContactGrid): Stop[] {
  const out: Stop[] = [];
  for (let i = 0; i < grid.rows; i++) {
    const room = roomAt(grid, i);
    if (room !== null) out.push({ station: grid.stations[i], room });
  }
  return out;
}

/** Least distance from the middle of the hole's outline at a level to the outline, less the envelope's radius; null: too little bone round it. */
function roomAt({ columns, kinds, values, radii }: ContactGrid, row: number): number | null {
  const outline: [x: number, y: number][] = [];
  for (let j = 0; j < columns; j++) {
    const k = row * columns + j;
    if (kinds[k] === CELL.solid) return 0;
    if (kinds[k] !== CELL.gap && !isContact(kinds[k])) continue;
    const reach = radii[row] + values[k];
    const azimuth = (2 * Math.PI * j) / columns;
    outline.push([reach * Math.cos(azimuth), reach * Math.sin(azimuth)]);
  }
  if (outline.length < WALLED * columns) return null;
  const [x, y] = middleOf(outline);
  const least = outline.reduce((d, [px, py]) => Math.min(d, Math.hypot(px - x, py - y)), Infinity);
  return Math.max(0, least - radii[row]);
}

/** Centre of the circle that fits an outline best in the algebraic sense (least squares of the circle's equation): exact on any part of a circle. */
function middleOf(outline: readonly (readonly [number, number])[]): readonly [number, number] {
  const n = outline.length;
  const mx = outline.reduce((sum, [x]) => sum + x, 0) / n;
  const my = outline.reduce((sum, [, y]) => sum + y, 0) / n;
  let [uu, uv, vv, ru, rv] = [0, 0, 0, 0, 0];
  for (const [x, y] of outline) {
    const u = x - mx;
    const v = y - my;
    const square = u * u + v * v;
    uu += u * u;
    uv += u * v;
    vv += v * v;
    ru += (square * u) / 2;
    rv += (square * v) / 2;
  }
  const det = uu * vv - uv * uv;
  return [mx + (ru * vv - rv * uv) / det, my + (rv * uu - ru * uv) / det];
}
