/**
 * Worked cases. Every answer is worked by hand in the comment beside it, from plane geometry and the model's definitions; nothing here is
 * copied from a run. Unless a case says otherwise: slab 7.5 wide, straight arch, vertical, crest at 0, floor 18 below; cylinder
 * r 1.75, length 11, upright, its shoulder at the crest's level in the middle of the slab.
 */
import { describe, expect, it } from 'vitest';
import type { SocketState } from '../../src/core/anatomy/site.ts';
import type { Reading, ReadingId } from '../../src/core/measure/reading.ts';
import { evaluate, readingOf } from '../../src/core/plan/evaluate.ts';
import { slabSite } from '../support/demoPlans.ts';
import { cylinder, type SlabNumbers, slabPlan, uprightTooth } from '../support/slabs.ts';

type Expected = Partial<Pick<Reading, 'value' | 'level' | 'status' | 'reason' | 'aside'>>;
interface Worked {
  readonly name: string;
  readonly plan: SlabNumbers;
  readonly answers: Partial<Record<ReadingId, number | Expected>>;
  /** mm, where the answer is found by a search or a sum over strips rather than in closed form. */
  readonly tolerance?: number;
}

const sin = (degrees: number) => Math.sin((degrees * Math.PI) / 180);
const cos = (degrees: number) => Math.cos((degrees * Math.PI) / 180);
const tan = (degrees: number) => Math.tan((degrees * Math.PI) / 180);
const skipped = (reason: Reading['reason'], aside: number | null = null): Expected => ({
  value: null,
  status: 'not-applicable',
  reason,
  aside,
});

/** Void: circular, width 6 and breadth 6, open cylinder to 8 mm, then 4 mm of half-ellipsoid; wall 0.8 at 2 mm. Slab 10: its facial side at 4.2. */
const socket = (dehiscence: number): SocketState => ({
  kind: 'socket',
  axis: { faciopalatal: 0, mesiodistal: 0 },
  width: 6,
  breadth: 6,
  depth: 12,
  parallel: 8,
  wall: { thickness: 0.8, level: 2 },
  dehiscence: { depth: dehiscence, width: 4 },
});

/** Site 11 on a straight arch: the midline is where the gap's mesial contact is, gap/2; a vertical tube of radius 1 stands there. */
const tube = (changes: Record<string, number> = {}) => ({
  tooth: 11 as const,
  gap: 8,
  canal: {
    behind: 3,
    below: 0,
    inclination: 0,
    length: 16,
    foramen: 2,
    middle: 2,
    nasal: 2,
    ...changes,
  },
});

