import type { Language } from './language.ts';
import { patientWordsDe } from './patient.de.ts';
import { type PatientKey, type PatientTranslation, patientWords } from './patient.en.ts';
import { patientWordsEs } from './patient.es.ts';
import { fill, type SlotNames } from './sayer.ts';

export const PATIENT_WORDS: Readonly<Record<Language, PatientTranslation>> = {
  en: patientWords,
  de: patientWordsDe,
  es: patientWordsEs,
};

type Slots<K extends PatientKey> = [SlotNames<(typeof patientWords)[K]>] extends [never]
  ? []
  : [slots: Readonly<Record<SlotNames<(typeof patientWords)[K]>, string>>];

/** A message of the patient's page in a language, its slots filled as by `say`. The English text says which slots there are. */
export function sayPatient<K extends PatientKey>(language: Language, key: K, ...[slots]: Slots<K>): string {
  return fill(PATIENT_WORDS[language][key], slots);
}
