import type { AbutmentNumbers, FluteNumbers, ImplantShape } from './shape.ts';

/** What differs from shape to shape; the rest follows from it. mm. */
interface Draft {
  readonly diameter: number;
  readonly length: number;
  readonly transmucosal?: number;
  readonly platform?: number;
  readonly apical?: number;
  readonly taper?: number;
  readonly scallop?: number;
  readonly index?: number;
  readonly abutment?: AbutmentNumbers;
}

/** No flutes where the apex is as wide as the body. Else three over the apical third, shallower in a slim apex: common practice, no source. */
function flutesOf(tapered: boolean, length: number, apical: number): FluteNumbers {
  if (!tapered) return { count: 0, length: 0, depth: 0 };
  return { count: 3, length: Math.round(length / 1.5) / 2, depth: apical < 2.5 ? 0.4 : 0.5 };
}

/**
 * One shape of the library. Where the shoulder is meant to lie at the crest the platform is as wide as the body. Torque: 35 N·cm,
 * common practice, no source.
 */
function shape(name: string, d: Draft): ImplantShape {
  const transmucosalLength = d.transmucosal ?? 0;
  const apicalDiameter = d.apical ?? d.diameter - 1;
  return {
    name,
    implantedLength: d.length,
    transmucosalLength,
    apicalDiameter,
    implantedDiameter: d.diameter,
    platformDiameter: transmucosalLength === 0 ? d.diameter : (d.platform ?? d.diameter + 0.5),
    taperLength: d.taper ?? 8,
    thread: { depth: 0.3, pitch: 0.8, starts: 1 },
    flutes: flutesOf(apicalDiameter < d.diameter, d.length, apicalDiameter),
    scallop: d.scallop ?? 0,
    index: d.index ?? 0,
    abutment: d.abutment ?? null,
    maxTorque: 35,
  };
}

/**
 * The library: generic shapes of this project in round steps, named by what they are: form, neck, implanted diameter in tenths
 * of a millimetre × implanted length. No dimension is taken from a product.
 */
export const IMPLANT_LIBRARY: readonly ImplantShape[] = [
  shape('tapered-flared-30x11', { diameter: 3, length: 11, transmucosal: 1.5 }),
  shape('tapered-flared-30x13', { diameter: 3, length: 13, transmucosal: 1.5 }),
  shape('tapered-flared-35x11', { diameter: 3.5, length: 11, transmucosal: 1.5, platform: 4.5 }),
  shape('tapered-flared-40x11', { diameter: 4, length: 11, transmucosal: 2, platform: 5 }),
  shape('tapered-straight-35x9', { diameter: 3.5, length: 9, taper: 7, index: 6 }),
  shape('tapered-straight-35x11', { diameter: 3.5, length: 11, index: 6 }),
  shape('tapered-straight-35x13', { diameter: 3.5, length: 13, taper: 10, index: 6 }),
  shape('tapered-straight-40x9', { diameter: 4, length: 9, taper: 7, index: 6 }),
  shape('tapered-straight-40x11', { diameter: 4, length: 11, index: 6 }),
  shape('tapered-straight-40x13', { diameter: 4, length: 13, taper: 10, index: 6 }),
  shape('tapered-straight-45x9', { diameter: 4.5, length: 9, taper: 7, index: 6 }),
  shape('tapered-straight-45x11', { diameter: 4.5, length: 11, index: 6 }),
  shape('tapered-straight-45x13', { diameter: 4.5, length: 13, taper: 10, index: 6 }),
  shape('tapered-scalloped-40x11', {
    diameter: 4,
    length: 11,
    transmucosal: 2,
    platform: 5,
    scallop: 1,
    index: 2,
  }),
  shape('tapered-one-piece-30x11', {
    diameter: 3,
    length: 11,
    transmucosal: 2,
    index: 2,
    abutment: { height: 5, baseDiameter: 3, topDiameter: 2 },
  }),
  shape('parallel-straight-35x11', { diameter: 3.5, length: 11, apical: 3.5, taper: 0, index: 4 }),
  shape('parallel-straight-40x11', { diameter: 4, length: 11, apical: 4, taper: 0, index: 4 }),
];

/** The shape with that catalogue code, or `undefined`: no such shape in the library. */
export const libraryShape = (name: string): ImplantShape | undefined =>
  IMPLANT_LIBRARY.find((s) => s.name === name);

/** A new plan starts with this one. */
export const DEFAULT_IMPLANT: ImplantShape = IMPLANT_LIBRARY[0];
