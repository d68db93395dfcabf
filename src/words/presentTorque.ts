import {
  FRICTION,
  PRESSURE,
  pressureShare,
  type Range,
  type TorqueAssumption,
  type TorqueEstimate,
  YIELD_PRESS,
} from '../core/seating/torque.ts';
import { formatNumber, formatQuantity } from './format.ts';
import { say } from './saySeat.ts';

/** A torque estimate as a user meets it: never without its note. */
export interface PresentedTorque {
  readonly label: string;
  readonly range: string;
  readonly parts: string;
  readonly note: string;
}

const span = ({ low, high }: Range): string =>
  say('torque.range', {
    low: formatNumber({ value: low, unit: 'Ncm' }),
    high: formatQuantity({ value: high, unit: 'Ncm' }),
  });

export function presentTorque(estimate: TorqueEstimate): PresentedTorque {
  return {
    label: say('torque.label'),
    range: span(estimate),
    parts: say('torque.parts', { thread: span(estimate.thread), side: span(estimate.side) }),
    note: say('torque.note'),
  };
}

const plain = (value: number): string => formatNumber({ value, unit: 'mm', exact: true });
const between = ({ low, high }: Range): string => say('torque.range', { low: plain(low), high: plain(high) });

export function presentAssumption(code: TorqueAssumption): string {
  switch (code) {
    case 'pressure-by-class':
      return say('torque.assumption.pressure-by-class', {
        one: between(PRESSURE[1]),
        two: between(PRESSURE[2]),
        three: between(PRESSURE[3]),
        four: between(PRESSURE[4]),
      });
    case 'pressure-from-press':
      return say('torque.assumption.pressure-from-press', {
        share: formatQuantity({ value: 100 * YIELD_PRESS, unit: 'percent' }),
        reached: formatQuantity({ value: 100 * pressureShare(YIELD_PRESS, 1), unit: 'percent' }),
      });
    case 'friction-range':
      return say('torque.assumption.friction-range', {
        low: plain(FRICTION.low),
        high: plain(FRICTION.high),
      });
    default:
      return say(`torque.assumption.${code}`);
  }
}

/** A heading with its paragraphs. */
export interface TorqueChapter {
  readonly key: string;
  readonly heading: string;
  readonly text: readonly string[];
}

/** The page about the estimate: what it is, its formulas with their dimensions, what it assumes, the published trends it follows, what it cannot. */
export function presentTorquePage(assumptions: readonly TorqueAssumption[]): TorqueChapter[] {
  const chapter = (key: 'what' | 'formula' | 'assumed' | 'trends' | 'cannot', text: readonly string[]) => ({
    key,
    heading: say(`torque.about.${key}`),
    text,
  });
  return [
    chapter('what', [say('torque.about.whatText'), say('torque.note')]),
    chapter('formula', [say('torque.about.screw'), say('torque.about.side'), say('torque.about.force')]),
    chapter('assumed', assumptions.map(presentAssumption)),
    chapter('trends', [
      say('torque.about.density'),
      say('torque.about.undersize'),
      say('torque.about.taper'),
    ]),
    chapter('cannot', [say('torque.about.cannotText')]),
  ];
}
