import { type LoweredCrest, WIDTH_AT } from '../core/plan/loweredCrest.ts';
import { formatQuantity } from './format.ts';
import { say } from './say.ts';

const mm = (value: number): string => formatQuantity({ value, unit: 'mm' });

/** What lowering the crest gives in width and costs in height, in words. */
export const presentLoweredCrest = ({ by, width, height, rise }: LoweredCrest): string =>
  say('fit.crest', {
    by: mm(by),
    at: mm(WIDTH_AT),
    wide: mm(width.before),
    wider: mm(width.after),
    high: mm(height.before),
    lower: mm(height.after),
    rise: mm(rise),
  });
