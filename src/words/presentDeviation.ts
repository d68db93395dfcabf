import type { Deviation } from '../core/spread/deviation.ts';
import { formatNumber, formatQuantity, type Quantity, unitSymbol } from './format.ts';
import { say } from './say.ts';

type Key = 'platform' | 'apex' | 'depth' | 'angle';

/** A number of a comparison with its name. */
export interface PresentedDeviation {
  readonly key: Key;
  readonly label: string;
  /** The number with its unit. */
  readonly value: string;
  readonly number: string;
  readonly unit: string;
}

const line = (key: Key, quantity: Quantity): PresentedDeviation => ({
  key,
  label: say(`compare.${key}`),
  value: formatQuantity(quantity),
  number: formatNumber(quantity),
  unit: unitSymbol(quantity.unit),
});

/** How far a pose is from the kept one: platform and apex, depth with its way, angle between the axes. */
export const presentDeviation = ({ coronal, apical, angle }: Deviation): PresentedDeviation[] => [
  line('platform', { value: coronal.global, unit: 'mm' }),
  line('apex', { value: apical.global, unit: 'mm' }),
  line('depth', { value: coronal.depth, unit: 'mm', signed: true }),
  line('angle', { value: angle, unit: 'deg' }),
];
