import type { Anatomy } from '../anatomy/anatomy.ts';
import { axisOf, type Pose, type Tilt } from '../geometry/pose.ts';
import { along, angleBetween, deg, rad, type Vec3 } from '../geometry/vec.ts';
import { rimHeight } from '../implant/profile.ts';
import type { ImplantShape } from '../implant/shape.ts';
import { ReadingBook } from './book.ts';
import { envelopeToCanal } from './canalDistance.ts';
import { exposureOf } from './exposure.ts';
import { facingOf } from './facing.ts';
import type { Bands, Fixing } from './limit.ts';
import { contactCentring, type IncisalLine, incisalLine, rootBisector } from './lines.ts';
import { Placement } from './placement.ts';
import type { Reading, WallProfile } from './reading.ts';
import { envelopeToRoot, pointToRoot, shoulderToRoot } from './rootDistance.ts';
import { shoulderToCrest } from './shoulder.ts';
import { apexToConcavity } from './trueWall.ts';
import { levelOf, type WallResult, wallReadings } from './wallReadings.ts';

/** What is measured and by which rules. */
export interface MeasureInput {
  readonly anatomy: Anatomy;
  readonly shape: ImplantShape;
  readonly pose: Pose;
  readonly fixing: Fixing;
  /** mm (rule M2). */
  readonly crestMargin: number;
  readonly limits: Readonly<Record<string, Bands>>;
  /** Projected angles of the planned crown's axis, degrees; by default the reference tooth's. */
  readonly crownTilt?: Tilt;
}

/** Everything read off one pose; points in the jaw frame. */
export interface Measurement {
  readonly placement: Placement;
  readonly readings: readonly Reading[];
  readonly profiles: readonly WallProfile[];
  readonly line: IncisalLine;
}

/** All readings of a pose (rules M1–M14), in the order of the model. Pure. Cost: 1 to 3 ms where the implant lies in bone, up to 15 where it stands far outside. */
export function measure(input: MeasureInput): Measurement {
  const { anatomy, shape, pose, fixing, limits } = input;
  const at = new Placement(anatomy, shape, pose, input.crestMargin);
  const book = new ReadingBook(anatomy.toJaw, fixing, limits);
  const facial = wallReadings(at, 'facial', book);
  const palatal = wallReadings(at, 'palatal', book);
  const line = incisalLine(at);
  centring(at, facial, palatal, line, book);
  shoulder(at, book);
  incisal(at, line, book);
  axes(at, input.crownTilt ?? anatomy.site.crown.tilt, book);
  roots(at, book);
  apex(at, book);
  bone(at, book);
  socketGap(at, book);
  neck(at, book);
  const profiles = [
    { side: 'facial' as const, samples: facial.profile },
    { side: 'palatal' as const, samples: palatal.profile },
  ];
  return { placement: at, readings: book.readings, profiles, line };
}

export function centring(
  at: Placement,
  facial: WallResult,
  palatal: WallResult,
  line: IncisalLine,
  book: ReadingBook,
): void {
  for (const [id, f, p] of [
    ['centring-crest', facial.crest, palatal.crest],
    ['centring-apex', facial.apex, palatal.apex],
  ] as const) {
    const deeper = f.level < Math.max(at.rimLevel(0), at.rimLevel(Math.PI)) - 1e-9;
    if (deeper) book.skip(id, 'mm', 'shoulder-deeper');
    else if (f.level > at.tA + 1e-9) book.skip(id, 'mm', 'past-apex');
    else if (f.wall === null || p.wall === null) book.skip(id, 'mm', 'no-wall');
    else book.add(id, 'mm', (f.wall - p.wall) / 2, { level: f.level, from: p.to, to: f.to });
  }
  const { mesial, distal } = at.anatomy.teeth;
  const p = at.axisPoint(1);
  book.add(
    'centring-mesiodistal-crest',
    'mm',
    (pointToRoot(mesial.root, p) - pointToRoot(distal.root, p)) / 2,
    {
      level: 1,
      from: p,
    },
  );
  const contacts = contactCentring(at, line.q);
  book.add('centring-mesiodistal-incisal', 'mm', contacts.value, {
    from: contacts.distal,
    to: contacts.mesial,
  });
  book.add('axis-to-roots-mesiodistal', 'deg', at.pose.tilt.mesiodistal - rootBisector(at));
}

function shoulder(at: Placement, book: ReadingBook): void {
  for (const [side, azimuth] of [
    ['facial', 0],
    ['palatal', Math.PI],
    ['mesial', Math.PI / 2],
    ['distal', -Math.PI / 2],
  ] as const) {
    const id = `shoulder-to-crest-${side}` as const;
    const found = shoulderToCrest(at, azimuth);
    if (found.value === null) book.skip(id, 'mm', 'no-bone-met', found.away);
    else book.add(id, 'mm', found.value, { from: found.bone, to: found.rim });
  }
  const rim = at.rimPoint(0);
  const { reference, gum } = at.anatomy.site;
  const upTo = (c: number): Vec3 => [rim[0], rim[1], c];
  book.add('shoulder-to-cej', 'mm', rim[2] - reference.cej, { from: upTo(reference.cej), to: rim });
  book.add('shoulder-to-gum-margin', 'mm', reference.margin - rim[2], {
    from: rim,
    to: upTo(reference.margin),
  });
  book.add('shoulder-to-gum-present', 'mm', rim[2] - gum.crest, { from: upTo(gum.crest), to: rim });
}

