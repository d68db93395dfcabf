import { siteInJaw } from '../core/anatomy/jawFrame.ts';
import { placedIn } from '../core/geometry/carry.ts';
import { add, cross, dot, scale, sub, unit, type Vec3 } from '../core/geometry/vec.ts';
import { type AngleMark, CHANNEL_HALF, type ContourSide, crownMarks } from '../core/plan/crownMarks.ts';
import { type Evaluation, readingOf } from '../core/plan/evaluate.ts';
import { band } from '../marks/band.ts';
import { AXIS, BEFORE_THE_CUT, dashed, HIDDEN } from '../marks/dash.ts';
import { type Point, polyline, px } from '../marks/path.ts';
import type { CrownLook } from '../state/session.ts';
import type { Cut, Removed } from './cut.ts';
import { pathOf } from './drawing.ts';
import type { Lens } from './lens.ts';
import { type Sight, sightOf } from './sight.ts';
import { clipped, standingSilhouette } from './silhouette.ts';

/** Radius of the mark where the axis comes out, and the reach of its cross, mm. */
const EXIT = { ring: 0.85, cross: 1.25 } as const;

/** From where a side's contour is seen. */
const SEEN_FROM = { facial: 'side', mesial: 'front', distal: 'front' } as const satisfies Record<
  ContourSide,
  Sight
>;

/** An angle on the picture: its two legs and its arc. */
export interface AngleDrawing {
  readonly id: string;
  readonly legs: string;
  readonly arc: string;
}

/** The crown group in ink for one frame, path data; px. */
export interface CrownDrawing {
  /** The crown's outline: of what stands, and of what is taken away or only planned. */
  readonly stands: string;
  readonly gone: string;
  readonly edge: string;
  readonly channel: string | null;
  /** The straight way on from the bend. */
  readonly straight: string;
  readonly exit: { readonly ring: string; readonly cross: string; readonly hidden: boolean } | null;
  readonly angles: readonly AngleDrawing[];
  readonly finish: { readonly front: string; readonly back: string } | null;
  readonly lowered: string;
  /** Outline of the whole abutment, where some of it is to be ground off. */
  readonly whole: string;
  readonly contacts: string;
}

interface Setting {
  readonly look: CrownLook;
  /** Which half is taken away, and the cut that does it. */
  readonly removed: Removed;
  readonly cut: Cut;
}

/** The crown's outline as the eye has it: with a cut, what stands apart from what is taken away; a crown that is only an outline is all of the second kind. */
function outlineOf(evaluation: Evaluation, lens: Lens, { look, removed, cut }: Setting) {
  if (look === 'none') return { stands: '', gone: '' };
  const { anatomy, restoration } = evaluation;
  const { mesh, frame } = restoration.crown;
  const lines = standingSilhouette(mesh, placedIn(siteInJaw(anatomy), frame), lens.eye);
  if (removed === 0) {
    const drawn = pathOf(lines, lens, look === 'outline' ? BEFORE_THE_CUT : undefined);
    return look === 'outline' ? { stands: '', gone: drawn } : { stands: drawn, gone: '' };
  }
  const { normal: n, constant } = cut.keep;
  const stays = ([x, y, z]: Vec3) => n.x * x + n.y * y + n.z * z + constant >= 0;
  return {
    stands: pathOf(clipped(lines, stays), lens),
    gone: pathOf(
      clipped(lines, (p) => !stays(p)),
      lens,
      BEFORE_THE_CUT,
    ),
  };
}

