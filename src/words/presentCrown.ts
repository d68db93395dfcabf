import type { CrownGroup, CrownNumber } from '../core/plan/crownFields.ts';
import type { DepthTurns } from '../core/plan/partTurns.ts';
import type { ExitMeaning } from '../core/restoration/exitMeaning.ts';
import { MATERIALS, type Material } from '../core/restoration/material.ts';
import { formatNumber, formatQuantity } from './format.ts';
import { bounds, sourceText } from './presentReading.ts';
import { say } from './sayCrown.ts';

/** A number of the crown as a user meets it. */
export interface PresentedCrownNumber {
  readonly label: string;
  readonly quantity: string;
  /** The default alone, to go back to. */
  readonly usual: string;
  /** Default and source in a sentence. */
  readonly about: string;
}

export const crownGroupName = (group: CrownGroup): string => say(`crownGroup.${group}`);
export const materialName = (material: Material): string => say(`material.${material}`);

export function presentCrownNumber({
  path,
  unit,
  value,
  usual,
  source,
  known,
}: CrownNumber): PresentedCrownNumber {
  return {
    label: say(`crownField.${path}` as 'crownField.wear'),
    quantity: formatQuantity({ value, unit, exact: true }),
    usual: formatNumber({ value: usual, unit, exact: true }),
    about: say('crownField.about', {
      value: formatQuantity({ value: usual, unit, exact: true }),
      source: sourceText(source),
      known: say(`known.${known}`),
    }),
  };
}

/** Least thickness and source of a material. */
export function aboutMaterial(material: Material): string {
  const { least, source, known } = MATERIALS[material];
  return say('material.about', {
    least: formatQuantity({ value: least, unit: 'mm' }),
    source: sourceText(source),
    known: say(`known.${known}`),
  });
}

/** The same, where there is little room: how that is known is left to {@link aboutMaterial}. */
export function leastOfMaterial(material: Material): string {
  const { least, source } = MATERIALS[material];
  return say('material.least', {
    least: formatQuantity({ value: least, unit: 'mm' }),
    source: sourceText(source),
  });
}

/** What the exit of the axis means for the way of fixing, in a sentence. */
export function presentExit({ code, place, toEdge, angle, most }: ExitMeaning): string {
  const slots = {
    distance: formatQuantity({ value: Math.abs(toEdge ?? Number.NaN), unit: 'mm' }),
    angle: formatQuantity({ value: angle ?? Number.NaN, unit: 'deg', limits: [most] }),
    most: formatQuantity({ value: most, unit: 'deg' }),
  };
  if (code === 'misses') return say('exit.misses');
  if (code === 'straight') return say('exit.straight', { distance: slots.distance });
  const side = place === 'facial' ? 'facial' : 'edge';
  // Each template takes of these what it has slots for.
  return say(`exit.${code}.${side}` as 'exit.bent.facial', slots);
}

/** What part-turns of the neck would make of a depth, in a sentence; `turnsBrief` beside the depth's own field, where it needs no name. */
export function presentDepthTurns(
  { reading, degrees, change, promise }: DepthTurns,
  as: 'depthTurns' | 'turnsBrief' = 'depthTurns',
): string {
  const slots = {
    reading: say(`reading.${reading}`),
    degrees: formatQuantity({ value: degrees, unit: 'deg', exact: true }),
    change: formatQuantity({ value: Math.abs(change), unit: 'mm' }),
  };
  const template = (code: 'unjudged' | 'there' | 'deeper' | 'higher') =>
    `${as}.${code}` as 'depthTurns.deeper';
  const blank = { count: '', after: '', status: '' };
  if (!promise) return say(template('unjudged'), { ...slots, ...blank });
  if (promise.turns === 0) return say(template('there'), { ...slots, ...blank });
  return say(template(promise.turns > 0 ? 'deeper' : 'higher'), {
    ...slots,
    count: formatNumber({ value: Math.abs(promise.turns), unit: 'count' }),
    after: formatQuantity({ value: promise.after, unit: 'mm', limits: bounds(promise.bands) }),
    status: say(`status.${promise.status}`),
  });
}

/** The name of that edit. */
export const namePartTurns = (turns: number, degrees: number): string =>
  say(turns > 0 ? 'edit.partTurns.deeper' : 'edit.partTurns.higher', {
    count: formatNumber({ value: Math.abs(turns), unit: 'count' }),
    degrees: formatQuantity({ value: degrees, unit: 'deg', exact: true }),
  });

/** Material, and what the exit means, in a line. */
export const presentCrown = (material: Material, exit: ExitMeaning): string =>
  say('crown.summary', { material: materialName(material), exit: presentExit(exit) });
