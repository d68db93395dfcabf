import { axisFrame, axisOf, platformOf } from '../core/geometry/pose.ts';
import { add, along, clamp, dot, rad, scale, sub, type Vec3 } from '../core/geometry/vec.ts';
import { advance, type Pivot, pivotPoint, shift, tiltTo, turn } from '../core/plan/edits.ts';
import type { Plan } from '../core/plan/plan.ts';
import { sayAdvance, sayShift, sayTilt, sayTurn } from '../words/sayEdit.ts';

export const HANDLES = [
  'shift',
  'shift-f',
  'shift-m',
  'tilt',
  'tilt-fp',
  'tilt-md',
  'advance',
  'turn',
] as const;
export type HandleId = (typeof HANDLES)[number];

/** How far coronal of the shoulder the handles stand, mm. */
export const PLACES = { facialBar: 3.3, knob: 4.4, mesialBar: 5.5, ring: 9.2 } as const;
/** Half the length of a shift bar, radius and pitch of the screw arrow, how much of a turn it makes; mm. */
export const BAR = 3;
export const RING = { radius: 1.7, pitch: 1.1, turns: 0.78 } as const;
/** Radius of the tilt arc about its pivot, mm, its half-length, degrees, and the least radius. */
export const ARC = { radius: 14.9, half: 14, least: 8 } as const;

/** Point of the axis so many mm coronal of the shoulder, site frame. */
export const onAxis = ({ pose }: Plan, coronal: number): Vec3 =>
  along(platformOf(pose), axisOf(pose.tilt), coronal);

/** Distance from the pivot to the tilt's knob along the axis, mm: coronal, or beyond the apex where the pivot stands too near. */
export function tiltReach(plan: Plan, pivot: Pivot): number {
  const a = axisOf(plan.pose.tilt);
  const away = (p: Vec3) => dot(sub(p, pivotPoint(plan, pivot)), a);
  const reach = away(along(pivotPoint(plan, 'entry'), a, ARC.radius));
  return reach >= ARC.least ? reach : away(along(pivotPoint(plan, 'apex'), a, -3.5));
}

/** Point of the screw arrow, site frame: `share` 0 at its tail, 1 at its head; it turns with the mark. */
export function ringPoint(plan: Plan, share: number): Vec3 {
  const { ef, em, a } = axisFrame(axisOf(plan.pose.tilt));
  const angle = rad(plan.pose.roll) + 2 * Math.PI * RING.turns * (share - 0.5) - 0.6;
  const across = add(scale(ef, Math.cos(angle)), scale(em, Math.sin(angle)));
  const centre = along(onAxis(plan, PLACES.ring), a, RING.pitch * RING.turns * (0.5 - share));
  return along(centre, across, RING.radius);
}

/** What a handle does: amounts from the start of the drag, mm or degrees. */
export interface Handle {
  /** One amount, or two: mesial first, facial second. */
  readonly freedoms: 1 | 2;
  readonly apply: (start: Plan, amounts: readonly number[], pivot: Pivot) => Plan;
  /** Where the hand holds it, site frame; it follows the edit. `reach`: distance of the tilt's knob from the pivot. */
  readonly grip: (plan: Plan, pivot: Pivot, reach: number) => Vec3;
  /** Amounts are rounded to this: what the hand sets can be read in full. */
  readonly step: number;
  /** A first step for the solver, mm or degrees. */
  readonly try: number;
  readonly say: (amounts: readonly number[]) => string;
}

const barEnd = (plan: Plan, coronal: number, way: Vec3): Vec3 => along(onAxis(plan, coronal), way, BAR);
const MESIAL: Vec3 = [1, 0, 0];
const FACIAL: Vec3 = [0, 1, 0];

const tiltBy = (plan: Plan, mesial: number, facial: number, pivot: Pivot): Plan => {
  const { mesiodistal, faciopalatal } = plan.pose.tilt;
  return tiltTo(plan, { mesiodistal: mesiodistal + mesial, faciopalatal: faciopalatal + facial }, pivot);
};

const knob = (plan: Plan, pivot: Pivot, reach: number): Vec3 =>
  along(pivotPoint(plan, pivot), axisOf(plan.pose.tilt), reach);

/** Point of a tilt's arc, so many degrees facially or mesially of the axis; site frame. */
export function arcPoint(plan: Plan, pivot: Pivot, reach: number, mesial: number, facial: number): Vec3 {
  const { mesiodistal, faciopalatal } = plan.pose.tilt;
  const a = axisOf({
    mesiodistal: clamp(mesiodistal + mesial, -80, 80),
    faciopalatal: clamp(faciopalatal + facial, -80, 80),
  });
  return along(pivotPoint(plan, pivot), a, reach);
}

export const HANDLE: Readonly<Record<HandleId, Handle>> = {
  shift: {
    freedoms: 2,
    apply: (plan, [m, f]) => shift(plan, m, f),
    grip: (plan) => onAxis(plan, PLACES.knob),
    step: 0.01,
    try: 0.5,
    say: ([m, f]) => sayShift(m, f),
  },
  'shift-f': {
    freedoms: 1,
    apply: (plan, [f]) => shift(plan, 0, f),
    grip: (plan) => barEnd(plan, PLACES.facialBar, FACIAL),
    step: 0.01,
    try: 0.5,
    say: ([f]) => sayShift(0, f),
  },
  'shift-m': {
    freedoms: 1,
    apply: (plan, [m]) => shift(plan, m, 0),
    grip: (plan) => barEnd(plan, PLACES.mesialBar, MESIAL),
    step: 0.01,
    try: 0.5,
    say: ([m]) => sayShift(m, 0),
  },
  tilt: {
    freedoms: 2,
    apply: (plan, [m, f], pivot) => tiltBy(plan, m, f, pivot),
    grip: knob,
    step: 0.1,
    try: 2,
    say: ([m, f]) => sayTilt(m, f),
  },
  'tilt-fp': {
    freedoms: 1,
    apply: (plan, [f], pivot) => tiltBy(plan, 0, f, pivot),
    grip: (plan, pivot, reach) => arcPoint(plan, pivot, reach, 0, ARC.half),
    step: 0.1,
    try: 2,
    say: ([f]) => sayTilt(0, f),
  },
  'tilt-md': {
    freedoms: 1,
    apply: (plan, [m], pivot) => tiltBy(plan, m, 0, pivot),
    grip: (plan, pivot, reach) => arcPoint(plan, pivot, reach, ARC.half, 0),
    step: 0.1,
    try: 2,
    say: ([m]) => sayTilt(m, 0),
  },
  advance: {
    freedoms: 1,
    apply: (plan, [d]) => advance(plan, d),
    grip: (plan) => onAxis(plan, PLACES.ring),
    step: 0.01,
    try: 0.5,
    say: ([d]) => sayAdvance(d),
  },
  turn: {
    freedoms: 1,
    apply: (plan, [by]) => turn(plan, by),
    grip: (plan) => ringPoint(plan, 1),
    step: 1,
    try: 8,
    say: ([by]) => sayTurn(by),
  },
};
