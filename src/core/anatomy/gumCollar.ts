import { along, rad, smoothstep } from '../geometry/vec.ts';
import type { Anatomy } from './anatomy.ts';
import { toArch } from './arch.ts';
import type { ToothClass } from './landmarks.ts';
import type { Socket } from './socket.ts';
import type { PlacedTooth } from './teeth.ts';

/** How far coronal of the CEJ a healthy margin lies, mm (common practice, no source). */
const MARGIN_ABOVE_CEJ = 1;
/** Height of a papilla above the margin of its tooth, along the tooth's axis, mm: Yang 2020 (read; n = 27) for the front teeth, premolars assumed. */
export const PAPILLA_HEIGHT: Readonly<Record<ToothClass, number>> = {
  central: 4.13,
  lateral: 3.87,
  canine: 4.07,
  premolar1: 3.5,
  premolar2: 3.5,
};
/** How far apical of the contact a papilla ends at most, and half of its thickness at its tip, mm (assumed). */
const UNDER_CONTACT = 0.6;
const TIP_HALF = 0.45;
/** Over how many mm at most the papilla beside the gap falls to the level of the healed crest; it is there at the site's own place. */
const FALL = 4;
/** How far outside the tooth's neck the margin lies, mm: the rest of it is in the crown. */
const OUTSIDE_NECK = 0.12;

/** What the gum does at one arch place. Everything across the arch: `e` facial of the arc, `c` coronal, mm. */
export interface CollarPlace {
  /** A point of the axis that the margin stands about, and that axis's lean, degrees from `c`. */
  readonly e: number;
  readonly c: number;
  readonly lean: number;
  /** Distance of the margin from that point along the axis, mm. */
  readonly rise: number;
  /** Half of the distance between the facial and the palatal margin, across the axis, mm. */
  readonly half: number;
  /** 1 where gum lies against a tooth or a papilla, 0 where it lies over a healed crest. */
  readonly beside: number;
  /** 0 at the middle of a tooth, 1 at a papilla. */
  readonly between: number;
}

/** The gum's margin along the arch, by arch place. */
export type Collar = (q: number) => CollarPlace;

/** A papilla: its tip, and the axis it stands about. */
interface Papilla {
  readonly q: number;
  readonly tip: number;
  readonly lean: number;
  readonly foot: number;
}

/** What a tooth, or the socket of one, takes up of the arch, from its distal (lower `q`) to its mesial papilla. */
interface Share {
  readonly q: number;
  readonly e: number;
  readonly c: number;
  readonly lean: number;
  readonly rise: number;
  readonly half: number;
  /** Half of the mouth of a socket along the arch, mm; a tooth reaches nearly to its papillae. */
  readonly mouth?: number;
  readonly low: Papilla;
  readonly high: Papilla;
}

/** Half of what a tooth takes up along the arch at its margin: between cervix and crown, mm. */
const neckHalf = ({ numbers: n }: PlacedTooth): number =>
  0.65 * (n.cervixWidth / 2) + 0.35 * (n.crownWidth / 2);

const cosOf = (lean: number): number => Math.cos(rad(lean));

/** Level of a tooth's margin on its axis, `c`, mm. */
const marginOf = (tooth: PlacedTooth): number =>
  tooth.origin[2] + MARGIN_ABOVE_CEJ * cosOf(tooth.numbers.tilt.faciopalatal);

/** The papilla on one side of a tooth; `other` the tooth that stands there, `planned` the tip's level where the gap is. */
function papillaOf(
  { arch }: Anatomy,
  tooth: PlacedTooth,
  way: 1 | -1,
  other: PlacedTooth | undefined,
  planned: number | null,
): Papilla {
  const { faciopalatal: lean } = tooth.numbers.tilt;
  const foot = tooth.numbers.boneLevel;
  const contact = way === tooth.turn ? tooth.marks.mesialContact : tooth.marks.distalContact;
  const most = contact[2] - UNDER_CONTACT;
  const rising = (t: PlacedTooth) => marginOf(t) + PAPILLA_HEIGHT[t.cls] * cosOf(t.numbers.tilt.faciopalatal);
  const own = rising(tooth);
  const place = (p: readonly [number, number, number]): number => toArch(arch, p)[0];
  if (planned !== null) {
    const q = place(tooth.origin) + way * (neckHalf(tooth) + 0.3);
    return { q, tip: Math.min(planned, most), lean, foot };
  }
  if (!other) return { q: place(contact), tip: Math.min(own, most), lean, foot };
  const facing = way === other.turn ? other.marks.distalContact : other.marks.mesialContact;
  const both = (own + rising(other)) / 2;
  return {
    q: (place(contact) + place(facing)) / 2,
    tip: Math.min(both, most, facing[2] - UNDER_CONTACT),
    lean: (lean + other.numbers.tilt.faciopalatal) / 2,
    foot: (foot + other.numbers.boneLevel) / 2,
  };
}