export function incisal(at: Placement, line: IncisalLine, book: ReadingBook): void {
  book.add('incisal-line-offset', 'mm', line.offset, { from: line.x, to: line.q });
  book.add('incisal-line-place', 'ratio', line.place, { from: line.mesialEnd, to: line.x });
  book.add('incisal-line-angle', 'deg', line.angle, { from: at.platform, to: line.x });
}

export function axes(at: Placement, crownTilt: Tilt, book: ReadingBook): void {
  const { ridge } = at.anatomy;
  const { tilt } = at.pose;
  const ridgeTilt = { faciopalatal: deg(Math.atan2(ridge.sin, ridge.cos)), mesiodistal: 0 };
  for (const [name, other] of [
    ['ridge', ridgeTilt],
    ['crown', crownTilt],
  ] as const) {
    book.add(`axis-to-${name}-faciopalatal`, 'deg', tilt.faciopalatal - other.faciopalatal);
    book.add(`axis-to-${name}-mesiodistal`, 'deg', tilt.mesiodistal - other.mesiodistal);
    book.add(`axis-to-${name}-total`, 'deg', angleBetween(at.a, axisOf(other)));
  }
}

export function roots(at: Placement, book: ReadingBook): void {
  const { teeth } = at.anatomy;
  for (const side of ['mesial', 'distal'] as const) {
    const { root } = teeth[side];
    const whole = envelopeToRoot(at, root);
    book.add(`root-${side}`, 'mm', whole.value, {
      level: levelOf(at, whole.from),
      from: whole.from,
      to: whole.to,
    });
    const rim = shoulderToRoot(at, root);
    book.add(`root-${side}-shoulder`, 'mm', rim.value, { level: at.tP, from: rim.from, to: rim.to });
  }
}

export function apex(at: Placement, book: ReadingBook): void {
  const { ridge, site } = at.anatomy;
  const low = lowestPoint(at);
  book.add('apex-to-floor', 'mm', low[2] - ridge.floor, { from: low, to: [low[0], low[1], ridge.floor] });
  const hollow = apexToConcavity(at);
  if (hollow.clearance) {
    const { value, from, to } = hollow.clearance;
    book.add('apex-to-concavity', 'mm', value, { level: levelOf(at, from), from, to });
  } else book.skip('apex-to-concavity', 'mm', hollow.reason);
  if (site.tooth % 10 > 2) {
    book.skip('canal', 'mm', 'canal-elsewhere');
    book.skip('canal-level', 'mm', 'canal-elsewhere');
    return;
  }
  const { value, from, to } = envelopeToCanal(at);
  const level = levelOf(at, from);
  book.add('canal', 'mm', value, { level, from, to });
  book.add('canal-level', 'mm', level, { level, from });
}

/** The envelope's most apical point (least `c`): on a rim, since the body is a chain of cones. */
function lowestPoint(at: Placement): Vec3 {
  const sin = Math.sqrt(Math.max(0, 1 - at.a[2] * at.a[2]));
  const down: Vec3 = sin > 0 ? [(at.a[0] * at.a[2]) / sin, (at.a[1] * at.a[2]) / sin, -sin] : [1, 0, 0];
  let best: Vec3 = at.axisPoint(at.tA);
  for (const x of [0, at.shape.transmucosalLength, at.length - at.shape.taperLength, at.length]) {
    const t = at.tP + x;
    const p = along(at.axisPoint(t), down, at.radius(t));
    if (p[2] < best[2]) best = p;
  }
  return best;
}

function bone(at: Placement, book: ReadingBook): void {
  const e = exposureOf(at);
  book.add('exposure-dehiscence', 'mm2', e.dehiscence, { from: e.worst });
  book.add('exposure-fenestration', 'mm2', e.fenestration, { from: e.worst });
  if (at.anatomy.socket) book.add('exposure-socket', 'mm2', e.socket);
  else book.skip('exposure-socket', 'mm2', 'healed-site');
  book.add('exposed-threads', 'count', e.threads, { from: e.worst });
  book.add('bone-contact', 'percent', e.contact);
}

function socketGap(at: Placement, book: ReadingBook): void {
  const { socket } = at.anatomy;
  const level = Math.max(0, at.rimLevel(0));
  if (!socket) {
    book.skip('socket-gap-facial', 'mm', 'healed-site');
    return;
  }
  const p = at.axisPoint(level);
  const stretch = socket.rootVoid(p, at.ef);
  const r = at.radius(level);
  if (!stretch) book.skip('socket-gap-facial', 'mm', 'axis-misses-socket');
  else
    book.add('socket-gap-facial', 'mm', stretch[1] - r, {
      level,
      from: along(p, at.ef, r),
      to: along(p, at.ef, stretch[1]),
    });
}

function neck(at: Placement, book: ReadingBook): void {
  const n = at.shape.index;
  if (n === 0) {
    book.skip('neck-facing', 'deg', 'round-neck');
    book.skip('neck-facing-cost', 'mm', 'round-neck');
    return;
  }
  book.add('neck-facing', 'deg', facingOf(n, at.pose.roll));
  book.add('neck-facing-cost', 'mm', rimHeight(at.shape, rad(at.pose.roll)));
}
