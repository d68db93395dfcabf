import type { Tilt } from '../geometry/pose.ts';
import type { Kit, ToolRef } from './kit.ts';

/** Where the axis of a drill runs, site frame: through `(mouth.m, mouth.f, 0)`, leaning by `tilt`. mm, degrees. */
export interface DrillPose {
  readonly mouth: { readonly m: number; readonly f: number };
  readonly tilt: Tilt;
}

/**
 * A press sideways while the drill runs: both ends of the drill's axis (at the bone entry and at the bottom of its full diameter) move in straight lines,
 * across the axis, toward one azimuth (from `ef` toward `em`, degrees). Equal moves are a shift; `bottom` 0 is a drill that tips about its bottom. mm.
 */
export interface Press {
  readonly toward: number;
  readonly mouth: number;
  readonly bottom: number;
}

/** One pass of a rehearsal as it was made. */
export interface Pass {
  readonly tool: ToolRef;
  readonly pose: DrillPose;
  /** Depth of the full diameter below the bone entry `B` of this pass's axis (sockets taken as filled), mm; for a neck cutter: of the neck's notch. */
  readonly depth: number;
  readonly press: Press | null;
  /** rpm as dialled. */
  readonly speed: number;
  readonly irrigated: boolean;
}

/** The tool in the hand: where it stands now. `depth` as of a {@link Pass}; negative while it is held above the bone. */
export interface Hand {
  readonly tool: ToolRef;
  readonly pose: DrillPose;
  readonly depth: number;
  /** rpm and water as dialled for the next pass. */
  readonly speed: number;
  readonly irrigated: boolean;
}

/** What a teacher dials in: no force is modelled. mm sideways at the mouth, degrees. */
export interface Wander {
  /** The drill skids on a sloping crest by so much at the mouth, down the slope. */
  readonly skid: number;
  /** The drill leans off a dense palatal wall: its bottom drifts facially by so much per 10 mm of depth. */
  readonly drift: number;
}

/** One act of the seating, in order (model 6). */
export type SeatAct =
  | { readonly kind: 'start'; readonly roll: number; readonly pose: DrillPose }
  | {
      readonly kind: 'turn';
      readonly by: 'fingers' | 'wrench';
      /** Degrees, + screws in. */
      readonly degrees: number;
    }
  | { readonly kind: 'steer'; readonly tilt: Tilt }
  | { readonly kind: 'back-out' };

/** The wrench as scripted: its reading grows in straight lines through these points; shoulder levels above the planned one, mm, N·cm. */
export interface WrenchScript {
  readonly points: readonly { readonly above: number; readonly torque: number }[];
}

/** Everything of a rehearsal that is kept with the plan. */
export interface Rehearsal {
  /** The user's own kit; null: the generic one. */
  readonly kit: Kit | null;
  /** The gum is laid back; else depths are read at the gum. */
  readonly flap: boolean;
  /** Spare depth `ρ` chosen below the apex, mm. */
  readonly spare: number;
  readonly hand: Hand | null;
  readonly passes: readonly Pass[];
  /** How many of the passes are looked at, stepping back; null: all. */
  readonly shown: number | null;
  readonly wander: Wander;
  readonly seating: readonly SeatAct[];
  readonly wrench: WrenchScript | null;
}

export const EMPTY_REHEARSAL: Rehearsal = {
  kit: null,
  flap: true,
  spare: 0.5,
  hand: null,
  passes: [],
  shown: null,
  wander: { skid: 0, drift: 0 },
  seating: [],
  wrench: null,
};
