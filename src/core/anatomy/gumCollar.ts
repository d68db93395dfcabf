import { smoothstep } from '../geometry/vec.ts';
import type { Anatomy } from './anatomy.ts';
import { toArch } from './arch.ts';
import type { PlacedTooth } from './teeth.ts';

/** How far coronal of the CEJ a healthy margin lies, mm (common practice, no source). */
const MARGIN_ABOVE_CEJ = 1;
/** Most that a papilla between two teeth rises above their margins, and how far apical of the contact it ends, mm (assumed). */
const PAPILLA = 4.5;
const UNDER_CONTACT = 0.6;
/** Over how many mm the papilla beside the gap falls to the level of the healed crest: there before the site's own place. */
const FALL = 2.6;

/** What the gum does at one arch place. */
export interface CollarPlace {
  /** Axis that it stands about, across the arch, degrees from `c`. */
  readonly lean: number;
  /** Level at which that axis crosses the arch's cylinder, `c`, mm. */
  readonly foot: number;
  /** Level of the margin, `c`, mm. */
  readonly margin: number;
  /** Half-depth of the tooth there, mm; 0 where there is none. */
  readonly half: number;
}

/** The gum's margin along the arch, by arch place. */
export type Collar = (q: number) => CollarPlace;

/** A papilla: where it ends and the axis it stands about. */
interface Papilla {
  readonly q: number;
  readonly c: number;
  readonly lean: number;
  readonly foot: number;
}

/** One tooth's share of the arch, from its distal (lower `q`) to its mesial papilla. */
interface Share {
  readonly tooth: PlacedTooth;
  readonly q: number;
  readonly margin: number;
  readonly lean: number;
  readonly foot: number;
  readonly low: Papilla;
  readonly high: Papilla;
}

/** Half of what a tooth takes up along the arch at its margin: between cervix and crown, mm. */
const neckHalf = ({ numbers: n }: PlacedTooth): number =>
  0.65 * (n.cervixWidth / 2) + 0.35 * (n.crownWidth / 2);

function sharesOf(anatomy: Anatomy): Share[] {
  const { arch, site, teeth } = anatomy;
  const place = (p: readonly [number, number, number]): number => toArch(arch, p)[0];
  const all = [teeth.mesial, teeth.distal, ...teeth.further].sort((x, y) => x.station - y.station);
  const marginOf = (tooth: PlacedTooth) => tooth.origin[2] + MARGIN_ABOVE_CEJ;
  const papilla = (i: number, way: 1 | -1): Papilla => {
    const tooth = all[i];
    const other = all[i + way];
    const { faciopalatal: lean } = tooth.numbers.tilt;
    const foot = tooth.numbers.boneLevel;
    const p = way === tooth.turn ? tooth.marks.mesialContact : tooth.marks.distalContact;
    const most = p[2] - UNDER_CONTACT;
    const facesGap = (tooth === teeth.mesial && way < 0) || (tooth === teeth.distal && way > 0);
    if (facesGap) {
      const height = way < 0 ? site.gum.papillaMesial : site.gum.papillaDistal;
      const q = place(tooth.origin) + way * (neckHalf(tooth) + 0.3);
      return { q, c: Math.min(site.reference.margin + height, most), lean, foot };
    }
    if (!other) return { q: place(p), c: Math.min(marginOf(tooth) + PAPILLA, most), lean, foot };
    const facing = way === other.turn ? other.marks.distalContact : other.marks.mesialContact;
    return {
      q: (place(p) + place(facing)) / 2,
      c: Math.min(marginOf(tooth) + PAPILLA, marginOf(other) + PAPILLA, most, facing[2] - UNDER_CONTACT),
      lean: (lean + other.numbers.tilt.faciopalatal) / 2,
      foot: (foot + other.numbers.boneLevel) / 2,
    };
  };
  return all.map((tooth, i) => ({
    tooth,
    q: place(tooth.origin),
    margin: marginOf(tooth),
    lean: tooth.numbers.tilt.faciopalatal,
    foot: tooth.numbers.boneLevel,
    low: papilla(i, -1),
    high: papilla(i, 1),
  }));
}

/** Beside a tooth: lowest in the middle of its facial side, rising to both papillae. */
function besideTooth(s: Share, q: number): CollarPlace {
  const tip = q < s.q ? s.low : s.high;
  const x = Math.min(1, Math.abs((q - s.q) / (tip.q - s.q)));
  const blend = smoothstep(x, 0, 1);
  return {
    lean: s.lean + blend * (tip.lean - s.lean),
    foot: s.foot + blend * (tip.foot - s.foot),
    margin: s.margin + (tip.c - s.margin) * x ** 2.2,
    half: (s.tooth.numbers.cervixDepth / 2) * Math.sqrt(Math.max(0, 1 - (x / 0.94) ** 2)),
  };
}

/** The collar of a site: scalloped from the neighbours' numbers, at the gum's own thickness over the healed crest between them. */
export function collarOf(anatomy: Anatomy): Collar {
  const { site, ridge, teeth } = anatomy;
  const shares = sharesOf(anatomy);
  const of = (tooth: PlacedTooth): Share => shares.find((s) => s.tooth === tooth) ?? shares[0];
  const distal = of(teeth.distal).high;
  const mesial = of(teeth.mesial).low;
  const fallOf = (p: Papilla): number => Math.min(FALL, Math.max(0.5, 0.9 * Math.abs(p.q)));
  const overGap = (q: number): CollarPlace => {
    const low = 1 - smoothstep(q - distal.q, 0, fallOf(distal));
    const high = 1 - smoothstep(mesial.q - q, 0, fallOf(mesial));
    const crest = ridge.crest(q) + site.gum.crest;
    const own = site.crown.tilt.faciopalatal;
    return {
      lean: own + low * (distal.lean - own) + high * (mesial.lean - own),
      foot: low * distal.foot + high * mesial.foot,
      margin: crest + Math.max(low * (distal.c - crest), high * (mesial.c - crest)),
      half: 0,
    };
  };
  return (q) => {
    if (q > distal.q && q < mesial.q) return overGap(q);
    const s = shares.find((one) => q >= one.low.q && q <= one.high.q);
    return besideTooth(s ?? (q < 0 ? shares[0] : shares[shares.length - 1]), q);
  };
}
