import type { Site } from '../core/anatomy/site.ts';
import type { Reading, ReadingId } from '../core/measure/reading.ts';
import { formatQuantity } from './format.ts';
import type { Language } from './language.ts';
import { quantityOf } from './presentReading.ts';
import { sayPatient } from './sayPatient.ts';

/** What the patient's drawing unfolds, in this order. */
export const PATIENT_STEPS = ['gap', 'bone', 'implant', 'healing', 'tooth', 'choices'] as const;
export type PatientStep = (typeof PATIENT_STEPS)[number];

export const WAYS = ['bridge', 'plate', 'brace', 'leave'] as const;
export const QUESTIONS = ['why', 'long', 'wear', 'wrong', 'cost', 'call'] as const;

/** The readings that are shown to who asks for numbers. */
export const PATIENT_READINGS = [
  'facial-wall-thinnest',
  'palatal-wall-thinnest',
  'root-mesial',
  'root-distal',
  'apex-to-floor',
] as const satisfies readonly ReadingId[];

export interface PatientNumber {
  readonly id: (typeof PATIENT_READINGS)[number];
  readonly label: string;
  readonly quantity: string;
}

/** A few readings of a plan in plain words; those without an answer are left out. */
export function patientNumbers(readings: readonly Reading[], language: Language): PatientNumber[] {
  return PATIENT_READINGS.flatMap((id) => {
    const reading = readings.find((one) => one.id === id);
    if (!reading || reading.value === null) return [];
    const quantity = formatQuantity(quantityOf(reading), language);
    return [{ id, label: sayPatient(language, `patient.number.${id}`), quantity }];
  });
}

/** The heading of a step. */
export function patientTitle(step: PatientStep, site: Site, language: Language): string {
  const unkept = step === 'gap' && site.state.kind === 'socket';
  return sayPatient(language, unkept ? 'patient.gap.titleSocket' : `patient.${step}.title`);
}

/** What is told at a step, paragraph by paragraph; the last step has lists instead. */
export function patientStory(step: PatientStep, site: Site, language: Language): string[] {
  const socket = site.state.kind === 'socket';
  switch (step) {
    case 'gap':
      return [
        sayPatient(language, socket ? 'patient.gap.whatSocket' : 'patient.gap.what'),
        sayPatient(language, 'patient.gap.why'),
      ];
    case 'bone':
      return [
        sayPatient(language, 'patient.bone.what'),
        sayPatient(language, socket ? 'patient.bone.whySocket' : 'patient.bone.why'),
      ];
    case 'implant':
      return [sayPatient(language, 'patient.implant.what'), sayPatient(language, 'patient.implant.why')];
    case 'healing':
      return [sayPatient(language, 'patient.healing.what'), sayPatient(language, 'patient.healing.risk')];
    case 'tooth':
      return [sayPatient(language, 'patient.tooth.what'), sayPatient(language, 'patient.tooth.why')];
    case 'choices':
      return [];
  }
}
