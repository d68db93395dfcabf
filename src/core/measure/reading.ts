import type { Vec3 } from '../geometry/vec.ts';
import type { Limit } from './limit.ts';

export type Side = 'facial' | 'palatal';

export const READING_IDS = [
  'facial-wall-1mm',
  'facial-wall-3mm',
  'facial-wall-5mm',
  'facial-wall-apex',
  'facial-wall-thinnest',
  'facial-wall-true',
  'palatal-wall-1mm',
  'palatal-wall-3mm',
  'palatal-wall-5mm',
  'palatal-wall-apex',
  'palatal-wall-thinnest',
  'palatal-wall-true',
  'centring-crest',
  'centring-apex',
  'centring-mesiodistal-crest',
  'centring-mesiodistal-incisal',
  'axis-to-roots-mesiodistal',
  'shoulder-to-crest-facial',
  'shoulder-to-crest-palatal',
  'shoulder-to-crest-mesial',
  'shoulder-to-crest-distal',
  'shoulder-to-cej',
  'shoulder-to-gum-margin',
  'shoulder-to-gum-present',
  'incisal-line-offset',
  'incisal-line-place',
  'incisal-line-angle',
  'axis-to-ridge-faciopalatal',
  'axis-to-ridge-mesiodistal',
  'axis-to-ridge-total',
  'axis-to-crown-faciopalatal',
  'axis-to-crown-mesiodistal',
  'axis-to-crown-total',
  'root-mesial',
  'root-mesial-shoulder',
  'root-distal',
  'root-distal-shoulder',
  'apex-to-floor',
  'apex-to-concavity',
  'canal',
  'canal-level',
  'exposure-dehiscence',
  'exposure-fenestration',
  'exposure-socket',
  'exposed-threads',
  'bone-contact',
  'socket-gap-facial',
  'contact-to-crest-mesial',
  'contact-to-crest-distal',
  'access-exit',
  'access-exit-to-edge',
  'access-exit-correction',
  'emergence-mesial',
  'emergence-distal',
  'emergence-facial',
  'neck-facing',
  'neck-facing-cost',
  'abutment-reduction-depth',
  'abutment-reduction-volume',
  'margin-reduction',
  'crown-height',
  'palatal-clearance',
  'tray-room',
  'mesiodistal-room',
] as const;
export type ReadingId = (typeof READING_IDS)[number];

/** `place`: −1 facial, 0 at the edge, 1 palatal. */
export type Unit = 'mm' | 'deg' | 'percent' | 'mm2' | 'mm3' | 'count' | 'ratio' | 'place';
export type Status = 'within' | 'near' | 'beyond' | 'not-applicable';

/** Why a reading has no value, or no status; a code of the message catalogue. */
export type Reason =
  | 'no-limit'
  | 'not-counted'
  | 'shoulder-deeper'
  | 'past-apex'
  | 'through-crest'
  | 'nothing-counts'
  | 'void-between'
  | 'no-bone-met'
  | 'no-wall'
  | 'healed-site'
  | 'axis-misses-socket'
  | 'canal-elsewhere'
  | 'round-neck'
  | 'wrong-fixing'
  | 'misses-crown'
  | 'no-palatal-way'
  | 'no-contour'
  | 'shoulder-shows'
  | 'no-abutment'
  | 'opponents-elsewhere'
  | 'one-piece'
  | 'outside';

/** One measurement with the two points it was taken between. The line that is drawn, the number that is shown and the row that is printed all use it. */
export interface Reading {
  readonly id: ReadingId;
  /** In `unit`; signs as in rules M1–M14; null where there is none, and then `reason` says why. */
  readonly value: number | null;
  readonly unit: Unit;
  /** The level (F5) or ridge depth where it was found, mm, for readings that search for one. */
  readonly level: number | null;
  /** Ends of the measurement in the jaw frame, mm. */
  readonly from: Vec3 | null;
  readonly to: Vec3 | null;
  readonly limit: Limit | null;
  /** null: a value without a status (no limit, or not counted). */
  readonly status: Status | null;
  readonly reason: Reason | null;
  /** A further number that the reason or the label speaks of, in `unit` (distance to the bone where none is met); for `contact-to-crest-*` the study's percentage. */
  readonly aside: number | null;
  /** Where the status was decided if not by `value` itself: the thinnest wall may hold while another level misses a stricter band (M14). */
  readonly judgedAt: { readonly level: number; readonly value: number } | null;
}

/** One level of a wall profile. */
export interface ProfileSample {
  /** Level along the axis, mm apical of the entry. */
  readonly level: number;
  /** Bone on the ray, negative outside, null where the ray does not end on the sheet. */
  readonly wall: number | null;
  /** Void on the ray, mm. */
  readonly gap: number;
  readonly counts: boolean;
}

export interface WallProfile {
  readonly side: Side;
  readonly samples: readonly ProfileSample[];
}
