import type { Reading } from '../core/measure/reading.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';
import { formatNumber } from './format.ts';
import { presentReading } from './presentReading.ts';
import { type MessageKey, say } from './say.ts';

/** The state of a pose in one sentence. */
export interface Summary {
  /** Code for the glyph: that of the worst reading. */
  readonly mark: 'within' | 'near' | 'beyond';
  /** How many are beyond and near. */
  readonly lead: string;
  /** The worst of them, or that there is none. */
  readonly rest: string;
}

const NUMBER_WORDS = 12;

const countWord = (count: number): string =>
  count <= NUMBER_WORDS
    ? say(`count.${count}` as MessageKey as 'count.0')
    : formatNumber({ value: count, unit: 'count' });

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const verb = (count: number): string => say(count > 1 ? 'sentence.are' : 'sentence.is');

function worstText(reading: Reading): string {
  const shown = presentReading(reading);
  const slots = {
    reading: shown.label,
    value: shown.quantity,
    // A limit at a level of its own ends in a comma, for a strength without brackets.
    band: shown.limit.replace(/,$/, ''),
    strength: shown.strength,
  };
  return shown.level === ''
    ? say('sentence.worst', slots)
    : say('sentence.worstAt', { ...slots, level: shown.level });
}

/** Counts first, then the worst finding: which reading, its value, where, which band it misses and whose band that is. */
export function presentSummary({ readings, findings }: Pick<Evaluation, 'readings' | 'findings'>): Summary {
  const beyond = findings.filter(({ status }) => status === 'beyond').length;
  const near = findings.length - beyond;
  const [first] = findings;
  const worst = first && readings.find(({ id }) => id === first.reading);
  return {
    mark: first?.status ?? 'within',
    lead: capital(
      say('sentence.counts', {
        beyond: countWord(beyond),
        beyondVerb: verb(beyond),
        near: countWord(near),
        nearVerb: verb(near),
      }),
    ),
    rest: worst ? worstText(worst) : say('sentence.clear'),
  };
}