const CASES: readonly Worked[] = [
  {
    name: 'shoulder at the crest, upright, centred; crest square',
    plan: { rounding: 1e-6 },
    answers: {
      // 7.5/2 − 1.75 = 2.0 on both sides, at every level.
      'facial-wall-1mm': 2,
      'facial-wall-3mm': { value: 2, level: 3, status: 'within' },
      'facial-wall-5mm': 2,
      'facial-wall-apex': { value: 2, level: 11 },
      'facial-wall-thinnest': 2,
      'facial-wall-true': 2,
      'palatal-wall-thinnest': { value: 2, status: 'within' },
      'palatal-wall-true': 2,
      'centring-crest': 0,
      'centring-apex': 0,
      // The end face lies 11 below the crest, the floor 18.
      'apex-to-floor': 7,
      'exposure-dehiscence': 0,
      'exposure-fenestration': 0,
      'exposed-threads': 0,
      'bone-contact': 100,
      // Typed CEJ 2 and margin 3, present gum 3: the shoulder at 0 lies 2 below, 3 below, 3 below.
      'shoulder-to-cej': -2,
      'shoulder-to-gum-margin': 3,
      'shoulder-to-gum-present': -3,
    },
  },
  {
    name: 'shoulder to crest in four directions, shoulder at the crest',
    plan: {},
    answers: {
      // The crest is rounded by 0.05: at u = 1.75 the bone begins 0.05 (1 − √(1 − (1.75/3.75)²)) = 0.05 · 0.1155654 = 0.0057783 deep.
      'shoulder-to-crest-facial': 0.0057783,
      'shoulder-to-crest-palatal': 0.0057783,
      // In the middle of the crest it begins at 0.
      'shoulder-to-crest-mesial': 0,
      'shoulder-to-crest-distal': 0,
    },
  },
  {
    name: 'shoulder 1.5 above the crest',
    plan: { c: 1.5, rounding: 1e-6 },
    answers: {
      'shoulder-to-crest-facial': 1.5,
      'shoulder-to-crest-mesial': 1.5,
      // Levels count from the entry, not from the shoulder: nothing changes but the apex, 11 − 1.5.
      'facial-wall-1mm': 2,
      'facial-wall-apex': { value: 2, level: 9.5 },
      'apex-to-floor': 8.5,
      // 1.5 of 11 mm of thread stand in the air, joined to the crest: 2π · 1.75 · 1.5 = 16.4933614 mm², 1.5/0.8 = 1.875 pitches.
      'exposure-dehiscence': 16.4933614,
      'bone-contact': (100 * 9.5) / 11,
      'exposed-threads': 1.875,
      'shoulder-to-gum-present': -1.5,
    },
    tolerance: 5e-4,
  },
  {
    name: 'shoulder 1.2 below the crest: the level 1 mm is above it',
    plan: { c: -1.2 },
    answers: {
      'facial-wall-1mm': skipped('shoulder-deeper'),
      'palatal-wall-1mm': skipped('shoulder-deeper'),
      'centring-crest': skipped('shoulder-deeper'),
      'facial-wall-3mm': 2,
      'shoulder-to-crest-distal': -1.2,
      // 18 − 1.2 − 11.
      'apex-to-floor': 5.8,
    },
  },
  {
    name: 'shoulder 5.5 deep: no fixed level is left',
    plan: { c: -5.5 },
    answers: {
      'facial-wall-1mm': skipped('shoulder-deeper'),
      'facial-wall-3mm': skipped('shoulder-deeper'),
      'facial-wall-5mm': skipped('shoulder-deeper'),
      'facial-wall-apex': { value: 2, level: 16.5 },
      'facial-wall-thinnest': 2,
    },
  },
  {
    name: 'implant of 4 mm: shorter than the level 5 mm',
    plan: { l: 4 },
    answers: {
      'facial-wall-3mm': 2,
      'facial-wall-5mm': skipped('past-apex'),
      'palatal-wall-5mm': skipped('past-apex'),
      'facial-wall-apex': { value: 2, level: 4 },
      'apex-to-floor': 14,
    },
  },
  {
    name: '0.6 mm facially of the middle',
    plan: { f: 0.6 },
    answers: {
      // 3.75 − 0.6 − 1.75 = 1.4 and 3.75 + 0.6 − 1.75 = 2.6; centring (1.4 − 2.6)/2: must shift 0.6 palatally.
      'facial-wall-3mm': { value: 1.4, status: 'near' },
      'palatal-wall-3mm': { value: 2.6, status: 'within' },
      'facial-wall-true': 1.4,
      'centring-crest': -0.6,
      'centring-apex': -0.6,
    },
  },
  {
    name: 'leaning palatally with its apex to the front: perforated facially below',
    plan: { f: 0.5, c: -1, fp: -10 },
    answers: {
      // The axis comes forward by s sin 10°: at the apex 0.5 + 11 · 0.1736482 = 2.4101300; (3.75 − 2.4101300)/0.9848078 − 1.75 = −0.3894604.
      'facial-wall-apex': { value: -0.3894604, status: 'beyond' },
      // True: 3.75 − 2.4101300 − 1.75 · 0.9848078 = −0.3835437 at the same place.
      'facial-wall-true': -0.3835437,
      'palatal-wall-apex': (3.75 + 2.41013) / cos(10) - 1.75,
      // A window: not joined to the crest.
      'exposure-dehiscence': 0,
      // At s the exposed half-angle is acos x, x = (3.75 − f(s))/(r cos τ); ∫ 2 r acos x ds from x = 1 to x_A = 1.33987/1.7234137 = 0.7774512
      // is 2 r² cot τ (√(1 − x²) − x acos x) = 6.125 · 5.6712818 · (0.6289357 − 0.7774512 · 0.6801961) = 3.4772.
      'exposure-fenestration': {
        value: 2 * 1.75 ** 2 * (1 / tan(10)) * (0.6289357 - 0.7774512 * Math.acos(0.7774512)),
      },
    },
    tolerance: 0.02,
  },
  {
    name: 'the same walls exactly',
    plan: { f: 0.5, c: -1, fp: -10 },
    answers: { 'facial-wall-apex': -0.3894604, 'palatal-wall-apex': (3.75 + 2.41013) / cos(10) - 1.75 },
  },
  {
    name: 'fresh socket, gap 2.0 and wall 0.8: the gap is never bone',
    // Slab 10: sheet at 5, void's facial side at 4.2, the envelope's at 0.7 + 1.5 = 2.2.
    plan: { width: 10, f: 0.7, r: 1.5, state: socket(0) },
    answers: {
      // Bone 5 − 4.2 = 0.8, void 4.2 − 2.2 = 2.0: below the 1.0 of the band, so never within.
      'facial-wall-3mm': { value: 0.8, aside: 2, status: 'beyond' },
      'facial-wall-5mm': { value: 0.8, aside: 2, status: 'near' },
      'facial-wall-true': skipped('void-between'),
      'socket-gap-facial': 2,
      // Void's palatal side at −1.8, envelope's at −0.8: bone 5 − 1.8 = 3.2, void 1.0.
      'palatal-wall-3mm': { value: 3.2, aside: 1 },
    },
  },
  {
    name: 'fresh socket, below its floor the bone is whole',
    plan: { width: 10, f: 0.7, r: 1.5, l: 14, state: socket(0) },
    // 5 − 0.7 − 1.5 at 14 mm; the socket ends at 12.
    answers: { 'facial-wall-apex': { value: 2.8, aside: null } },
  },
  {
    name: 'fresh socket, implant wholly in its void',
    plan: { width: 10, f: 1.2, r: 1.5, l: 8, state: socket(0) },
    answers: {
      // All the thread: 2π · 1.5 · 8 = 75.398224 mm², 8/0.8 = 10 pitches.
      'exposure-socket': 75.398224,
      'exposure-dehiscence': 0,
      'bone-contact': 0,
      'exposed-threads': 10,
    },
  },
  {
    name: 'fresh socket, implant into its facial wall',
    plan: { width: 10, f: 2.7, r: 2, state: socket(0) },
    // The envelope's side at 4.7, the void's at 4.2: 0.5 into the wall, of which 5 − 4.7 = 0.3 is left.
    answers: { 'socket-gap-facial': -0.5, 'facial-wall-3mm': { value: 0.3, aside: null } },
  },
  {
    name: 'fresh socket with a dehiscence 5 deep',
    plan: { width: 10, f: 0.7, r: 1.5, state: socket(5) },
    answers: {
      // At 3 mm everything in front of the implant is void: 5 − 2.2 = 2.8; at 5 mm, its lower end, the wall begins again.
      'facial-wall-3mm': { value: 0, aside: 2.8, status: 'beyond' },
      'palatal-wall-3mm': { value: 3.2, aside: 1 },
    },
  },
  {
    name: 'axis outside the bone',
    plan: { f: 5 },
    answers: {
      // The envelope's side at 6.75 is 3.0 outside the sheet at 3.75.
      'facial-wall-3mm': { value: -3, status: 'beyond' },
      'facial-wall-thinnest': -3,
      // More than a radius outside: it is just outside, and stays at −r.
      'facial-wall-true': { value: -1.75, reason: 'outside' },
      // From 5 − 1.75 = 3.25, inside, to −3.75.
      'palatal-wall-3mm': 7,
    },
  },
  {
    name: 'the implant beside the bone altogether',
    plan: { f: 10, c: -1 },
    answers: {
      'shoulder-to-crest-facial': skipped('no-bone-met', 8), // 10 + 1.75 − 3.75
      'shoulder-to-crest-palatal': skipped('no-bone-met', 4.5), // 10 − 1.75 − 3.75
      'shoulder-to-crest-mesial': skipped('no-bone-met', 6.25), // 10 − 3.75
      'bone-contact': 0,
      'exposure-dehiscence': 2 * Math.PI * 1.75 * 11,
      'exposed-threads': 13.75, // 11/0.8
    },
  },
  {
    name: 'a ray through the crest',
    plan: { width: 14, f: 4.2, fp: 50 },
    answers: {
      // At 3 mm: axis at f 4.2 − 3 sin 50° = 1.9019, c −1.9284; the palatal ray rises by tan 50°: at c = 0 it is still at f 1.9019 − 1.9284/tan 50° = 0.284,
      // before the crest's middle: it leaves over the crest and never reaches the palatal sheet.
      'palatal-wall-3mm': skipped('through-crest'),
      // The facial ray runs downward: (7 − 1.9018667)/cos 50° − 1.75.
      'facial-wall-3mm': 6.1812881,
    },
  },
  {
    name: 'a ray that rises toward the crest',
    plan: { width: 10, fp: 30 },
    answers: {
      // At 3 mm: (5 − 1.5)/cos 30° = 4.0414519, rising 2.0207 to 0.577 below the crest: it ends on the sheet but does not count.
      'palatal-wall-3mm': { value: 2.2914519, status: null, reason: 'not-counted' },
      // At 5 mm: (5 − 2.5)/cos 30° − 1.75, rising 1.443 of 4.330.
      'palatal-wall-5mm': { value: 1.1367513, status: 'within' },
      // The facial ray runs downward: (5 + 1.5)/cos 30° − 1.75.
      'facial-wall-3mm': 5.7555535,
    },
  },
  {
    name: 'ridge narrower than the implant: both walls gone',
    plan: { width: 3 },
    // 1.5 − 1.75 on both sides.
    answers: {
      'facial-wall-3mm': -0.25,
      'palatal-wall-3mm': -0.25,
      'facial-wall-true': -0.25,
      'palatal-wall-true': -0.25,
      'centring-crest': 0,
    },
  },
  {
    name: 'plane 1.0 mm from the axis, r 2, 20°: the published pair',
    // Slab 10: at 5 mm down the axis stands 4 facially, 1.0 inside the sheet: f there = f0 − 5 sin 20°.
    plan: { width: 10, r: 2, l: 5, f: 4 + 5 * sin(20), fp: 20, plan: { crestMargin: 5 * cos(20) } },
    // 1/cos 20° − 2 = −0.9358222.
    answers: { 'facial-wall-5mm': -0.9358222, 'facial-wall-apex': -0.9358222 },
  },
  {
    name: 'plane 1.0 mm from the axis, r 2, 20°: true',
    // Counting begins where the facial generatrix is as deep as at 5 mm: 5 cos 20° + 2 sin 20°.
    plan: {
      width: 10,
      r: 2,
      l: 10,
      f: 4 + 5 * sin(20),
      fp: 20,
      plan: { crestMargin: 5 * cos(20) + 2 * sin(20) },
    },
    // 1 − 2 cos 20° = −0.8793852.
    answers: { 'facial-wall-true': -0.8793852 },
    tolerance: 1e-5,
  },
  {
    name: 'both tilts at once',
    plan: { width: 12, r: 1.5, fp: 10, md: 20, c: -3 },
    answers: {
      // a = (0.3639702, 0.1763270, 1)/1.0786869 = (0.3374197, 0.1634645, 0.9270530); sin τ = 0.1634645, cos τ = 0.9865492. tP = 3/0.9270530
      // = 3.2360608; at 5 mm s = 1.7639392, f(s) = −0.2883414; facial (6 + 0.2883414)/0.9865492 − 1.5, palatal (6 − 0.2883414)/… − 1.5.
      'facial-wall-5mm': 4.8740777,
      'palatal-wall-5mm': 4.2895323,
      // At the apex f = −1.7981091; true distance palatally (6 − 1.7981091) − 1.5 · 0.9865492.
      'palatal-wall-true': 2.7220671,
      // atan √(tan² 10° + tan² 20°) = acos 0.9270530
      'axis-to-ridge-total': 22.0200016,
      'axis-to-ridge-faciopalatal': 10,
      'axis-to-ridge-mesiodistal': 20,
    },
    tolerance: 2e-6,
  },
  {
    name: 'shoulder to crest with both tilts',
    plan: { width: 12, r: 1.5, fp: 10, md: 20, rounding: 1e-6 },
    answers: {
      // Down the generatrix of direction u from the rim: at c = 0 after s with r u_c = s a_c. e_f = (−a_f a_m, 1 − a_f², −a_f a_c)/cos τ: u_c/a_c =
      // −a_f/cos τ = −0.1656932: s = ∓1.5 · 0.1656932. e_m is perpendicular to both: e_m = (a_c, 0, −a_m)/cos τ, u_c/a_c = −a_m/(a_c cos τ) = −0.3689327.
      'shoulder-to-crest-facial': -0.2485397,
      'shoulder-to-crest-palatal': 0.2485397,
      'shoulder-to-crest-mesial': -0.553399,
      'shoulder-to-crest-distal': 0.553399,
    },
    tolerance: 2e-6,
  },
  {
    name: 'leaning 20° facially, shoulder 1 above on the axis',
    plan: { width: 14, c: 1, fp: 20, rounding: 1e-6 },
    answers: {
      // s = (1 ∓ r sin 20°)/cos 20°: (1 − 0.5985353)/0.9396926, (1 + 0.5985353)/0.9396926; mesially and distally 1/cos 20°.
      'shoulder-to-crest-facial': 0.4272298,
      'shoulder-to-crest-palatal': 1.7011259,
      'shoulder-to-crest-mesial': 1.0641778,
      'shoulder-to-crest-distal': 1.0641778,
      // The facial edge stands at c = 1 − 1.75 sin 20° = 0.4014647: below the CEJ (2), the margin (3), the present gum (3).
      'shoulder-to-cej': -1.5985353,
      'shoulder-to-gum-margin': 2.5985353,
      'shoulder-to-gum-present': -2.5985353,
    },
    tolerance: 2e-6,
  },
  {
    name: 'a slab that leans 28° with the implant along it',
    plan: { fp: 28, ridge: { inclination: 28 } },
    answers: {
      // Seen along the ridge's own axis the same as upright.
      'facial-wall-3mm': 2,
      'palatal-wall-3mm': 2,
      'facial-wall-true': 2,
      'axis-to-ridge-total': 0,
      // Floor at c = −18 cos 28°; lowest point 11 cos 28° + 1.75 sin 28° down.
      'apex-to-floor': 7 * cos(28) - 1.75 * sin(28),
    },
  },
  {
    name: 'floor touched',
    plan: { c: -7 },
    answers: { 'apex-to-floor': { value: 0, status: 'near' } },
  },
  {
    name: 'floor passed by 2',
    plan: { c: -9 },
    answers: { 'apex-to-floor': { value: -2, status: 'beyond' } },
  },
  {
    name: 'floor with the implant leaning 30°',
    plan: { width: 14, r: 2, l: 10, fp: 30 },
    // The rim's lowest point: 18 − 10 cos 30° − 2 sin 30°.
    answers: { 'apex-to-floor': 8.339746 },
  },
  {
    name: 'apical third to the facial surface, apex to the back',
    plan: { width: 12, l: 12, fp: 20 },
    // Nearest at the third's upper end, s = 8: axis 8 sin 20° = 2.7361611 palatal: 6 + 2.7361611 − 1.75 cos 20°.
    answers: { 'apex-to-concavity': 7.091699 },
    tolerance: 1e-5,
  },
  {
    name: 'undercut 1 mm deep at 5 mm',
    plan: { ridge: { undercut: { depth: 1, level: 5, halfHeight: 3 } } },
    answers: {
      // 3.75 − 1 − 1.75 at its level; at 3 mm the loss is (1 − (2/3)²)³ = 0.1714678; at 1 mm (outside ±3) none.
      'facial-wall-5mm': { value: 1, status: 'within' },
      'facial-wall-3mm': { value: 1.8285322, status: 'near' },
      'facial-wall-1mm': 2,
      'facial-wall-apex': 2,
      // The least is at 5, within its own band; down to 3 mm the band of the crest is missed: near, by M14.
      'facial-wall-thinnest': { value: 1, level: 5, status: 'near' },
      'facial-wall-true': 1,
      'palatal-wall-5mm': 2,
    },
  },
  {
    name: 'taper: 4.0 to 3.0 over 8 of 11 mm',
    plan: { r: 2, shape: { apicalDiameter: 3, taperLength: 8 } },
    answers: {
      // Radius 2 down to 3 mm, 2 − 2/8 · 0.5 = 1.875 at 5, 1.5 at the apex; the slab's half less that.
      'facial-wall-3mm': 1.75,
      'facial-wall-5mm': 1.875,
      'facial-wall-apex': 2.25,
      'facial-wall-true': 1.75,
    },
  },
  {
    name: 'half of the cylinder outside a plane through its axis',
    plan: { r: 1.5, l: 10, f: 3.75, rounding: 1e-6 },
    answers: {
      // Half of 2π · 1.5 · 10; every pitch of the facial generatrix.
      'exposure-dehiscence': Math.PI * 15,
      'bone-contact': 50,
      'exposed-threads': 12.5,
    },
    tolerance: 0.02,
  },
  {
    name: 'a strip of the cylinder outside',
    plan: { f: 3, rounding: 1e-6 },
    // Half-angle acos((3.75 − 3)/1.75) = 1.1278853: 2 · 1.75 · 1.1278853 · 11 = 43.4236.
    answers: { 'exposure-dehiscence': 43.4236 },
    tolerance: 0.2,
  },
  {
    name: 'a round root beside it',
    // Contact at 4, crown 6 wide: the tooth stands at m = 7; round root of radius 3, its top circle at the shoulder's level.
    plan: { site: { gap: 8, mesial: uprightTooth(3, 13), distal: uprightTooth(2.5, 13) } },
    answers: {
      // 7 − 3 − 1.75 and 7 − 2.5 − 1.75, where the root is widest, at the shoulder.
      'root-mesial': { value: 2.25, level: 0, status: 'within' },
      'root-mesial-shoulder': 2.25,
      'root-distal': { value: 2.75, level: 0 },
      // At 1 mm: to the ellipses x²/3² + z²/13² = 1 … not by hand; the sign only: see the half-spheres below.
    },
    tolerance: 1e-5,
  },
  {
    name: 'half-spheres as roots, shoulder 3 below their centres',
    // Centres at m = ±6 (gap 6, crown 6), radius 3; envelope's upper corner at 2, 3 below: 3-4-5 triangle.
    plan: { r: 2, c: -3, site: { gap: 6, mesial: uprightTooth(3, 3), distal: uprightTooth(3, 3) } },
    answers: {
      'root-mesial': { value: 2, level: 3 },
      'root-mesial-shoulder': 2,
      'root-distal': 2,
      // Axis point at 1 mm lies 1 below and 6 beside both centres.
      'centring-mesiodistal-crest': 0,
    },
    tolerance: 1e-5,
  },
  {
    name: 'half a millimetre mesially between half-spheres',
    plan: { m: 0.5, site: { gap: 8, mesial: uprightTooth(3, 3), distal: uprightTooth(3, 3) } },
    answers: {
      // (√(6.5² + 1²) − √(7.5² + 1²))/2 = (6.5764732 − 7.5663730)/2: must shift distally.
      'centring-mesiodistal-crest': -0.4949499,
      // Contacts at ±4: (3.5 − 4.5)/2.
      'centring-mesiodistal-incisal': -0.5,
    },
  },
  {
    name: 'root touched',
    // Axis at 2, r 2, root's side at 7 − 3.
    plan: { m: 2, r: 2, c: 1, site: { gap: 8, mesial: uprightTooth(3, 13), distal: uprightTooth(3, 13) } },
    answers: { 'root-mesial': { value: 0 } },
    tolerance: 1e-4,
  },
  {
    name: 'root entered by 1.5',
    // The envelope's side at 3.5 + 2 = 5.5 stands 1.5 inside the half-sphere's side at 4 on the level of its centre.
    plan: { m: 3.5, r: 2, c: 1, site: { gap: 8, mesial: uprightTooth(3, 3), distal: uprightTooth(3, 3) } },
    answers: { 'root-mesial': { value: -1.5, status: 'beyond' } },
    tolerance: 1e-3,
  },
  {
    name: 'axis against the roots',
    plan: {
      md: 10,
      site: {
        mesial: uprightTooth(3, 13, { tilt: { faciopalatal: 0, mesiodistal: 4 } }),
        distal: uprightTooth(3, 13, {
          tilt: { faciopalatal: 0, mesiodistal: 6 },
          rootTilt: { faciopalatal: 0, mesiodistal: 2 },
        }),
      },
    },
    // Root axes 4 and 6 + 2: bisector 6; 10 − 6.
    answers: { 'axis-to-roots-mesiodistal': 4 },
  },
  {
    name: 'canal passed at 2.25',
    // Tube's axis at m 4, f −3: 5 from the implant's; 5 − 1 − 1.75.
    plan: { width: 12, site: tube() },
    answers: { canal: { value: 2.25, status: 'within' } },
  },
  {
    name: 'canal passed nearest at its mouth',
    // Foramen 3 wide, 2 below the crest: 5 − 1.5 − 1.75 at level 2; it narrows from there.
    plan: { width: 12, site: tube({ foramen: 3, below: 2 }) },
    answers: { canal: { value: 1.75, level: 2, status: 'near' }, 'canal-level': 2 },
    tolerance: 1e-5,
  },
  {
    name: 'canal entered by 0.5',
    // Axes √(1.5² + 2²) = 2.5 apart (m = 4 − 1.5, f = −3 + 2): the envelope's side at 2.5 − 2 from the tube's axis, 0.5 inside its wall.
    plan: { width: 12, r: 2, m: 2.5, f: -1, site: tube() },
    answers: { canal: { value: -0.5, status: 'beyond' } },
    tolerance: 1e-3,
  },
  {
    name: 'canal not at this site',
    plan: { site: { tooth: 13 } },
    answers: { canal: skipped('canal-elsewhere'), 'canal-level': skipped('canal-elsewhere') },
  },
  {
    name: 'scalloped neck with two facings, turned 30°',
    plan: { c: 1, roll: 30, shape: { scallop: 1, index: 2 } },
    answers: {
      // 90 − ((90 − 30) mod 180) = 30; 1 (1 − cos 60°)/2 = 0.25.
      'neck-facing': 30,
      'neck-facing-cost': 0.25,
      // The facial edge rises to 1.25; margin 3, CEJ 2.
      'shoulder-to-gum-margin': 1.75,
      'shoulder-to-cej': -0.75,
      // Mesially 90° − 30° from the mark: (1 − cos 120°)/2 = 0.75 above the plane at 1.
      'shoulder-to-crest-mesial': 1.75,
      'shoulder-to-crest-distal': 1.75, // −90° − 30°: (1 − cos 240°)/2
    },
  },
  {
    name: 'the same neck turned a quarter: its high sides face facially',
    plan: { c: 1, roll: 90, shape: { scallop: 1, index: 2 } },
    // 90 − (0 mod 180) = 90; (1 − cos 180°)/2 = 1.
    answers: { 'neck-facing': 90, 'neck-facing-cost': 1, 'shoulder-to-gum-margin': 1 },
  },
  {
    name: 'a neck with six facings turned 40°',
    plan: { roll: 40, shape: { index: 6 } },
    // 30 − ((30 − 40) mod 60) = 30 − 50.
    answers: { 'neck-facing': -20, 'neck-facing-cost': 0 },
  },
  {
    name: 'a neck with six facings turned −30°: the half-way turn counts as +30',
    plan: { roll: -30, shape: { index: 6 } },
    answers: { 'neck-facing': 30 },
  },
  {
    name: 'a round neck',
    plan: {},
    answers: { 'neck-facing': skipped('round-neck'), 'neck-facing-cost': skipped('round-neck') },
  },
];

