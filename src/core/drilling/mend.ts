import type { Ridge } from '../anatomy/ridge.ts';
import { axisFrame, axisOf } from '../geometry/pose.ts';
import { deg, dot, type Vec3 } from '../geometry/vec.ts';
import { boneEntry } from './boneEntry.ts';
import { corrected, type DrillEdit } from './correct.ts';
import { type Circles, circlesOf, type Outlook, outlookOf, type PlannedHole } from './outlook.ts';
import { PassBody } from './passBody.ts';
import type { DrillPose, Press } from './rehearsal.ts';

export type MendKind =
  | 'go-on'
  | 'shift'
  | 'tilt-mouth'
  | 'tilt-bottom'
  | 'to-plan'
  | 'press'
  | 'press-tipping';

/** One way to go on from a pass, with what it promises (rule D9). */
export interface Mend {
  readonly kind: MendKind;
  /** In order; {@link corrected} carries them out. */
  readonly edits: readonly DrillEdit[];
  /** Where the drill then stands. */
  readonly pose: DrillPose;
  /** How the passes made end if the plan's tools go on in that pose to the plan's depth. */
  readonly outlook: Outlook;
  /** What is left against the plan at crest and apex, and the angle. */
  readonly left: Circles;
}

export interface Mends {
  readonly all: readonly Mend[];
  /** The one that ends nearest to the plan at the apex without leaving a gap open. */
  readonly best: Mend;
}

/** Distance of the dot from the middle at the apex, mm. */
const offAtApex = ({ left }: Mend): number => Math.hypot(left.apex.facial, left.apex.mesial);

/** The drill that stands in the last pass of `made` may be mended so; `made` has at least one. */
export function mendsOf(ridge: Ridge, made: readonly PassBody[], planned: PlannedHole): Mends {
  const last = made[made.length - 1];
  const pose = last.endPose();
  const all = editsOf(ridge, pose, last, planned.drill)
    .map(([kind, edits]) => promised(ridge, made, planned, { kind, edits, pose }))
    .filter((mend) => mend !== null);
  const sound = all.filter((mend) => mend.outlook.answer !== 'open');
  const best = (sound.length > 0 ? sound : all).reduce((p, q) =>
    offAtApex(q) < offAtApex(p) - 1e-9 ? q : p,
  );
  return { all, best };
}

/** Ways to go on from a pose, as edits. */
function editsOf(
  ridge: Ridge,
  pose: DrillPose,
  last: PassBody,
  planned: PassBody,
): [MendKind, DrillEdit[]][] {
  const turn = {
    faciopalatal: planned.pose.tilt.faciopalatal - pose.tilt.faciopalatal,
    mesiodistal: planned.pose.tilt.mesiodistal - pose.tilt.mesiodistal,
  };
  const aboutMouth: DrillEdit = { kind: 'tilt', about: 'mouth', ...turn };
  const turned = corrected(ridge, pose, last.depth, aboutMouth);
  const pressed = pressToward(last, planned);
  return [
    ['go-on', []],
    ['shift', [shiftOnto(pose, planned)]],
    ['tilt-mouth', [aboutMouth]],
    ['tilt-bottom', [{ ...aboutMouth, about: 'bottom' }]],
    ['to-plan', [aboutMouth, shiftOnto(turned, planned)]],
    ['press', [{ kind: 'press', press: pressed }]],
    ['press-tipping', [{ kind: 'press', press: { ...pressed, bottom: 0 } }]],
  ];
}

/** The shift that brings an axis onto the plan's bone entry, its direction kept. */
function shiftOnto(pose: DrillPose, planned: PassBody): DrillEdit {
  const a = axisOf(pose.tilt);
  const [m, f, c] = planned.entry.point;
  return {
    kind: 'shift',
    facial: f - (c * a[1]) / a[2] - pose.mouth.f,
    mesial: m - (c * a[0]) / a[2] - pose.mouth.m,
  };
}

/** The press that carries the axis sideways, as a shift, as near to the plan's bone entry as it goes. */
function pressToward(last: PassBody, planned: PassBody): Press {
  const { mouth, a } = last.axisAt(1);
  const { ef, em } = axisFrame(a);
  const to: Vec3 = [
    planned.entry.point[0] - mouth[0],
    planned.entry.point[1] - mouth[1],
    planned.entry.point[2] - mouth[2],
  ];
  const [facial, mesial] = [dot(to, ef), dot(to, em)];
  const far = Math.hypot(facial, mesial);
  return { toward: deg(Math.atan2(mesial, facial)), mouth: far, bottom: far };
}

/** Carries edits out and says how it ends; null where the axis would miss the bone. */
function promised(
  ridge: Ridge,
  made: readonly PassBody[],
  planned: PlannedHole,
  { kind, edits, pose }: Pick<Mend, 'kind' | 'edits' | 'pose'>,
): Mend | null {
  const last = made[made.length - 1];
  const to = edits.reduce((from, edit) => corrected(ridge, from, last.depth, edit), pose);
  const entry = boneEntry(ridge, to);
  if (!entry) return null;
  const put = (body: PassBody): PassBody =>
    new PassBody({ profile: body.profile, pose: to, entry, depth: body.depth, press: null });
  const press = edits.find((edit) => edit.kind === 'press');
  const swept = press
    ? new PassBody({
        profile: last.profile,
        pose,
        entry: boneEntry(ridge, pose) ?? last.entry,
        depth: last.depth,
        press: press.press,
      })
    : null;
  const moved: PlannedHole = {
    drill: put(planned.drill),
    neck: planned.neck && put(planned.neck),
    implant: planned.implant,
  };
  const outlook = outlookOf(swept ? [...made, swept] : made, moved);
  const stood = new PassBody({ profile: last.profile, pose: to, entry, depth: last.depth, press: null });
  return { kind, edits, pose: to, outlook, left: circlesOf(stood, planned.drill) };
}
