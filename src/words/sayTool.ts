import type { Drill, NeckCutter } from '../core/drilling/kit.ts';
import { formatNumber, formatQuantity } from './format.ts';
import { say } from './say.ts';

const mm = (value: number): string => formatNumber({ value, unit: 'mm' });

/** What a tool is called: by what it measures. */
export const sayTool = (tool: Drill | NeckCutter): string =>
  'diameter' in tool
    ? say('hand.drill', { diameter: formatQuantity({ value: tool.diameter, unit: 'mm' }) })
    : say('hand.neck', {
        neck: mm(tool.neckDiameter),
        shoulder: formatQuantity({ value: tool.shoulderDiameter, unit: 'mm' }),
      });

/** A depth with its unit. */
export const sayDepth = (value: number): string => formatQuantity({ value, unit: 'mm' });
