import type { Fault } from '../core/plan/fault.ts';
import { formatNumber } from './format.ts';
import { say } from './sayFault.ts';

/** Whole numbers without decimals, others with all they have; on their own side of the range they are compared with. */
const shown = (value: number | string | null, limits: readonly number[] = []): string => {
  if (typeof value !== 'number') return value ?? '–';
  if (Number.isInteger(value)) return formatNumber({ value, unit: 'count' });
  return formatNumber({ value, unit: 'mm', exact: true, limits });
};

const TYPES = ['number', 'int', 'string', 'array', 'object'] as const;

const NUMERIC: ReadonlySet<string> = new Set(['number', 'int']);

function typeText(expected: string | null): string {
  const known = TYPES.find((type) => type === expected);
  return known ? say(`type.${known}`) : (expected ?? '–');
}

/** One line in plain words that names the field, the value and the allowed range. `named` gives a field another name than its path. */
export function presentFault(fault: Fault, named: (path: string) => string = (path) => path): string {
  const field = fault.field === '' ? say('fault.file') : named(fault.field);
  const range = [fault.low, fault.high].filter((end) => end !== null);
  const value = shown(fault.value, range);
  const low = shown(fault.low);
  const high = shown(fault.high);
  const allowed = fault.allowed ?? '–';
  switch (fault.code) {
    case 'not-json':
      return say('fault.not-json');
    case 'too-large':
      return say('fault.too-large', { value: count(fault.value), high: count(fault.high) });
    case 'not-a-plan':
      return fault.field === ''
        ? say('fault.not-an-object', { value })
        : say('fault.not-a-plan', { field, value, allowed });
    case 'newer-version':
      return say('fault.newer-version', {
        value: count(fault.value),
        low: count(fault.low),
        high: count(fault.high),
      });
    case 'unknown-version':
      return say('fault.unknown-version', { field, value, low: count(fault.low), high: count(fault.high) });
    case 'missing':
      if (fault.allowed !== null) return say('fault.missing-allowed', { field, allowed });
      return fault.low === null
        ? say('fault.missing', { field })
        : say('fault.missing-range', { field, low, high });
    case 'wrong-type':
      return fault.low === null || !NUMERIC.has(fault.allowed ?? '')
        ? say('fault.wrong-type', { field, value, allowed: typeText(fault.allowed) })
        : say('fault.wrong-type-range', { field, value, allowed: typeText(fault.allowed), low, high });
    case 'out-of-range':
      return say('fault.out-of-range', { field, value, low, high });
    case 'not-allowed':
      return say('fault.not-allowed', { field, value, allowed });
    case 'unknown-field':
      return say('fault.unknown-field', { field });
    case 'too-long':
      return say('fault.too-long', { field, value: count(fault.value), high: count(fault.high) });
    case 'wrong-count':
      return say('fault.wrong-count', {
        field,
        value: count(fault.value),
        low: count(fault.low),
        high: count(fault.high),
      });
    case 'depths-not-rising':
      return say('fault.depths-not-rising', { field, value, low });
    case 'ridge-too-thin':
      return range.length < 2
        ? say('fault.ridge-too-thin-alone', { field, value, allowed })
        : say('fault.ridge-too-thin', { field, value, allowed, low, high });
    case 'ridge-too-flared':
    case 'ridge-too-low':
    case 'roots-meet':
      return range.length < 2
        ? say(`fault.${fault.code}-alone`, { field, value })
        : say(`fault.${fault.code}`, { field, value, low, high });
    case 'arch-too-tight':
      return say('fault.arch-too-tight', { field, value, low, high });
    case 'other-exercise':
      return say('fault.other-exercise', { field, value, allowed });
    case 'answer-changed':
      return say('fault.answer-changed', { field });
    case 'contradiction': {
      const text = contradictionText(fault, { field, value, low, high });
      return fault.allowed === null
        ? text
        : say('fault.because', { fault: text, field: named(fault.allowed) });
    }
  }
}

function contradictionText(
  fault: Fault,
  { field, value, low, high }: Readonly<Record<'field' | 'value' | 'low' | 'high', string>>,
): string {
  if (fault.low === null) return say('fault.contradiction-most', { field, value, high });
  if (fault.high === null) return say('fault.contradiction-least', { field, value, low });
  if (fault.low === fault.high) return say('fault.contradiction-exact', { field, value, low });
  return say('fault.contradiction', { field, value, low, high });
}

const count = (value: number | string | null): string =>
  typeof value === 'number' ? formatNumber({ value, unit: 'count' }) : (value ?? '–');
