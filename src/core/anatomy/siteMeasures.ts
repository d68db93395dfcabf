import type { Tilt } from '../geometry/pose.ts';
import { add, along, rad, scale, type Vec3 } from '../geometry/vec.ts';
import type { Anatomy } from './anatomy.ts';
import { archDirections, fromArch, toArch } from './arch.ts';
import type { PlacedTooth } from './teeth.ts';
import { plannedTooth } from './toothMeshes.ts';

/**
 * How the site is looked at while one of its numbers is shown: the section across the ridge in the middle of the gap or at a neighbour, the
 * front, or the chewing side.
 */
export type SketchView = 'section' | 'mesial' | 'distal' | 'front' | 'arch';

/** A length between two points, as long as the number says. Site frame, mm. */
export interface LengthMeasure {
  readonly kind: 'length';
  readonly view: SketchView;
  readonly from: Vec3;
  readonly to: Vec3;
}

/** An angle at a point between two unit directions that lie in the view's plane. */
export interface AngleMeasure {
  readonly kind: 'angle';
  readonly view: SketchView;
  readonly at: Vec3;
  readonly from: Vec3;
  readonly to: Vec3;
}

export type SiteMeasure = LengthMeasure | AngleMeasure;

const UP: Vec3 = [0, 0, 1];

const length = (view: SketchView, from: Vec3, to: Vec3): LengthMeasure => ({
  kind: 'length',
  view,
  from,
  to,
});

/** From a point along a direction, as far as the number says. */
const reach = (view: SketchView, from: Vec3, way: Vec3, by: number): LengthMeasure =>
  length(view, from, along(from, way, by));

/** A direction leaning by so many degrees from the upright toward a level direction. */
const leaning = (toward: Vec3, degrees: number): Vec3 =>
  add(scale(toward, Math.sin(rad(degrees))), scale(UP, Math.cos(rad(degrees))));

const lean = (view: SketchView, at: Vec3, toward: Vec3, degrees: number, beyond = 0): AngleMeasure => ({
  kind: 'angle',
  view,
  at,
  from: leaning(toward, beyond),
  to: leaning(toward, beyond + degrees),
});

/** Measures across the ridge at an arch place, along its own axis. */
function acrossRidge({ ridge }: Anatomy, view: SketchView, q: number) {
  const at = (u: number, d: number): Vec3 => ridge.sectionPoint(q, u, d);
  const surface = (side: 1 | -1, d: number): number => side * ridge.half(side, q, d) * ridge.cap(d);
  return {
    at,
    surface,
    span: (from: number, to: number, d: number) => length(view, at(from, d), at(to, d)),
    depth: (to: number, u = 0, from = 0) => length(view, at(u, from), at(u, to)),
  };
}

/** Depth at which thicknesses that hold for the whole side are shown, mm. */
const SHOWN = { cortex: 7, gum: 3.5 } as const;

function ridgeMeasure(anatomy: Anatomy, part: string): SiteMeasure | null {
  const { ridge: n } = anatomy.site;
  const { at, surface, span, depth } = acrossRidge(anatomy, 'section', 0);
  const { level } = n.undercut;
  switch (part) {
    case 'crestRounding':
      return depth(n.crestRounding);
    case 'undercut.depth':
      return span(surface(1, level), surface(1, level) + n.undercut.depth, level);
    case 'undercut.level':
      return depth(level);
    case 'inclination':
      return lean('section', at(0, n.height * 0.7), [0, 1, 0], n.inclination);
    case 'height':
      return depth(n.height);
    case 'cortex.facial':
      return span(surface(1, SHOWN.cortex) - n.cortex.facial, surface(1, SHOWN.cortex), SHOWN.cortex);
    case 'cortex.palatal':
      return span(surface(-1, SHOWN.cortex), surface(-1, SHOWN.cortex) + n.cortex.palatal, SHOWN.cortex);
    case 'scallop': {
      const q = outerContact(anatomy);
      const top = fromArch(anatomy.arch, q, 0, anatomy.ridge.crest(q));
      return length('front', add(top, [0, 0, -n.scallop]), top);
    }
    case 'crestDrop': {
      const middle = fromArch(anatomy.arch, anatomy.teeth.midline, 0, 0);
      return reach('front', middle, UP, n.crestDrop);
    }
    default:
      return null;
  }
}

