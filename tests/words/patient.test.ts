import { fleschKincaid } from 'flesch-kincaid';
import { syllable } from 'syllable';
import { describe, expect, it } from 'vitest';
import { SITES } from '../../src/core/anatomy/site.ts';
import { evaluate, readingOf } from '../../src/core/plan/evaluate.ts';
import { DEMO_PLANS, MEAN_PLANS } from '../../src/io/plans.ts';
import { formatNumber, formatQuantity } from '../../src/words/format.ts';
import { LANGUAGES } from '../../src/words/language.ts';
import { patientWords } from '../../src/words/patient.en.ts';
import {
  PATIENT_STEPS,
  patientNumbers,
  patientStory,
  patientTitle,
  QUESTIONS,
  WAYS,
} from '../../src/words/presentPatient.ts';
import { quantityOf } from '../../src/words/presentReading.ts';
import { PATIENT_WORDS, sayPatient } from '../../src/words/sayPatient.ts';

const wordsOf = (text: string): string[] => text.replace(/\{\w+\}/g, '').match(/[\p{L}’]+/gu) ?? [];
const sentencesOf = (text: string): number => Math.max(1, text.match(/[.?!](?=\s|$)/g)?.length ?? 0);

/**
 * School grade of an English text. Source of the formula: J. P. Kincaid et al., Derivation of New Readability Formulas, Research Branch
 * Report 8-75, Naval Technical Training Command, 1975: 0.39 words/sentence + 11.8 syllables/word − 15.59, here from the
 * package `flesch-kincaid`; syllables are counted by the package `syllable`.
 */
function gradeOf(text: string): number {
  const words = wordsOf(text);
  return fleschKincaid({
    sentence: sentencesOf(text),
    word: words.length,
    syllable: words.reduce((sum, word) => sum + syllable(word), 0),
  });
}

const plans = [...DEMO_PLANS, ...MEAN_PLANS].map(({ plan }) => plan);

describe('the grade', () => {
  it('is that of the formula, worked by hand', () => {
    // 6 words, 6 syllables, 1 sentence: 0.39 × 6 + 11.8 × 1 − 15.59.
    expect(gradeOf('The cat sat on the mat.')).toBeCloseTo(-1.45, 2);
    // 4 words, 13 syllables, 1 sentence: 1.56 + 38.35 − 15.59.
    expect(gradeOf('Immediate provisional restorations survive.')).toBeGreaterThan(20);
  });

  // Names of languages stand in their own tongue.
  const english = Object.entries(patientWords).filter(([key]) => !/^patient\.language\./.test(key));

  it.each(english)('of %s is eight or below', (_, text) => {
    expect(gradeOf(text)).toBeLessThanOrEqual(8);
  });

  it.each(PATIENT_STEPS)(
    'of everything told at the step "%s" is eight or below, in a healed gap and a socket',
    (step) => {
      for (const { site } of [plans[0], plans[1]]) {
        const lists = [
          ...WAYS.map((way) => sayPatient('en', `patient.choices.${way}`)),
          ...QUESTIONS.map((question) => sayPatient('en', `patient.ask.${question}`)),
        ];
        const told = [
          patientTitle(step, site, 'en'),
          ...(step === 'choices' ? lists : patientStory(step, site, 'en')),
        ];
        expect(gradeOf(told.join(' '))).toBeLessThanOrEqual(8);
        expect(told.length).toBeGreaterThan(2);
      }
    },
  );
});

describe('a tooth that is still there', () => {
  it('is not called missing', () => {
    const [healed, fresh] = plans;
    for (const language of LANGUAGES) {
      expect(patientTitle('gap', healed.site, language)).toBe(sayPatient(language, 'patient.gap.title'));
      expect(patientTitle('gap', fresh.site, language)).toBe(sayPatient(language, 'patient.gap.titleSocket'));
    }
  });
});

describe('the languages', () => {
  const slots = (text: string) => [...text.matchAll(/\{(\w+)\}/g)].map(([, name]) => name).sort();

  it.each(LANGUAGES)('have every message in %s, with the same slots and no figure', (language) => {
    const words = PATIENT_WORDS[language];
    expect(Object.keys(words).sort()).toEqual(Object.keys(patientWords).sort());
    for (const [key, text] of Object.entries(words)) {
      const first = patientWords[key as keyof typeof patientWords];
      expect(slots(text), key).toEqual(slots(first));
      expect(text.replace(/\{[a-z]\w*\}/g, ''), key).not.toMatch(/[{}\d]/);
      expect(text, key).toBe(text.trim());
      expect(text, key).not.toBe('');
      // A whole sentence in one language is one in the others.
      expect(/[.?]$/.test(text), key).toBe(/[.?]$/.test(first));
    }
  });

  it('say each step and each site in words of their own', () => {
    for (const language of LANGUAGES) {
      const sites = SITES.map((tooth) => sayPatient(language, `patient.tooth.${tooth}`));
      expect(new Set(sites).size).toBe(SITES.length);
      const titles = PATIENT_STEPS.map((step) => sayPatient(language, `patient.${step}.title`));
      expect(new Set(titles).size).toBe(PATIENT_STEPS.length);
    }
    for (const key of Object.keys(patientWords) as (keyof typeof patientWords)[]) {
      const texts = LANGUAGES.map((language) => PATIENT_WORDS[language][key]);
      const same = key.startsWith('patient.language.');
      expect(
        texts.some((text) => text !== texts[0]),
        key,
      ).toBe(!same);
    }
  });

  it('write numbers with their own decimal mark', () => {
    // Source: Unicode CLDR, decimal separators of en, de and es.
    const marks = LANGUAGES.map((language) => {
      const parts = new Intl.NumberFormat(language).formatToParts(1.5);
      return parts.find(({ type }) => type === 'decimal')?.value;
    });
    const shown = LANGUAGES.map((language) => formatNumber({ value: -1.54, unit: 'mm' }, language));
    expect(shown).toEqual(marks.map((mark) => `\u22121${mark}5`));
    expect(formatQuantity({ value: 0.984, unit: 'mm', limits: [1] }, 'de')).toBe('0,98\u00A0mm');
    expect(formatNumber({ value: 0, unit: 'mm' }, 'es')).toBe('0,0');
  });
});

describe('the numbers that were asked for', () => {
  it('are those of the readings, by the one formatter', () => {
    for (const plan of plans) {
      const { readings } = evaluate(plan);
      for (const { id, quantity } of patientNumbers(readings, 'en')) {
        expect(quantity).toBe(formatQuantity(quantityOf(readingOf(readings, id))));
      }
      expect(patientNumbers(readings, 'en').length).toBeGreaterThan(3);
    }
  });
});
