import type { Known } from '../measure/limit.ts';
import { type CrownChoices, DEFAULT_CROWN } from '../restoration/crownChoices.ts';
import type { Material } from '../restoration/material.ts';
import { valueAt, withValue } from './atPath.ts';
import { type Fault, fault } from './fault.ts';
import type { Plan } from './plan.ts';
import { rangeOf } from './read.ts';

/** `form`: how the planned crown differs from the reference tooth. `kept`: a distance that is kept about it. */
export type CrownGroup = 'form' | 'kept';

/** One number that is chosen for the crown. */
export interface CrownField {
  /** Dotted path within `crown`; the catalogue's code of its name, too. */
  readonly path: string;
  readonly group: CrownGroup;
  readonly unit: 'mm' | 'deg';
  /** Catalogue code of where its default comes from. */
  readonly source: string;
  readonly known: Known;
}

/** A field as it stands in a plan, with its default and its range. */
export interface CrownNumber extends CrownField {
  readonly value: number;
  readonly usual: number;
  readonly low: number;
  readonly high: number;
}

const OURS = { source: 'ours-crown', known: 'ours' } as const;
const ASSUMED = { source: 'assumed', known: 'ours' } as const;
const COMMON = { source: 'common-practice', known: 'common-practice' } as const;

export const CROWN_FIELDS: readonly CrownField[] = [
  { path: 'wear', group: 'form', unit: 'mm', ...ASSUMED },
  { path: 'tilt.faciopalatal', group: 'form', unit: 'deg', ...ASSUMED },
  { path: 'tilt.mesiodistal', group: 'form', unit: 'deg', ...ASSUMED },
  { path: 'cementGap', group: 'kept', unit: 'mm', ...COMMON },
  { path: 'post.diameter', group: 'kept', unit: 'mm', ...OURS },
  { path: 'post.height', group: 'kept', unit: 'mm', ...OURS },
  { path: 'belowGum', group: 'kept', unit: 'mm', ...OURS },
  { path: 'overBone', group: 'kept', unit: 'mm', ...OURS },
  { path: 'channelBend', group: 'kept', unit: 'mm', ...ASSUMED },
  { path: 'tray', group: 'kept', unit: 'mm', ...COMMON },
];

const numberAt = (crown: CrownChoices, path: string): number => valueAt(crown, path) as number;

/** Every number that is chosen for the crown, with default and range beside it. */
export function crownNumbers({ crown }: Plan): CrownNumber[] {
  return CROWN_FIELDS.map((field) => {
    const { low, high } = rangeOf(['crown', ...field.path.split('.')]);
    return {
      ...field,
      value: numberAt(crown, field.path),
      usual: numberAt(DEFAULT_CROWN, field.path),
      low: low ?? -Infinity,
      high: high ?? Infinity,
    };
  });
}

export type CrownEdit =
  | { readonly ok: true; readonly plan: Plan }
  | { readonly ok: false; readonly fault: Fault };

/** Set one number of the crown. Out of range: the fault, and the plan stays as it is. */
export function setCrownNumber(plan: Plan, path: string, value: number): CrownEdit {
  const field = `crown.${path}`;
  if (!CROWN_FIELDS.some((one) => one.path === path))
    return { ok: false, fault: fault('unknown-field', field) };
  const { low, high } = rangeOf(field.split('.'));
  if (low === null || high === null || !(value >= low && value <= high))
    return { ok: false, fault: fault('out-of-range', field, { value, low, high }) };
  return { ok: true, plan: withValue(plan, field.split('.'), value) };
}

/** Back to the default. */
export function resetCrownNumber(plan: Plan, path: string): CrownEdit {
  return setCrownNumber(plan, path, numberAt(DEFAULT_CROWN, path));
}

/** Another material for the planned crown. */
export const setCrownMaterial = (plan: Plan, material: Material): Plan => ({
  ...plan,
  crown: { ...plan.crown, material },
});
