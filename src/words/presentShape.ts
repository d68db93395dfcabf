import type { ImplantShape } from '../core/implant/shape.ts';
import { formatNumber } from './format.ts';
import { say } from './say.ts';

const FORMS = [
  'tapered-flared',
  'tapered-straight',
  'tapered-scalloped',
  'tapered-one-piece',
  'parallel-straight',
] as const;

/** What a shape is, in words; a shape of the user's own goes by the name they gave it. */
export function presentShape(shape: ImplantShape): string {
  const form = FORMS.find((f) => shape.name.startsWith(`${f}-`));
  if (!form) return shape.name;
  const size = (value: number) => formatNumber({ value, unit: 'mm' });
  return say(`shape.${form}`, {
    diameter: size(shape.implantedDiameter),
    length: size(shape.implantedLength),
  });
}
