import type { Deviation } from '../spread/deviation.ts';

/** What an attempt is marked by: the deviations of the placement studies, at platform and apex. Rule L9. */
export const MEASURE_IDS = [
  'platform-global',
  'platform-lateral',
  'platform-depth',
  'platform-faciopalatal',
  'platform-mesiodistal',
  'apex-global',
  'apex-lateral',
  'apex-depth',
  'apex-faciopalatal',
  'apex-mesiodistal',
  'angle',
  'roll',
] as const;
export type MeasureId = (typeof MEASURE_IDS)[number];

/** mm; `angle` and `roll` degrees. Signs: + too deep, + facially, + mesially. `roll` is null for a round neck. */
export type Measures = Readonly<Record<MeasureId, number | null>>;

export const unitOfMeasure = (id: MeasureId): 'mm' | 'deg' =>
  id === 'angle' || id === 'roll' ? 'deg' : 'mm';

/** Whether a measure has a sign: its mean over a class is a habit, not a size. */
export const isSigned = (id: MeasureId): boolean => /-(depth|faciopalatal|mesiodistal)$|^roll$/.test(id);

export const measuresOf = ({ coronal, apical, angle, roll }: Deviation): Measures => ({
  'platform-global': coronal.global,
  'platform-lateral': coronal.lateral,
  'platform-depth': coronal.depth,
  'platform-faciopalatal': coronal.faciopalatal,
  'platform-mesiodistal': coronal.mesiodistal,
  'apex-global': apical.global,
  'apex-lateral': apical.lateral,
  'apex-depth': apical.depth,
  'apex-faciopalatal': apical.faciopalatal,
  'apex-mesiodistal': apical.mesiodistal,
  angle,
  roll,
});
