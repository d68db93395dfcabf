import type { Fault } from '../core/plan/fault.ts';
import { formatNumber } from './format.ts';
import { say } from './say.ts';

const shown = (value: number | string | null): string =>
  typeof value === 'number' ? formatNumber({ value, unit: 'mm', exact: true }) : (value ?? '–');

/** One line in plain words that names the field, the value and the allowed range. */
export function presentFault(fault: Fault): string {
  const field = fault.field === '' ? say('fault.file') : fault.field;
  const value = shown(fault.value);
  const low = shown(fault.low);
  const high = shown(fault.high);
  const allowed = fault.allowed ?? '–';
  switch (fault.code) {
    case 'not-json':
      return say('fault.not-json');
    case 'too-large':
      return say('fault.too-large', { value: count(fault.value), high: count(fault.high) });
    case 'not-a-plan':
      return say('fault.not-a-plan', { field, value, allowed });
    case 'newer-version':
      return say('fault.newer-version', {
        value: count(fault.value),
        low: count(fault.low),
        high: count(fault.high),
      });
    case 'unknown-version':
      return say('fault.unknown-version', { field, value, low: count(fault.low), high: count(fault.high) });
    case 'missing':
      return fault.low === null
        ? say('fault.missing', { field })
        : say('fault.missing-range', { field, low, high });
    case 'wrong-type':
      return say('fault.wrong-type', { field, value, allowed });
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
      return say('fault.ridge-too-thin', { field, value, low, allowed });
    case 'arch-too-tight':
      return say('fault.arch-too-tight', { field, value, high });
    case 'contradiction':
      if (fault.low === null) return say('fault.contradiction-most', { field, value, high });
      if (fault.high === null) return say('fault.contradiction-least', { field, value, low });
      return say('fault.contradiction', { field, value, low, high });
  }
}

const count = (value: number | string | null): string =>
  typeof value === 'number' ? formatNumber({ value, unit: 'count' }) : (value ?? '–');
