/** A drill: a cylinder with a conical point. mm, degrees, rpm. */
export interface Drill {
  readonly diameter: number;
  /** Full angle of the point. */
  readonly point: number;
  /** Depths at which the shank is marked. */
  readonly marks: readonly number[];
  /** Whether the marks count from the tip of the point; else from where the full diameter begins. */
  readonly marksCountPoint: boolean;
  /** From the tip to the head of the handpiece when the drill is seated in it. */
  readonly length: number;
  readonly speed: { readonly low: number; readonly high: number };
}

/** A neck cutter: a frustum with two labelled notches, one where the neck begins (`neckDiameter`), one where the shoulder lies. mm, rpm. */
export interface NeckCutter {
  readonly neckDiameter: number;
  readonly shoulderDiameter: number;
  /** From the neck's notch to the shoulder's, along the axis. */
  readonly height: number;
  readonly length: number;
  readonly speed: { readonly low: number; readonly high: number };
}

/** The head of the handpiece, a cylinder about the drill's axis, and what lengthens a drill. mm. */
export interface Handpiece {
  readonly headDiameter: number;
  readonly headHeight: number;
  readonly extension: number;
}

/** Tools of one rehearsal; the generic kit is data in the same form as a user's own. Drills in the order of their diameters. */
export interface Kit {
  readonly title: string;
  readonly drills: readonly Drill[];
  readonly necks: readonly NeckCutter[];
  readonly handpiece: Handpiece;
}

/** A tool of a kit by its place there. */
export type ToolRef =
  | { readonly kind: 'drill'; readonly index: number }
  | { readonly kind: 'neck'; readonly index: number };

/** Length of a drill's point beyond its full diameter, mm: `(D/2)/tan(point/2)`. */
export const pointLength = (drill: Pick<Drill, 'diameter' | 'point'>): number =>
  drill.diameter / 2 / Math.tan((drill.point * Math.PI) / 360);