/** Where along the arch the distal neighbour touches the tooth beyond it: the bone between them is shown there. */
const outerContact = ({ arch, teeth }: Anatomy): number => toArch(arch, teeth.distal.marks.distalContact)[0];

function widthMeasure(anatomy: Anatomy, place: 'section' | 'mesial' | 'distal', path: readonly string[]) {
  const { site, teeth } = anatomy;
  const list = place === 'section' ? site.ridge.widths : site[place].ridge.widths;
  const entry = list[Number(path[0])];
  if (!entry) return null;
  const { span, depth } = acrossRidge(anatomy, place, place === 'section' ? 0 : teeth[place].station);
  switch (path[1]) {
    case 'depth':
      return depth(entry.depth);
    case 'facial':
      return span(0, entry.facial, entry.depth);
    case 'palatal':
      return span(-entry.palatal, 0, entry.depth);
    default:
      return null;
  }
}

/** Directions in the front view of a tooth's station: mesial of the site, and of the tooth itself. */
function stationOf({ arch }: Anatomy, tooth: PlacedTooth) {
  const { tangent, normal } = archDirections(arch, tooth.station);
  return { mesial: scale(tangent, tooth.turn), facial: normal };
}

function toothMeasure(anatomy: Anatomy, side: 'mesial' | 'distal', part: string): SiteMeasure | null {
  const tooth = anatomy.teeth[side];
  const { numbers: n, origin, a, ex, root } = tooth;
  const { mesial, facial } = stationOf(anatomy, tooth);
  const across = (high: number): Vec3 => along(along(origin, a, high), ex, -n.crownWidth / 2);
  switch (part) {
    case 'crownWidth':
      return reach('front', across(0.75 * n.crownLength), ex, n.crownWidth);
    case 'crownLength':
      return reach('front', origin, a, n.crownLength);
    case 'rootLength':
      return reach('front', origin, root.a, -n.rootLength);
    case 'tilt.faciopalatal':
      return lean(side, origin, facial, n.tilt.faciopalatal);
    case 'tilt.mesiodistal':
      return lean('front', origin, mesial, n.tilt.mesiodistal);
    case 'rootTilt.mesiodistal':
      return lean('front', root.apex, mesial, n.rootTilt.mesiodistal, n.tilt.mesiodistal);
    case 'boneLevel':
      return reach('front', fromArch(anatomy.arch, tooth.station, 0, 0), UP, n.boneLevel);
    case 'cejAboveBone':
      return reach('front', along(origin, UP, -n.cejAboveBone), UP, n.cejAboveBone);
    case 'ridge.inclination': {
      const { at } = acrossRidge(anatomy, side, tooth.station);
      return lean(side, at(0, 12), facial, n.ridge.inclination);
    }
    default:
      return null;
  }
}

function crownMeasure(anatomy: Anatomy, part: string): SiteMeasure | null {
  const { crown } = anatomy.site;
  const { origin } = plannedTooth(anatomy);
  return part === 'tilt.faciopalatal'
    ? lean('section', origin, [0, 1, 0], crown.tilt.faciopalatal)
    : lean('front', origin, [1, 0, 0], crown.tilt.mesiodistal);
}

function opposingMeasure(anatomy: Anatomy, part: string): SiteMeasure {
  const { overjet, overbite } = anatomy.site.opposing;
  const edge = plannedTooth(anatomy).marks.tip;
  const lower = along(edge, [0, -1, 0], overjet);
  return part === 'overjet' ? length('section', edge, lower) : reach('section', lower, UP, -overbite);
}

function gumMeasure(anatomy: Anatomy, part: string): SiteMeasure | null {
  const { gum, reference, gap } = anatomy.site;
  const { surface, span } = acrossRidge(anatomy, 'section', 0);
  const papilla = (m: number, by: number) => reach('front', [m, 0, reference.margin], UP, by);
  switch (part) {
    case 'crest':
      return reach('section', [0, 0, 0], UP, gum.crest);
    case 'facial':
      return span(surface(1, SHOWN.gum), surface(1, SHOWN.gum) + gum.facial, SHOWN.gum);
    case 'palatal':
      return span(surface(-1, SHOWN.gum) - gum.palatal, surface(-1, SHOWN.gum), SHOWN.gum);
    case 'papillaMesial':
      return papilla(gap / 2, gum.papillaMesial);
    case 'papillaDistal':
      return papilla(-gap / 2, gum.papillaDistal);
    default:
      return null;
  }
}

