import type { Anatomy } from '../anatomy/anatomy.ts';
import { type Pose, type Tilt, tiltOf } from '../geometry/pose.ts';
import { along } from '../geometry/vec.ts';
import type { ImplantShape } from '../implant/shape.ts';
import { ReadingBook } from '../measure/book.ts';
import type { Bands, Fixing } from '../measure/limit.ts';
import { incisalLine } from '../measure/lines.ts';
import { apex, axes, centring, incisal, roots } from '../measure/measure.ts';
import { Placement } from '../measure/placement.ts';
import type { Reading, ReadingId } from '../measure/reading.ts';
import { wallReadings } from '../measure/wallReadings.ts';
import type { PassBody } from './passBody.ts';

/** Read off the full diameter alone, its platform at the bone entry. */
export const BODY_IDS = [
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
  'incisal-line-offset',
  'incisal-line-place',
  'incisal-line-angle',
  'axis-to-ridge-faciopalatal',
  'axis-to-ridge-mesiodistal',
  'axis-to-ridge-total',
  'axis-to-crown-faciopalatal',
  'axis-to-crown-mesiodistal',
  'axis-to-crown-total',
] as const satisfies readonly ReadingId[];

/** Read off the drill with its point. */
export const POINT_IDS = [
  'root-mesial',
  'root-distal',
  'apex-to-floor',
  'apex-to-concavity',
  'canal',
] as const satisfies readonly ReadingId[];

/** Readings of which a hole has the worst over its passes. */
export const HOLE_IDS = [
  'facial-wall-1mm',
  'facial-wall-3mm',
  'facial-wall-5mm',
  'facial-wall-thinnest',
  'facial-wall-true',
  'palatal-wall-1mm',
  'palatal-wall-3mm',
  'palatal-wall-5mm',
  'palatal-wall-thinnest',
  'palatal-wall-true',
  ...POINT_IDS,
] as const satisfies readonly ReadingId[];

/** What passes are measured in and by which rules. */
export interface PassMeasureInput {
  readonly anatomy: Anatomy;
  readonly fixing: Fixing;
  /** mm (rule M2). */
  readonly crestMargin: number;
  readonly limits: Readonly<Record<string, Bands>>;
  /** As in `MeasureInput`. */
  readonly crownTilt?: Tilt;
}

/** A flat end of no width has no rim to stand on, mm. */
const NO_WIDTH = 0.002;
const LEAST_LENGTH = 0.05;

/** A body without thread, flutes or scallop, of the numbers given. */
const bare = (numbers: Partial<ImplantShape>): ImplantShape => ({
  name: '',
  implantedLength: LEAST_LENGTH,
  transmucosalLength: 0,
  apicalDiameter: 1,
  implantedDiameter: 1,
  platformDiameter: 1,
  taperLength: 0,
  thread: { depth: 0.01, pitch: 1, starts: 1 },
  flutes: { count: 0, length: 0, depth: 0 },
  scallop: 0,
  index: 0,
  abutment: null,
  maxTorque: 0,
  ...numbers,
});

/** The two bodies a pass is read off: its full diameter from the bone entry down, and the same with the drill's point. */
interface PassShapes {
  readonly body: ImplantShape;
  readonly pointed: ImplantShape;
  /** The platform's height over the bottom. */
  readonly platform: number;
}

function shapesOf({ profile, depth, radius, lowest }: PassBody): PassShapes {
  if (lowest < 0) {
    const length = Math.max(depth, LEAST_LENGTH);
    const even = { apicalDiameter: 2 * radius, implantedDiameter: 2 * radius, platformDiameter: 2 * radius };
    return {
      body: bare({ ...even, implantedLength: length }),
      pointed: bare({
        ...even,
        implantedLength: length - lowest,
        apicalDiameter: NO_WIDTH,
        taperLength: -lowest,
      }),
      platform: length,
    };
  }
  const [neck, shoulder] = [2 * profile.r[0], 2 * profile.r[1]];
  const flared = bare({
    transmucosalLength: profile.x[1],
    implantedLength: LEAST_LENGTH,
    apicalDiameter: neck,
    implantedDiameter: neck,
    platformDiameter: shoulder,
  });
  return { body: flared, pointed: flared, platform: profile.x[1] };
}

function readAt(input: PassMeasureInput, pass: PassBody, s: number): Reading[] {
  const { body, pointed, platform } = shapesOf(pass);
  const { bottom, a } = pass.axisAt(s);
  const [m, f, c] = along(bottom, a, platform);
  const pose: Pose = { platform: { m, f, c }, tilt: tiltOf(a), roll: 0 };
  const { anatomy, crestMargin } = input;
  const book = new ReadingBook(anatomy.toJaw, input.fixing, input.limits);
  const at = new Placement(anatomy, body, pose, crestMargin);
  const facial = wallReadings(at, 'facial', book);
  const palatal = wallReadings(at, 'palatal', book);
  const line = incisalLine(at);
  centring(at, facial, palatal, line, book);
  incisal(at, line, book);
  axes(at, input.crownTilt ?? anatomy.site.crown.tilt, book);
  const withPoint = new Placement(anatomy, pointed, pose, crestMargin);
  roots(withPoint, book);
  apex(withPoint, book);
  const ids: readonly ReadingId[] = [...BODY_IDS, ...POINT_IDS];
  return book.readings.filter((r) => ids.includes(r.id));
}

const RANK = { beyond: 0, near: 1, within: 2, 'not-applicable': 4 } as const;

/** The worse of two readings of one id: by status, then the less value; one that does not count or apply gives way. */
function worse(p: Reading, q: Reading): Reading {
  const [a, b] = [p, q].map((r) => (r.status === null ? 3 : RANK[r.status]));
  if (a !== b) return b < a ? q : p;
  return (q.value ?? Infinity) < (p.value ?? Infinity) ? q : p;
}

/** Of several readings of one id the worst, for the ids of a hole; of the others the last. */
function gathered(lists: readonly (readonly Reading[])[]): Reading[] {
  const last = lists[lists.length - 1];
  return last.map((own, i) =>
    (HOLE_IDS as readonly ReadingId[]).includes(own.id) ? lists.map((list) => list[i]).reduce(worse) : own,
  );
}

/**
 * Readings of one pass beside the plan's: a cylinder with its point, the platform at the bone entry (model 5, rule D10). A pressed pass: walls, floor,
 * canal and roots at the worse of its ends, the rest where it ends. Cost: 1 to 2 ms, twice that if pressed.
 */
export const passReadings = (input: PassMeasureInput, pass: PassBody): Reading[] =>
  gathered((pass.sweep ? [0, 1] : [0]).map((s) => readAt(input, pass, s)));

/** Readings of a hole: the worst over its passes (rule D10), from the readings of each. */
export function holeReadings(passes: readonly (readonly Reading[])[]): Reading[] {
  if (passes.length === 0) return [];
  return gathered(passes).filter((r) => (HOLE_IDS as readonly ReadingId[]).includes(r.id));
}
