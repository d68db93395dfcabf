import type { Tilt } from '../geometry/pose.ts';

export const SITES = [11, 12, 13, 14, 21, 22, 23, 24] as const;
/** Two-digit code of the missing tooth, ISO 3950. */
export type SiteCode = (typeof SITES)[number];

/** Half-widths of the ridge at one depth below the crest, both along and across the ridge's own axis, mm. */
export interface WidthEntry {
  readonly depth: number;
  readonly facial: number;
  readonly palatal: number;
}

/** One tooth from the numbers of a textbook table, mm; its frame is rule S7. */
export interface ToothNumbers {
  readonly crownLength: number;
  readonly rootLength: number;
  readonly crownWidth: number;
  readonly cervixWidth: number;
  readonly crownDepth: number;
  readonly cervixDepth: number;
  readonly cejCurveMesial: number;
  readonly cejCurveDistal: number;
}

export interface Neighbour extends ToothNumbers {
  /** Whole-tooth axis in the tooth's own station; + crown leans facially / to its own mesial. */
  readonly tilt: Tilt;
  /** Further tilt of the root against the tooth's axis. */
  readonly rootTilt: Tilt;
  /** Bone level above the site's crest (along `c`), mm. */
  readonly boneLevel: number;
  /** CEJ above that bone level (along `c`), mm. */
  readonly cejAboveBone: number;
  /** The ridge about this tooth: its half-widths, and how far it leans (as the site's `inclination`). */
  readonly ridge: { readonly widths: readonly WidthEntry[]; readonly inclination: number };
}

export interface HealedState {
  readonly kind: 'healed';
}

/** A fresh extraction socket (rules S11, S12), mm and degrees. */
export interface SocketState {
  readonly kind: 'socket';
  readonly axis: Tilt;
  readonly width: number;
  readonly breadth: number;
  readonly depth: number;
  readonly parallel: number;
  readonly wall: { readonly thickness: number; readonly level: number };
  /** Facial wall missing from the crest down; depth 0: none. */
  readonly dehiscence: { readonly depth: number; readonly width: number };
}

export interface RidgeNumbers {
  /** At the site, depth increasing, 2 to 6 entries. */
  readonly widths: readonly WidthEntry[];
  readonly blend: { readonly from: number; readonly to: number };
  readonly crestRounding: number;
  readonly undercut: { readonly depth: number; readonly level: number; readonly halfHeight: number };
  /** From `c`, + the coronal end leans facially, degrees. */
  readonly inclination: number;
  /** Crest to floor along the ridge's own axis, mm. */
  readonly height: number;
  readonly floor: 'nose' | 'sinus';
  readonly eminence: { readonly height: number; readonly halfWidth: number };
  readonly cortex: { readonly facial: number; readonly palatal: number };
  /** Bone class 1–4 (Lekholm and Zarb). */
  readonly boneClass: 1 | 2 | 3 | 4;
  /** How much higher the bone stands between the neighbour and the tooth beyond it than at the neighbour, mm. */
  readonly scallop: number;
  /** How far the site's crest lies apical of the interdental crest between the central incisors (along `c`), mm. */
  readonly crestDrop: number;
}

/** Everything about the place before an implant is in it: numbers that are read off a scan or a cast (rules S1–S13). */
export interface Site {
  readonly tooth: SiteCode;
  readonly arch: { readonly width: number; readonly depth: number };
  readonly ridge: RidgeNumbers;
  readonly state: HealedState | SocketState;
  /** Mesiodistal distance between the contact points that face the gap, mm. */
  readonly gap: number;
  readonly mesial: Neighbour;
  readonly distal: Neighbour;
  /** The contralateral tooth's levels above the site's crest (along `c`), mm. */
  readonly reference: {
    readonly kind: 'tooth' | 'recession' | 'typed';
    readonly cej: number;
    readonly margin: number;
  };
  /** Thickness of the gum over the crest and on both sides; height of the papillae above the planned margin, mm. */
  readonly gum: {
    readonly crest: number;
    readonly facial: number;
    readonly palatal: number;
    readonly papillaMesial: number;
    readonly papillaDistal: number;
  };
  /** Axis of the planned crown in the site frame. */
  readonly crown: ToothNumbers & { readonly tilt: Tilt };
  readonly canal: {
    readonly behind: number;
    readonly below: number;
    readonly inclination: number;
    readonly length: number;
    readonly foramen: number;
    readonly middle: number;
    readonly nasal: number;
  };
  readonly opposing: { readonly overjet: number; readonly overbite: number };
}