/** A circle of the jaw frame about a point, across a direction. */
function circle(centre: Vec3, normal: Vec3, radius: number): Vec3[] {
  const u = unit(cross(normal, Math.abs(normal[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]));
  const v = cross(normal, u);
  return Array.from({ length: 28 }, (_, i) => {
    const turn = (2 * Math.PI * i) / 28;
    return add(centre, add(scale(u, radius * Math.cos(turn)), scale(v, radius * Math.sin(turn))));
  });
}

/** A ring and a cross on the crown's surface where the axis comes out; broken where the crown stands before it. */
function exitOf(evaluation: Evaluation, lens: Lens): CrownDrawing['exit'] {
  const { exit } = crownMarks(evaluation);
  if (!exit) return null;
  const { at, normal } = exit;
  const around = (radius: number) => circle(at, normal, radius).map(lens.at);
  const [near, far] = [around(EXIT.ring), around(EXIT.cross)];
  const hidden = dot(normal, sub(lens.eye, at)) < 0;
  const arms = [0, 7].map((i) => polyline([far[i], far[i + 14]]));
  return { ring: hidden ? dashed(near, HIDDEN, true) : polyline(near, true), cross: arms.join(''), hidden };
}

const angleOf = (id: string, { apex, onAxis, to, arc }: AngleMark, lens: Lens): AngleDrawing => ({
  id,
  legs: polyline([lens.at(onAxis), lens.at(apex), lens.at(to)]),
  arc: polyline(arc.map(lens.at)),
});

/** The finishing line, whole where it faces the eye, broken where the abutment stands before it. */
function finishOf(evaluation: Evaluation, lens: Lens): CrownDrawing['finish'] {
  if (!evaluation.restoration.reduction) return null;
  const { finish } = crownMarks(evaluation);
  const middle = evaluation.anatomy.toJaw(evaluation.placement.platform);
  const front = (p: Vec3) => dot(sub(p, middle), sub(lens.eye, middle)) >= 0;
  const rim = [{ points: finish, closed: true }];
  return {
    front: pathOf(clipped(rim, front), lens),
    back: pathOf(
      clipped(rim, (p) => !front(p)),
      lens,
      HIDDEN,
    ),
  };
}

const ring = ({ x, y }: Point, r: number): string =>
  `M${px(x - r)} ${px(y)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;

/** The one-piece abutment before grinding, as the eye has it: a long lens sees its radii across the line of sight. */
function wholeAbutment({ plan, placement, anatomy, restoration }: Evaluation, lens: Lens): string {
  const { abutment } = plan.implant;
  if (!abutment || !restoration.reduction?.from) return '';
  const foot = anatomy.toJaw(placement.platform);
  const axis = anatomy.toJawDirection(placement.a);
  const across = unit(cross(axis, sub(lens.eye, foot)));
  const corner = (height: number, radius: number): Point =>
    lens.at(add(foot, add(scale(axis, height), scale(across, radius))));
  const { height, baseDiameter, topDiameter } = abutment;
  const corners = [
    corner(0, baseDiameter / 2),
    corner(height, topDiameter / 2),
    corner(height, -topDiameter / 2),
    corner(0, -baseDiameter / 2),
  ];
  return dashed(corners, BEFORE_THE_CUT, true);
}

/** From the side the channel ends at the crown's surface; from elsewhere it is a band about its middle line. */
function channelOf(evaluation: Evaluation, lens: Lens, sight: Sight): CrownDrawing['channel'] {
  const { channel } = crownMarks(evaluation);
  if (!channel || sight === 'top') return null;
  const { middle, walls } = channel;
  const [palatal, facial] = walls;
  const outline =
    sight === 'side'
      ? [...palatal, ...[...facial].reverse()].map(lens.at)
      : band(middle.map(lens.at), CHANNEL_HALF * lens.scale(middle[0]));
  return polyline(outline, true);
}

/** Everything in ink about the crown, as a view has it. */
export function crownDrawing(evaluation: Evaluation, lens: Lens, setting: Setting): CrownDrawing {
  const marks = crownMarks(evaluation);
  const sight = sightOf(evaluation, lens);
  const { access } = evaluation.restoration;
  const { toJaw } = evaluation.anatomy;
  const contacts = (['mesial', 'distal'] as const).flatMap((side) => {
    const { from } = readingOf(evaluation.readings, `contact-to-crest-${side}`);
    return from ? [ring(lens.at(from), 4)] : [];
  });
  return {
    ...outlineOf(evaluation, lens, setting),
    edge: polyline(marks.edge.map(lens.at)),
    channel: channelOf(evaluation, lens, sight),
    straight:
      access && marks.correction ? dashed([toJaw(access.bend), toJaw(access.exit)].map(lens.at), AXIS) : '',
    exit: exitOf(evaluation, lens),
    angles: [
      ...marks.contours
        .filter(({ side }) => sight === SEEN_FROM[side])
        .map((one) => angleOf(`emergence-${one.side}`, one, lens)),
      ...(marks.correction && sight === 'side'
        ? [angleOf('access-exit-correction', marks.correction, lens)]
        : []),
    ],
    finish: finishOf(evaluation, lens),
    lowered: marks.lowered ? dashed(marks.lowered.map(lens.at), HIDDEN) : '',
    whole: wholeAbutment(evaluation, lens),
    contacts: contacts.join(''),
  };
}
