import type { Deviation } from '../core/spread/deviation.ts';
import { formatQuantity } from './format.ts';
import { say } from './say.ts';

/** A number of a comparison with its name. */
export interface PresentedDeviation {
  readonly key: 'platform' | 'apex' | 'depth' | 'angle';
  readonly label: string;
  readonly value: string;
}

/** How far a pose is from the kept one: platform and apex, depth with its way, angle between the axes. */
export function presentDeviation({ coronal, apical, angle }: Deviation): PresentedDeviation[] {
  const mm = (value: number) => formatQuantity({ value, unit: 'mm' });
  return [
    { key: 'platform', label: say('compare.platform'), value: mm(coronal.global) },
    { key: 'apex', label: say('compare.apex'), value: mm(apical.global) },
    {
      key: 'depth',
      label: say('compare.depth'),
      value: formatQuantity({ value: coronal.depth, unit: 'mm', signed: true }),
    },
    { key: 'angle', label: say('compare.angle'), value: formatQuantity({ value: angle, unit: 'deg' }) },
  ];
}
