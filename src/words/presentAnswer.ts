import type { Reading } from '../core/measure/reading.ts';
import type { FixingAnswer, PartTurns } from '../core/plan/crownAnswer.ts';
import { type Evaluation, readingOf } from '../core/plan/evaluate.ts';
import { MATERIALS, type Material } from '../core/restoration/material.ts';
import { formatNumber, formatQuantity } from './format.ts';
import { presentReading, quantityOf } from './presentReading.ts';
import { type MessageKey, say } from './say.ts';

/** The size of a reading, its sign said by the words round it. */
const sizeOf = (reading: Reading): string => {
  const quantity = quantityOf(reading);
  const limits = (quantity.limits ?? []).map((limit) => (quantity.value < 0 ? -limit : limit));
  return formatQuantity({ ...quantity, value: Math.abs(quantity.value), limits });
};

/** The place of a channel that has to bend, or cannot: at the edge, else facial. */
const sideOf = ({ value }: Reading): 'edge' | 'facial' => (value === 0 ? 'edge' : 'facial');

function axisText({ axis }: FixingAnswer): string {
  if (axis.kind === 'cement') {
    const offset = sizeOf(axis.offset);
    if (axis.status === 'within') return say('crown.cement.on', { offset });
    return say((axis.offset.value ?? 0) > 0 ? 'crown.cement.facial' : 'crown.cement.palatal', { offset });
  }
  const distance = sizeOf(axis.toEdge);
  const turn = presentReading(axis.turn).quantity;
  const edge = sideOf(axis.place) === 'edge';
  const most = formatQuantity({ value: axis.turn.limit?.bands.high?.beyond ?? Number.NaN, unit: 'deg' });
  switch (axis.way) {
    case 'straight':
      return say('crown.screw.straight', { distance });
    case 'bent':
      return edge
        ? say('crown.screw.bent.edge', { turn })
        : say('crown.screw.bent.facial', { distance, turn });
    case 'too-far':
      return edge
        ? say('crown.screw.too-far.edge', { turn, most })
        : say('crown.screw.too-far.facial', { distance, turn, most });
    case 'none':
      return say('crown.screw.none', { distance });
    case 'misses':
      return say('crown.screw.misses');
  }
}

function depthText({ fixing, depth }: FixingAnswer): string {
  const { reading, side } = depth;
  const shown = presentReading(reading).quantity;
  if (fixing === 'screw-gum') return say(`crown.depth.screw-gum.${side}`, { level: shown });
  if (fixing === 'cemented' && side === 'low')
    return say('crown.depth.cemented.low', { above: sizeOf(reading) });
  return say(`crown.depth.${fixing}.${side}` as 'crown.depth.screw-bone.low', { depth: shown });
}

const BRIEF = {
  straight: 'straight',
  bent: 'bent',
  'too-far': 'bent',
  none: 'none',
  misses: 'none',
} as const;

function briefText({ fixing, axis, depth }: FixingAnswer): string {
  const level = presentReading(depth.reading).quantity;
  if (axis.kind === 'cement') {
    const offset = sizeOf(axis.offset);
    return say('crown.brief.cemented', { offset, depth: level });
  }
  const turn = presentReading(axis.turn).quantity;
  const way = BRIEF[axis.way];
  if (fixing === 'screw-gum') {
    return way === 'bent'
      ? say('crown.brief.bentAtCej', { turn, level })
      : say(`crown.brief.${way}AtCej`, { level });
  }
  return way === 'bent'
    ? say('crown.brief.bent', { turn, depth: level })
    : say(`crown.brief.${way}`, { depth: level });
}

/** What a pose means for one way of fixing the crown, in words. */
export interface PresentedAnswer {
  readonly name: string;
  readonly mark: FixingAnswer['mark'];
  /** In one clause: whether the pose suits it. */
  readonly lead: string;
  /** Both its parts in a few words. */
  readonly brief: string;
  readonly axis: string;
  readonly depth: string;
}

export function presentAnswer(answer: FixingAnswer): PresentedAnswer {
  const { fixing, mark } = answer;
  const name = say(`fixing.${fixing}`);
  return {
    name,
    mark,
    lead: say(`crown.lead.${mark}`),
    brief: briefText(answer),
    axis: axisText(answer),
    depth: depthText(answer),
  };
}

/** A material with the least thickness of its wall. */
export const materialName = (material: Material): string =>
  say(`crown.material.${material}`, {
    least: formatQuantity({ value: MATERIALS[material].least, unit: 'mm' }),
  });

/** What has to be ground off a one-piece abutment; null: the implant has none. */
export function presentGrinding({ plan, readings }: Evaluation): string | null {
  const depth = readingOf(readings, 'abutment-reduction-depth');
  if (depth.value === null) return null;
  const material = materialName(plan.crown.material);
  if (depth.value === 0) return say('crown.grind.none', { material });
  const volume = presentReading(readingOf(readings, 'abutment-reduction-volume')).quantity;
  const slots = { material, depth: presentReading(depth).quantity, volume };
  if (depth.aside === null) return say('crown.grind.some', slots);
  return say('crown.grind.lacking', {
    ...slots,
    lacking: formatQuantity({ value: depth.aside, unit: 'mm' }),
  });
}

/** The part-turns that would mend the depth. */
export function presentPartTurns(turns: PartTurns | null): string {
  if (!turns) return say('crown.turns.round');
  const each = formatQuantity({ value: Math.round(100 * turns.each) / 100, unit: 'mm', exact: true });
  if (turns.count === null) return say('crown.turns.never', { each });
  if (turns.count === 0) return say('crown.turns.within', { each });
  const count = formatNumber({ value: Math.abs(turns.count), unit: 'count' });
  return say(turns.count > 0 ? 'crown.turns.deeper' : 'crown.turns.higher', { each, count });
}

/** A number that is chosen for the crown: short below its heading, and by itself. */
export const crownFieldName = (path: string): { readonly label: string; readonly name: string } => ({
  label: say(`crownField.${path}` as MessageKey as 'crownField.wear'),
  name: say(`crownField.name.${path}` as MessageKey as 'crownField.name.wear'),
});
