import { broughtOut } from '../../core/geometry/carry.ts';
import { add, along, scale, type Vec3 } from '../../core/geometry/vec.ts';
import type { Evaluation } from '../../core/plan/evaluate.ts';
import { crownFrame } from '../../core/restoration/plannedCrown.ts';
import type { Point } from '../../marks/path.ts';
import type { PatientStep } from '../../words/presentPatient.ts';
import type { Lens } from '../lens.ts';
import { type Frame, facing, jawStands } from './showCamera.ts';

export type LabelId = 'gum' | 'gap' | 'bone' | 'root' | 'implant' | 'later' | 'crown' | 'rest';

/** A word with the line that leads from it to what it names; px. */
export interface PlacedLabel {
  readonly id: LabelId;
  /** Where the word begins (on the right), ends (on the left) or has its middle. */
  readonly at: Point;
  readonly side: 'left' | 'right' | 'middle';
  /** Where the line leaves the word, and what it points at. */
  readonly from: Point;
  readonly to: Point;
}

interface Slot {
  readonly id: LabelId;
  /** Place of the word in the frame, as shares of its width and height. */
  readonly x: number;
  readonly y: number;
  readonly side: PlacedLabel['side'];
}

/** Where the words of each step stand: always in the same place, so that they rest while the drawing is turned. */
const SLOTS: Readonly<Record<PatientStep, readonly Slot[]>> = {
  gap: [
    { id: 'gum', x: 0.86, y: 0.1, side: 'middle' },
    { id: 'gap', x: 0.5, y: 0.97, side: 'middle' },
  ],
  bone: [
    { id: 'root', x: 0.29, y: 0.02, side: 'middle' },
    { id: 'bone', x: 0.76, y: 0.02, side: 'middle' },
  ],
  implant: [
    { id: 'implant', x: 0.5, y: 0.02, side: 'middle' },
    { id: 'later', x: 0.5, y: 0.99, side: 'middle' },
  ],
  healing: [
    { id: 'implant', x: 0.5, y: 0.02, side: 'middle' },
    { id: 'rest', x: 0.27, y: 0.99, side: 'middle' },
  ],
  tooth: [{ id: 'crown', x: 0.5, y: 0.99, side: 'middle' }],
  choices: [],
};

/** What the words point at, in the drawing's own frame, mm. */
export function anchorsOf({ anatomy, plan, placement }: Evaluation): Record<LabelId, Vec3> {
  const { ridge, toJaw, teeth, site } = anatomy;
  const stands = jawStands(anatomy);
  const place = (p: Vec3): Vec3 => broughtOut(stands, toJaw(p));
  const facially = (q: number, d: number, out: number): Vec3 => {
    const u = ridge.half(1, q, d) * ridge.cap(d);
    return ridge.sectionPoint(q, u + out, d);
  };
  const stood = crownFrame(anatomy, plan.crown);
  const crownLength = site.crown.crownLength - plan.crown.wear;
  const crown = (height: number): Vec3 => broughtOut(stood, [0, 2.6, height * crownLength]);
  const { mesial, distal } = teeth;
  const root = along(distal.root.centre, distal.root.a, -0.55 * distal.root.semi[2]);
  const gap = scale(add(facing(mesial), facing(distal)), 0.5);
  return {
    gum: place(facially(mesial.station, 4, site.gum.crest)),
    gap: place(gap),
    bone: place(facially(mesial.station * 0.2, 8, 0)),
    root: place(root),
    implant: place(placement.axisPoint(placement.tP + 0.62 * (placement.tA - placement.tP))),
    later: place(crown(0.82)),
    crown: place(crown(0.6)),
    rest: place(crown(0.95)),
  };
}

/** Type size of the words, px. */
export const LABEL_SIZE = 21;
/** How far a line stays off its word, as a share of the type size. */
const AWAY = { side: 0.4, middle: 0.8 } as const;

/** Words of a step over a frame; on the left side of the arch their places are mirrored, as the drawing is. */
export function placeLabels(
  step: PatientStep,
  mirrored: boolean,
  anchors: Readonly<Record<LabelId, Vec3>>,
  lens: Lens,
  frame: Frame,
  size = LABEL_SIZE,
): PlacedLabel[] {
  const away = { side: size * AWAY.side, middle: size * AWAY.middle };
  return SLOTS[step].map(({ id, x, y, side }) => {
    const at = { x: frame.left + (mirrored ? 1 - x : x) * frame.width, y: frame.top + y * frame.height };
    const to = lens.at(anchors[id]);
    const from =
      side === 'middle'
        ? { x: at.x, y: at.y + (to.y > at.y ? away.middle : -away.middle) }
        : { x: at.x + (side === 'left' ? away.side : -away.side), y: at.y };
    return { id, at, side, from, to };
  });
}
