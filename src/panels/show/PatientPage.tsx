import { type ReactNode, type RefObject, useEffect } from 'react';
import type { PlanStores } from '../../state/stores.ts';
import { useSelected } from '../../state/useSelected.ts';
import { PATIENT_STEPS, type PatientStep } from '../../words/presentPatient.ts';
import { sayPatient } from '../../words/sayPatient.ts';
import { LanguageChoice } from './LanguageChoice.tsx';
import { PatientNumbers } from './PatientNumbers.tsx';
import { PatientText } from './PatientText.tsx';
import './patient.css';

export interface PatientPageProps {
  stores: PlanStores;
  step: PatientStep;
  onStep: (step: PatientStep) => void;
  /** Whether numbers were asked for. */
  numbers: boolean;
  onNumbers: (shown: boolean) => void;
  /** The empty part of the page that the drawing is to stand in. */
  place: RefObject<HTMLDivElement | null>;
  /** The drawing, which lies under the whole page. */
  children: ReactNode;
}

const WAYS: Readonly<Record<string, 1 | -1>> = { ArrowRight: 1, PageDown: 1, ArrowLeft: -1, PageUp: -1 };

/** Arrow and page keys go from step to step, wherever nothing else has a use for them. */
function useStepKeys(step: PatientStep, onStep: (step: PatientStep) => void): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const way = WAYS[event.key];
      if (!way || event.defaultPrevented || event.altKey || event.ctrlKey || event.metaKey) return;
      const next = PATIENT_STEPS[PATIENT_STEPS.indexOf(step) + way];
      if (!next) return;
      event.preventDefault();
      onStep(next);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [step, onStep]);
}

/** The page for the patient: one drawing that unfolds, and what is told beside it. No figure stands on it unless it was asked for. */
export function PatientPage({ stores, step, onStep, numbers, onNumbers, place, children }: PatientPageProps) {
  const language = useSelected(stores.session, (state) => state.language);
  const site = useSelected(stores.document, ({ plan }) => plan.site);
  useStepKeys(step, onStep);
  return (
    <div className="patient" lang={language} data-step={step}>
      {children}
      <nav className="patient-steps" aria-label={sayPatient(language, 'patient.steps')}>
        {PATIENT_STEPS.map((one) => (
          <button
            key={one}
            type="button"
            aria-current={one === step ? 'step' : undefined}
            aria-label={sayPatient(language, `patient.${one}.name`)}
            onClick={() => onStep(one)}
          />
        ))}
      </nav>
      <PatientText site={site} step={step} language={language} onStep={onStep}>
        {numbers && <PatientNumbers stores={stores} language={language} />}
      </PatientText>
      <div className="patient-place" ref={place}>
        {step === PATIENT_STEPS[0] && <p>{sayPatient(language, 'patient.turn')}</p>}
      </div>
      <LanguageChoice session={stores.session} language={language} />
      <footer className="patient-foot">
        <p>{sayPatient(language, 'patient.caution')}</p>
        <button type="button" aria-pressed={numbers} onClick={() => onNumbers(!numbers)}>
          {sayPatient(language, numbers ? 'patient.numbers.hide' : 'patient.numbers.show')}
        </button>
        <button type="button" onClick={() => window.print()}>
          {sayPatient(language, 'patient.print')}
        </button>
      </footer>
    </div>
  );
}