/**
 * Neighbours of site 12, upright, crown 6 wide, contacts at ±4. Central 11: its distal corner 1.8 inside the widest point: m = 5.8, and
 * 0.3 below the top of its edge. Canine 13: the end of its mesial slope 1.0 inside: m = −5, and 1.5 below its tip. Edges 0.4 facial
 * of the teeth's axes.
 */
const edges = (central: number, canine: number, rest: SlabNumbers): SlabNumbers => ({
  width: 12,
  ...rest,
  site: {
    gap: 8,
    mesial: uprightTooth(3, 13, { crownLength: central + 0.3 }),
    distal: uprightTooth(3, 13, { crownLength: canine + 1.5 }),
  },
});

const LINES: readonly Worked[] = [
  {
    name: 'incisal line level at 10, implant upright in the middle',
    plan: edges(10, 10, {}),
    answers: {
      // X = (0, 0.4, 10), Q = (0, 0, 10); 5.8 of 10.8 from the mesial end; −atan(0.4/10).
      'incisal-line-offset': -0.4,
      'incisal-line-place': 0.537037,
      'incisal-line-angle': -2.29061,
      'centring-mesiodistal-incisal': 0,
    },
  },
  {
    name: 'leaning 10° facially',
    plan: edges(10, 10, { fp: 10 }),
    // Q at f = 10 tan 10° = 1.7632698; 10° − 2.2906100°.
    answers: {
      'incisal-line-offset': 1.3632698,
      'incisal-line-place': 0.537037,
      'incisal-line-angle': 7.70939,
    },
  },
  {
    name: 'both tilts under the line',
    plan: edges(10, 10, { fp: 10, md: 5 }),
    answers: {
      // At c = 10 the axis stands at m = 10 tan 5° = 0.8748866, f = 1.7632698; (5.8 − 0.8748866)/10.8.
      'incisal-line-offset': 1.3632698,
      'incisal-line-place': 0.456029,
      // In the plane of axis and f one unit of c is 1/cos 5° long: atan(0.1763270 cos 5°) − atan(0.04 cos 5°) = 9.9627° − 2.2819°.
      'incisal-line-angle': ((Math.atan(tan(10) * cos(5)) - Math.atan(0.04 * cos(5))) * 180) / Math.PI,
      'centring-mesiodistal-incisal': -0.8748866,
    },
  },
  {
    name: 'the line falls by 2 toward the distal',
    plan: edges(10, 8, {}),
    // X at the same share: c = 10 − 2 · 0.5370370 = 8.9259259; offset still −0.4; −atan(0.4/8.9259259).
    answers: { 'incisal-line-offset': -0.4, 'incisal-line-place': 0.537037, 'incisal-line-angle': -2.565895 },
  },
  {
    name: 'shifted 2 palatally and 1 mesially',
    plan: edges(10, 10, { m: 1, f: -2 }),
    // The offset moves with the shift; (5.8 − 1)/10.8.
    answers: { 'incisal-line-offset': -2.4, 'incisal-line-place': 0.4444444 },
  },
];

