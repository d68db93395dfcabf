import type { ReactNode } from 'react';
import type { PlanStores } from '../../state/stores.ts';
import { useSelected } from '../../state/useSelected.ts';
import { PATIENT_STEPS, type PatientStep, patientStory, patientTitle } from '../../words/presentPatient.ts';
import { say } from '../../words/say.ts';
import { sayPatient } from '../../words/sayPatient.ts';
import { DraftMark } from './LanguageChoice.tsx';
import { PatientNumbers } from './PatientNumbers.tsx';
import { Choices } from './PatientText.tsx';
import './take-home.css';

interface TakeHomeProps {
  stores: PlanStores;
  numbers: boolean;
  /** The picture of a step. */
  picture: (step: PatientStep) => ReactNode;
}

/** Lines to write on. */
const LINES = ['a', 'b', 'c', 'd', 'e', 'f', 'g'] as const;

/** The page to take home: the same words, a picture of this plan beside each step, and room for one's own questions. On paper only. */
export function TakeHome({ stores, numbers, picture }: TakeHomeProps) {
  const language = useSelected(stores.session, (state) => state.language);
  const site = useSelected(stores.document, ({ plan }) => plan.site);
  return (
    <article className="take-home" lang={language}>
      <header>
        <h2>{sayPatient(language, 'patient.print.title')}</h2>
        <p>{sayPatient(language, `patient.tooth.${site.tooth}`)}</p>
      </header>
      <p className="take-home-caution">{sayPatient(language, 'patient.caution')}</p>
      {PATIENT_STEPS.filter((step) => step !== 'choices').map((step) => (
        <section key={step} className="take-home-step">
          {picture(step)}
          <div>
            <h3>{patientTitle(step, site, language)}</h3>
            {patientStory(step, site, language).map((text) => (
              <p key={text}>{text}</p>
            ))}
          </div>
        </section>
      ))}
      <section className="take-home-last">
        <h3>{sayPatient(language, 'patient.choices.title')}</h3>
        <Choices language={language} />
        {numbers && <PatientNumbers stores={stores} language={language} />}
        <h3>{sayPatient(language, 'patient.print.own')}</h3>
        {LINES.map((line) => (
          <div key={line} className="take-home-line" />
        ))}
        <div className="take-home-with">
          <p>{sayPatient(language, 'patient.print.date')}</p>
          <p>{sayPatient(language, 'patient.print.with')}</p>
        </div>
      </section>
      <footer>
        <p>{sayPatient(language, 'patient.cautionFull')}</p>
        <DraftMark language={language} />
        <p>{say('app.name')}</p>
      </footer>
    </article>
  );
}
