export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A coordinate in a path: a hundredth of a pixel is enough, and keeps the text short. */
export const px = (value: number): number => Math.round(value * 100) / 100;

/** `x y` for a path's data. */
export const pair = ({ x, y }: Point): string => `${px(x)} ${px(y)}`;

/** A polyline's path; `close` joins the last point to the first. */
export const polyline = (points: readonly Point[], close = false): string =>
  points.length === 0 ? '' : `M${points.map(pair).join('L')}${close ? 'Z' : ''}`;
