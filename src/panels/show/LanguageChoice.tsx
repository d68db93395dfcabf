import type { SessionStore } from '../../state/session.ts';
import { LANGUAGES, type Language } from '../../words/language.ts';
import { sayPatient } from '../../words/sayPatient.ts';

interface LanguageChoiceProps {
  session: SessionStore;
  language: Language;
}

/** What the page speaks. Where no native speaker has read a text, it says so, to the patient and to the clinician. */
export function LanguageChoice({ session, language }: LanguageChoiceProps) {
  return (
    <div className="patient-language">
      <fieldset>
        <legend className="unseen">{sayPatient(language, 'patient.language')}</legend>
        {LANGUAGES.map((one) => (
          <button
            key={one}
            type="button"
            lang={one}
            aria-pressed={one === language}
            onClick={() => session.set({ language: one })}
          >
            {sayPatient(one, `patient.language.${one}`)}
          </button>
        ))}
      </fieldset>
      <DraftMark language={language} />
    </div>
  );
}

/** The mark of a text that was not written by who speaks it: in that language, and in the first one for the clinician. */
export function DraftMark({ language }: { language: Language }) {
  if (language === 'en') return null;
  return (
    <p className="patient-draft">
      {sayPatient(language, 'patient.draft')} <span lang="en">{sayPatient('en', 'patient.draft')}</span>
    </p>
  );
}