function shareOf(anatomy: Anatomy, tooth: PlacedTooth, low: Papilla, high: Papilla): Share {
  const { cervixDepth, boneLevel, tilt } = tooth.numbers;
  return {
    q: toArch(anatomy.arch, tooth.origin)[0],
    e: 0,
    c: boneLevel,
    lean: tilt.faciopalatal,
    rise: (marginOf(tooth) - boneLevel) / cosOf(tilt.faciopalatal),
    half: cervixDepth / 2 + OUTSIDE_NECK,
    low,
    high,
  };
}

/** A fresh socket: the gum stands about its mouth as it stood about the tooth, as far above the crest as the gum is thick there. */
function socketShare({ arch, site }: Anatomy, socket: Socket, low: Papilla, high: Papilla): Share {
  const { faciopalatal: lean } = socket.numbers.axis;
  const c = (low.foot + high.foot) / 2;
  const onAxis = (level: number) =>
    toArch(arch, along(socket.centre, socket.a, (level - socket.centre[2]) / socket.a[2]));
  return {
    q: onAxis(site.gum.crest)[0],
    e: onAxis(c)[1],
    c,
    lean,
    rise: (site.gum.crest - c) / cosOf(lean),
    half: socket.semi[1] - OUTSIDE_NECK,
    mouth: socket.semi[0] - OUTSIDE_NECK,
    low,
    high,
  };
}

/** Beside a tooth: lowest in the middle of its facial side, rising to both papillae. */
function besideTooth(s: Share, q: number): CollarPlace {
  const tip = q < s.q ? s.low : s.high;
  const x = Math.min(1, Math.abs((q - s.q) / (tip.q - s.q)));
  const y = s.mouth === undefined ? x / 0.96 : (q - s.q) / s.mouth;
  const blend = smoothstep(x, 0, 1);
  const to = (from: number, end: number): number => from + blend * (end - from);
  const atTip = (tip.tip - tip.foot) / cosOf(tip.lean);
  // At the tip the axis is counted from the papilla's foot, beside it from the tooth's own point: both blend together.
  return {
    e: to(s.e, 0),
    c: to(s.c, tip.foot),
    lean: to(s.lean, tip.lean),
    rise: s.rise + (atTip - s.rise) * x ** 2.2,
    half: Math.max(TIP_HALF, s.half * Math.sqrt(Math.max(0, 1 - y * y))),
    beside: 1,
    between: x,
  };
}

/** How a papilla falls to the crest, by the share of its way: steepest at the tip, level at the end, so that a saddle lies between two of them. */
function slope(way: number): number {
  const w = 1 - Math.min(1, Math.max(0, way));
  return w * w * (1.5 - 0.5 * w);
}

/** Over a healed crest between two papillae. */
function overGap(anatomy: Anatomy, distal: Papilla, mesial: Papilla, q: number): CollarPlace {
  const { site, ridge } = anatomy;
  const fallOf = (p: Papilla): number => Math.min(FALL, Math.max(0.5, Math.abs(p.q)));
  const [fromLow, fromHigh] = [(q - distal.q) / fallOf(distal), (mesial.q - q) / fallOf(mesial)];
  const low = 1 - smoothstep(fromLow, 0, 1);
  const high = 1 - smoothstep(fromHigh, 0, 1);
  const crest = ridge.crest(q) + site.gum.crest;
  const own = site.crown.tilt.faciopalatal;
  const lean = own + low * (distal.lean - own) + high * (mesial.lean - own);
  const c = low * distal.foot + high * mesial.foot;
  const tip = crest + slope(fromLow) * (distal.tip - crest) + slope(fromHigh) * (mesial.tip - crest);
  const beside = low + high;
  return { e: 0, c, lean, rise: (tip - c) / cosOf(lean), half: TIP_HALF * beside, beside, between: 1 };
}

/** The collar of a site: scalloped from the neighbours' numbers, at the gum's own thickness over the healed crest or about the socket between them. */
export function collarOf(anatomy: Anatomy): Collar {
  const { site, teeth, socket } = anatomy;
  const all = [teeth.mesial, teeth.distal, ...teeth.further].sort((x, y) => x.station - y.station);
  const planned = (tooth: PlacedTooth, way: 1 | -1): number | null => {
    if (tooth === teeth.mesial && way < 0) return site.reference.margin + site.gum.papillaMesial;
    if (tooth === teeth.distal && way > 0) return site.reference.margin + site.gum.papillaDistal;
    return null;
  };
  const papilla = (i: number, way: 1 | -1) =>
    papillaOf(anatomy, all[i], way, all[i + way], planned(all[i], way));
  const shares = all.map((tooth, i) => shareOf(anatomy, tooth, papilla(i, -1), papilla(i, 1)));
  const distal = shares[all.indexOf(teeth.distal)].high;
  const mesial = shares[all.indexOf(teeth.mesial)].low;
  const lost = socket && socketShare(anatomy, socket, distal, mesial);
  return (q) => {
    if (q > distal.q && q < mesial.q)
      return lost ? besideTooth(lost, q) : overGap(anatomy, distal, mesial, q);
    const s = shares.find((one) => q >= one.low.q && q <= one.high.q);
    return besideTooth(s ?? (q < 0 ? shares[0] : shares[shares.length - 1]), q);
  };
}
