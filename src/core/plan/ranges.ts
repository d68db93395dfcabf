type Range = readonly [low: number, high: number];

/** Ranges of the pose in the plan file and in every edit: mm and degrees. */
export const POSE_RANGE = {
  m: [-15, 15],
  f: [-15, 15],
  c: [-20, 15],
  faciopalatal: [-10, 50],
  mesiodistal: [-30, 30],
  roll: [-180, 180],
} as const satisfies Record<string, Range>;
