type Range = readonly [low: number, high: number];

/** Ranges of a user's own kit: mm, degrees, rpm, and how many of each. */
export const KIT_RANGE = {
  drills: [1, 16],
  necks: [0, 12],
  marks: [1, 20],
  diameter: [1, 7],
  point: [60, 180],
  mark: [1, 30],
  length: [15, 60],
  speed: [10, 3000],
  shoulderDiameter: [1, 9],
  neckHeight: [0.5, 6],
  headDiameter: [4, 20],
  headHeight: [5, 30],
  extension: [0, 40],
} as const satisfies Record<string, Range>;

/** Two drills of a kit, and two marks of a drill, differ at least by this, mm. */
export const LEAST_STEP = 0.1;
