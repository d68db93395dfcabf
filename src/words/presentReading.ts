import type { Bands } from '../core/measure/limit.ts';
import type { Reading } from '../core/measure/reading.ts';
import { formatNumber, formatQuantity, type Quantity, unitSymbol } from './format.ts';
import { type MessageKey, say } from './say.ts';

/** A reading as a user meets it. Every place that shows one takes its words and digits from here. */
export interface PresentedReading {
  readonly id: string;
  readonly label: string;
  /** The number alone (`1.2`, `−0.3`), an en dash where there is none. */
  readonly number: string;
  /** The number with its unit. */
  readonly quantity: string;
  readonly unit: string;
  /** Where a search found it (`at 5.7 mm`), '' where it has no level of its own. */
  readonly level: string;
  /** The band to be within, '' where there is none. */
  readonly limit: string;
  readonly strength: string;
  /** The strength where there is little room. */
  readonly strengthBrief: string;
  readonly source: string;
  readonly known: string;
  readonly status: string;
  /** Code for the glyph. */
  readonly mark: 'within' | 'near' | 'beyond' | 'none';
  readonly reason: string;
  /** The reason in a few words. */
  readonly why: string;
  /** What the reading's further number says, '' where it has none to say. */
  readonly note: string;
}

export const bounds = ({ low, high }: Bands): number[] =>
  [low?.near, low?.beyond, high?.near, high?.beyond].filter((b) => b !== undefined);

/** The reading's number as the formatter takes it: its limits keep the shown digits on the value's side. */
export function quantityOf(reading: Reading): Quantity {
  return {
    value: reading.value ?? Number.NaN,
    unit: unitOf(reading),
    limits: reading.limit ? bounds(reading.limit.bands) : [],
  };
}

/** A place is said in a word; where a number of it is asked for, it is a bare one. */
const unitOf = ({ unit }: Reading): Quantity['unit'] => (unit === 'place' ? 'count' : unit);

const PLACES = { '-1': 'facial', '0': 'edge', '1': 'palatal' } as const;

function placeText({ unit, value }: Reading): string | null {
  if (unit !== 'place' || value === null) return null;
  return say(`place.${PLACES[String(value) as keyof typeof PLACES]}`);
}

const SEARCHED = /-(thinnest|true)$|^root-(mesial|distal)$|^canal$|^apex-to-concavity$/;

function limitText(reading: Reading): string {
  if (!reading.limit) return '';
  const { low, high } = reading.limit.bands;
  const text = (value: number) => formatNumber({ value, unit: unitOf(reading) });
  if (low && high) return say('limit.both', { low: text(low.near), high: text(high.near) });
  if (low && reading.judgedAt) {
    const level = formatQuantity({ value: reading.judgedAt.level, unit: 'mm' });
    return say('limit.atLevel', { limit: say('limit.low', { near: text(low.near) }), level });
  }
  if (low) return say('limit.low', { near: text(low.near) });
  if (high) return say('limit.high', { near: text(high.near) });
  return '';
}

function reasonText(reading: Reading, as: 'reason' | 'why'): string {
  const { reason, aside } = reading;
  if (!reason) return '';
  if (reason === 'no-bone-met') {
    return say(`${as}.no-bone-met`, {
      aside: formatQuantity({ value: aside ?? Number.NaN, unit: unitOf(reading) }),
    });
  }
  return say(`${as}.${reason}`);
}

function noteText({ id, aside }: Reading): string {
  if (aside === null) return '';
  const millimetres = () => formatQuantity({ value: aside, unit: 'mm' });
  if (id === 'abutment-reduction-depth') return say('note.lacking', { lacking: millimetres() });
  if (id === 'margin-reduction') return say('note.marginShort', { lacking: millimetres() });
  if (!id.startsWith('contact-to-crest-')) return '';
  const share = formatQuantity({ value: aside, unit: 'percent' });
  return say('note.papilla', { share, source: sourceText('tarnow-1992') });
}

/** Words of a source code; one that the catalogue lacks is a fault of ours, which a test looks for. */
export const sourceText = (code: string): string => say(`source.${code}` as MessageKey as 'source.ours');

export function presentReading(reading: Reading): PresentedReading {
  const { id, limit, status, reason, level } = reading;
  const statusKey = status ?? (reason === 'not-counted' ? 'not-counted' : 'none');
  return {
    id,
    label: say(`reading.${id}`),
    number: placeText(reading) ?? formatNumber(quantityOf(reading)),
    quantity: placeText(reading) ?? formatQuantity(quantityOf(reading)),
    unit: unitSymbol(unitOf(reading)),
    level: SEARCHED.test(id) && level !== null ? formatQuantity({ value: level, unit: 'mm' }) : '',
    limit: limitText(reading),
    strength: limit ? say(`strength.${limit.strength}`) : '',
    strengthBrief: limit ? say(`strengthBrief.${limit.strength}`) : '',
    source: limit ? sourceText(limit.source) : '',
    known: limit ? say(`known.${limit.known}`) : '',
    status: say(`status.${statusKey}`),
    mark: status === null || status === 'not-applicable' ? 'none' : status,
    reason: reasonText(reading, 'reason'),
    why: reasonText(reading, 'why'),
    note: noteText(reading),
  };
}
