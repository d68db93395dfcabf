import type { Drill, Handpiece, Kit, NeckCutter } from './kit.ts';

/** Every 2 mm from 4 to 18: common practice, no source. */
const MARKS = [4, 6, 8, 10, 12, 14, 16, 18] as const;
/** From the tip to the handpiece's head, mm (assumed). */
const LENGTH = 28;

const drill = (diameter: number, low: number, high: number): Drill => ({
  diameter,
  point: 120,
  marks: MARKS,
  marksCountPoint: false,
  length: LENGTH,
  speed: { low, high },
});

const neck = (neckDiameter: number, shoulderDiameter: number, height: number): NeckCutter => ({
  neckDiameter,
  shoulderDiameter,
  height,
  length: LENGTH,
  speed: { low: 800, high: 1000 },
});

/** Head of a handpiece and what lengthens a drill, mm (assumed). */
const HANDPIECE: Handpiece = { headDiameter: 10, headHeight: 13, extension: 14 };

/**
 * The generic kit: drills in round steps of 0.4 mm under what they measure, neck cutters for the flared necks of the library. Speeds of 800 to
 * 1200 rpm, falling with the diameter: common practice, no source. Every other number is assumed; none is taken from a product.
 */
export const GENERIC_KIT: Kit = {
  title: 'generic',
  drills: [
    drill(2, 1000, 1200),
    drill(2.4, 1000, 1200),
    drill(2.8, 900, 1100),
    drill(3.2, 900, 1100),
    drill(3.6, 800, 1000),
    drill(4, 800, 1000),
    drill(4.4, 800, 1000),
  ],
  necks: [neck(3, 3.5, 1.5), neck(3, 3.5, 2), neck(3.5, 4.5, 1.5), neck(4, 5, 2)],
  handpiece: HANDPIECE,
};

/**
 * What turns the implant in, mm (assumed): the driver stands so far above what it holds and carries the head of the handpiece or of the wrench.
 */
export const DRIVER = { length: 14, diameter: 4, wrench: { diameter: 9, height: 5 } } as const;

/** Speed at which an implant is turned in, rpm: convention, from memory (no page read). */
export const SEATING_SPEED = { low: 15, high: 50 } as const;

/** The speeds that are usual for drilling, rpm: common practice, no source. */
export const USUAL_SPEED = { low: 800, high: 1200 } as const;