/** Half of the angle that the arch's chord takes up, as a length along the arch. */
function halfChord({ arch, site }: Anatomy): number {
  const half = site.arch.width / 2;
  if (arch.radius === Infinity) return half;
  const angle =
    site.arch.depth > arch.radius ? Math.PI - Math.asin(half / arch.radius) : Math.asin(half / arch.radius);
  return arch.radius * angle;
}

function archMeasure(anatomy: Anatomy, part: string): SiteMeasure {
  const { arch, teeth, site } = anatomy;
  const half = halfChord(anatomy);
  const at = (q: number): Vec3 => fromArch(arch, q, 0, 0);
  const ends = [at(teeth.midline - half), at(teeth.midline + half)] as const;
  if (part === 'width') return length('arch', ends[0], ends[1]);
  const front = at(teeth.midline);
  return reach('arch', front, archDirections(arch, teeth.midline).normal, -site.arch.depth);
}

function socketMeasure(anatomy: Anatomy, part: string): SiteMeasure | null {
  const { socket } = anatomy;
  if (!socket) return null;
  const { numbers: n, a, ef, em } = socket;
  const axis: Tilt = n.axis;
  const mouth = along(socket.centre, a, n.parallel);
  const { surface, span, depth } = acrossRidge(anatomy, 'section', 0);
  const level = n.wall.level;
  switch (part) {
    case 'axis.faciopalatal':
      return lean('section', mouth, [0, 1, 0], axis.faciopalatal);
    case 'axis.mesiodistal':
      return lean('front', mouth, [1, 0, 0], axis.mesiodistal);
    case 'width':
      return reach('front', along(mouth, em, -n.width / 2), em, n.width);
    case 'breadth':
      return reach('section', along(mouth, ef, -n.breadth / 2), ef, n.breadth);
    case 'depth':
      return reach('section', mouth, a, -n.depth);
    case 'wall.thickness':
      return span(surface(1, level) - n.wall.thickness, surface(1, level), level);
    case 'dehiscence.depth':
      return depth(n.dehiscence.depth, surface(1, 2));
    case 'dehiscence.width':
      return reach('front', [-n.dehiscence.width / 2, 0, 0], [1, 0, 0], n.dehiscence.width);
    default:
      return null;
  }
}

const finders: Readonly<Record<string, (anatomy: Anatomy, part: string) => SiteMeasure | null>> = {
  ridge: ridgeMeasure,
  mesial: (anatomy, part) => toothMeasure(anatomy, 'mesial', part),
  distal: (anatomy, part) => toothMeasure(anatomy, 'distal', part),
  crown: crownMeasure,
  opposing: opposingMeasure,
  gum: gumMeasure,
  arch: archMeasure,
  state: socketMeasure,
  reference: ({ site }, part) =>
    reach('front', [0, 0, 0], UP, part === 'cej' ? site.reference.cej : site.reference.margin),
};

/**
 * What a number of the site measures, drawn: the two points it lies between, or the two directions. `path` is dotted within the site; null where
 * nothing can be drawn. A length's points are as far apart as the number says, in space.
 */
export function measureOf(anatomy: Anatomy, path: string): SiteMeasure | null {
  if (path === 'gap') {
    const c = anatomy.teeth.distal.marks.mesialContact[2];
    const { gap } = anatomy.site;
    return length('front', [-gap / 2, 0, c], [gap / 2, 0, c]);
  }
  const keys = path.split('.');
  const widths = keys.indexOf('widths');
  if (widths > 0) {
    const place = keys[0] === 'mesial' || keys[0] === 'distal' ? keys[0] : 'section';
    return widthMeasure(anatomy, place, keys.slice(widths + 1));
  }
  return finders[keys[0]]?.(anatomy, keys.slice(1).join('.')) ?? null;
}
