import type { ReactNode } from 'react';
import type { Site } from '../../core/anatomy/site.ts';
import type { Language } from '../../words/language.ts';
import {
  PATIENT_STEPS,
  type PatientStep,
  patientStory,
  patientTitle,
  QUESTIONS,
  WAYS,
} from '../../words/presentPatient.ts';
import { sayPatient } from '../../words/sayPatient.ts';

interface PatientTextProps {
  site: Site;
  step: PatientStep;
  language: Language;
  onStep: (step: PatientStep) => void;
  /** The numbers, where they were asked for: they stand in place of the story. */
  children: ReactNode;
}

/** What else can be done, and what to ask. */
export function Choices({ language }: { language: Language }) {
  return (
    <div className="patient-choices">
      <section>
        <h3>{sayPatient(language, 'patient.choices.ways')}</h3>
        <ul>
          {WAYS.map((way) => (
            <li key={way}>{sayPatient(language, `patient.choices.${way}`)}</li>
          ))}
        </ul>
      </section>
      <section>
        <h3>{sayPatient(language, 'patient.choices.ask')}</h3>
        <ul>
          {QUESTIONS.map((question) => (
            <li key={question}>{sayPatient(language, `patient.ask.${question}`)}</li>
          ))}
        </ul>
      </section>
    </div>
  );
}

/** The words of a step and the way on from it. */
export function PatientText({ site, step, language, onStep, children }: PatientTextProps) {
  const at = PATIENT_STEPS.indexOf(step);
  const next = PATIENT_STEPS[at + 1];
  return (
    <section className="patient-text">
      <div aria-live="polite">
        <p className="patient-tooth">{sayPatient(language, `patient.tooth.${site.tooth}`)}</p>
        <h2>{patientTitle(step, site, language)}</h2>
        {children ||
          patientStory(step, site, language).map((text) => (
            <p key={text} className="patient-story">
              {text}
            </p>
          ))}
        {step === 'choices' && <Choices language={language} />}
      </div>
      <div className="patient-ways">
        <button type="button" disabled={at === 0} onClick={() => onStep(PATIENT_STEPS[at - 1])}>
          {sayPatient(language, 'patient.back')}
        </button>
        <button type="button" className="patient-on" onClick={() => onStep(next ?? PATIENT_STEPS[0])}>
          {next
            ? sayPatient(language, 'patient.next', { step: sayPatient(language, `patient.${next}.name`) })
            : sayPatient(language, 'patient.again')}
        </button>
      </div>
    </section>
  );
}
