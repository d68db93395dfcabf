import type { Contact } from '../core/seating/contact.ts';
import { CELL } from '../core/seating/contactGrid.ts';
import { polyline } from '../marks/path.ts';
import { DRAWING_HEIGHT, yOf } from './scale.ts';

/** The chart of contact, px: as wide and as high as the wall profile. Shares of the circumference left, millimetres right of them. */
export const CHART_WIDTH = 236;
export const CHART_FOOT = DRAWING_HEIGHT - 32;
export const SHARE = { from: 12, to: 104 } as const;
export const LENGTHS = { zero: 159, half: 31 } as const;

/** What a row of the chart shows, from its upper to its lower edge, px; shares 0…1 of the circumference. */
export interface ContactBar {
  readonly top: number;
  readonly foot: number;
  readonly contact: number;
  readonly gap: number;
  readonly open: number;
  /** Mean press and widest gap, mm; null: none. */
  readonly press: number | null;
  readonly widest: number | null;
}

const known = (value: number): number | null => (Number.isNaN(value) ? null : value);

/** A contact by rows; `platform`: level of the platform plane, mm apical of the entry. */
export function contactBars({ grid, levels }: Contact, platform: number): ContactBar[] {
  const { rows, columns, stations, kinds } = grid;
  const edge = (i: number): number => {
    const between = (stations[Math.max(0, i - 1)] + stations[Math.min(rows - 1, i)]) / 2;
    return yOf(platform + between);
  };
  return Array.from({ length: rows }, (_, i) => {
    const row = kinds.subarray(i * columns, (i + 1) * columns);
    const count = (kind: number) => row.reduce((n, one) => n + Number(one === kind), 0);
    const [gap, open, none] = [count(CELL.gap), count(CELL.open), count(CELL.none)];
    const contact = levels.share[i];
    const rest = gap + open + none;
    const part = (n: number): number => (rest === 0 ? 0 : ((1 - contact) * n) / rest);
    return {
      top: edge(i),
      foot: edge(i + 1),
      contact,
      gap: part(gap),
      open: part(open),
      press: known(levels.press[i]),
      widest: known(levels.gap[i]),
    };
  });
}

/** End of the scale of lengths that holds all of them, mm. */
export function lengthsEnd(bars: readonly ContactBar[]): number {
  const most = Math.max(0, ...bars.map(({ press, widest }) => Math.max(press ?? 0, widest ?? 0)));
  return [0.5, 1, 2].find((end) => most <= end) ?? 4;
}

/** Outlines of what lies between two shares of the circumference: stepped, row by row, rows that follow each other joined. */
export function sharesPath(
  bars: readonly ContactBar[],
  from: (bar: ContactBar) => number,
  size: (bar: ContactBar) => number,
): string {
  const at = (share: number): number => SHARE.from + share * (SHARE.to - SHARE.from);
  const runs: ContactBar[][] = [[]];
  for (const bar of bars) {
    if (size(bar) > 1e-3) runs[runs.length - 1].push(bar);
    else runs.push([]);
  }
  const edge = (run: readonly ContactBar[], of: (bar: ContactBar) => number) =>
    run.flatMap((bar) => [
      { x: at(of(bar)), y: bar.top },
      { x: at(of(bar)), y: bar.foot },
    ]);
  return runs
    .map((run) =>
      polyline([...edge(run, from), ...edge(run, (bar) => from(bar) + size(bar)).reverse()], true),
    )
    .join('');
}

/** A length by depth as runs of points, px; `way` +1 to the right of zero. Rows without one break it. */
export function lengthRuns(
  bars: readonly ContactBar[],
  of: (bar: ContactBar) => number | null,
  way: 1 | -1,
  end: number,
): { x: number; y: number }[][] {
  const runs: { x: number; y: number }[][] = [];
  let open = false;
  for (const bar of bars) {
    const value = of(bar);
    if (value === null) {
      open = false;
      continue;
    }
    if (!open) runs.push([]);
    open = true;
    const x = LENGTHS.zero + (way * LENGTHS.half * Math.min(value, end)) / end;
    runs[runs.length - 1].push({ x, y: bar.top }, { x, y: bar.foot });
  }
  return runs;
}