const same = (found: number | null, wanted: number | null, tolerance: number, what: string): void => {
  if (wanted === null || found === null) expect(found, what).toBe(wanted);
  else
    expect(Math.abs(found - wanted), `${what}: ${found}, by hand ${wanted}`).toBeLessThanOrEqual(tolerance);
};

describe.each([...CASES, ...LINES])('$name', ({ plan, answers, tolerance = 1e-6 }) => {
  const { readings } = evaluate(slabPlan(plan));
  it.each(Object.entries(answers))('%s', (id, answer) => {
    const found = readingOf(readings, id as ReadingId);
    const wanted: Expected = typeof answer === 'number' ? { value: answer } : answer;
    if (wanted.value !== undefined) same(found.value, wanted.value, tolerance, 'value');
    if (wanted.level !== undefined) same(found.level, wanted.level, Math.max(tolerance, 1e-6), 'level');
    if (wanted.aside !== undefined) same(found.aside, wanted.aside, Math.max(tolerance, 1e-6), 'aside');
    if (wanted.status !== undefined) expect(found.status).toBe(wanted.status);
    if (wanted.reason !== undefined) expect(found.reason).toBe(wanted.reason);
  });
});

describe('slab and cylinder, many tilts and offsets', () => {
  /** Profile of a side on a slab by the model's own formula: axis at distance s from the platform f(s) = f0 − s sin τ, (W/2 ∓ f(s))/cos τ − r. */
  // The canal is moved out of the way: a wall is bone only, and a long leaning implant would meet it.
  const site = { canal: { ...slabSite().canal, behind: 100 } };
  const TILTS = [-10, -4, 0, 7, 15, 23, 31, 40, 50];
  const LEANS = [-30, -12, 0, 5, 18, 30];
  const OFFSETS = [-2, -0.7, 0, 1.3, 3.1];
  const WIDTH = 13;
  const R = 1.6;
  const L = 10;
  const C = -5;
  const poses = TILTS.flatMap((fp) => LEANS.flatMap((md) => OFFSETS.map((f) => ({ fp, md, f }))));
  const plans = poses.map((pose) => {
    const flat = Math.hypot(tan(pose.md), tan(pose.fp), 1);
    const sinTau = tan(pose.fp) / flat;
    return { ...pose, sinTau, cosTau: Math.sqrt(1 - sinTau ** 2), tP: -C * flat };
  });

  it('gives every counting level of both profiles to 1e-6 mm', () => {
    let compared = 0;
    for (const { fp, md, f, sinTau, cosTau, tP } of plans) {
      const { profiles } = evaluate(slabPlan({ width: WIDTH, r: R, l: L, c: C, fp, md, f, site }));
      for (const { side, samples } of profiles) {
        const sign = side === 'facial' ? 1 : -1;
        for (const { level, wall, counts } of samples) {
          if (!counts || wall === null) continue;
          const axis = f - (level - tP) * sinTau;
          // Where the surface itself stands outside the other sheet, the bone on the ray is the whole slab.
          const byHand = Math.min((WIDTH / 2 - sign * axis) / cosTau - R, WIDTH / cosTau);
          expect(Math.abs(wall - byHand), `${side} ${fp}/${md}/${f} at ${level}`).toBeLessThan(1e-6);
          compared++;
        }
      }
    }
    expect(compared).toBeGreaterThan(30_000);
  });

  it('gives the true distance to 1e-6 mm where the whole envelope counts', () => {
    let compared = 0;
    for (const { fp, md, f, sinTau, cosTau } of plans) {
      const { readings } = evaluate(slabPlan({ width: WIDTH, r: R, l: L, c: C, fp, md, f, site }));
      for (const side of ['facial', 'palatal'] as const) {
        const sign = side === 'facial' ? 1 : -1;
        // Linear along the axis, so least at one of the two rims: (W/2 ∓ f(s)) − r cos τ.
        const at = (s: number) => WIDTH / 2 - sign * (f - s * sinTau) - R * cosTau;
        const byHand = Math.min(at(0), at(L));
        if (byHand < 0) continue;
        const { value } = readingOf(readings, `${side}-wall-true`);
        expect(Math.abs((value ?? Number.NaN) - byHand), `${side} ${fp}/${md}/${f}`).toBeLessThan(1e-6);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(300);
  });

  it('gives centring as the shift across the axis: × cos τ brings it to the middle', () => {
    for (const { fp, md, f, cosTau } of plans) {
      const before = evaluate(slabPlan({ width: WIDTH, r: R, l: L, c: C, fp, md, f, site }));
      const { value } = readingOf(before.readings, 'centring-apex');
      if (value === null || Math.abs(value) > WIDTH / 4) continue;
      const after = evaluate(
        slabPlan({ width: WIDTH, r: R, l: L, c: C, fp, md, f: f + value * cosTau, site }),
      );
      expect(readingOf(after.readings, 'centring-apex').value).toBeCloseTo(0, 6);
    }
  });

  it('agrees with published arithmetic: a frustum of radius 2 − 0.05 z leaning 5° before a plane 5 away (6.4 of the reference values)', () => {
    // Slab of half-width 5, axis through f 0 at the shoulder, apex toward the front: at z the clearance is 5 − z sin 5° − (2 − 0.05 z) cos 5°.
    for (const [z, clearance] of [
      [0, 3.0076],
      [5, 2.8209],
      [10, 2.6342],
    ] as const) {
      const r = 2 - 0.05 * z;
      expect(5 - z * sin(5) - r * cos(5)).toBeCloseTo(clearance, 3);
    }
    const shape = cylinder(2, 10, { apicalDiameter: 3, taperLength: 10 });
    const plan = { ...slabPlan({ width: 10, c: -4, fp: -5 }), implant: shape };
    expect(readingOf(evaluate(plan).readings, 'facial-wall-true').value).toBeCloseTo(2.6342, 4);
  });
});
