import type { Drill, NeckCutter } from '../core/drilling/kit.ts';
import { formatNumber, formatQuantity } from './format.ts';
import { say } from './sayDrill.ts';

/** A tool's own numbers are told with every decimal they have. */
const size = (value: number): string => formatQuantity({ value, unit: 'mm', exact: true });

/** What a tool is called: by what it measures. */
export const sayTool = (tool: Drill | NeckCutter): string =>
  'diameter' in tool
    ? say('hand.drill', { diameter: size(tool.diameter) })
    : say('hand.neck', {
        neck: formatNumber({ value: tool.neckDiameter, unit: 'mm', exact: true }),
        shoulder: size(tool.shoulderDiameter),
      });

/** A depth with its unit. */
export const sayDepth = (value: number): string => formatQuantity({ value, unit: 'mm' });
