import { lazy, Suspense, useCallback, useRef, useState } from 'react';
import { PatientPage } from '../../panels/show/PatientPage.tsx';
import { TakeHome } from '../../panels/show/TakeHome.tsx';
import { ShowPicture } from '../../scene/show/ShowPicture.tsx';
import type { TakePicture } from '../../scene/show/ShowStage.tsx';
import { useSelected } from '../../state/useSelected.ts';
import { PATIENT_STEPS, type PatientStep } from '../../words/presentPatient.ts';
import { sayPatient } from '../../words/sayPatient.ts';
import type { DrawnLedger } from '../revision.ts';
import type { PlaceProps } from './place.ts';

const ShowStage = lazy(() => import('../../scene/show/ShowStage.tsx'));

/** Steps in which the implant stands in its place and is seen. */
const IN_PLACE: readonly PatientStep[] = ['implant', 'healing', 'tooth'];

/** The patient's page: its words, the drawing under them, and the page to take home. */
export function ShowPage({ stores, ledger }: PlaceProps & { ledger: DrawnLedger }) {
  const language = useSelected(stores.session, (state) => state.language);
  const [step, setStep] = useState<PatientStep>(PATIENT_STEPS[0]);
  const [numbers, setNumbers] = useState(false);
  const onStep = useCallback((next: PatientStep) => {
    setStep(next);
    setNumbers(false);
  }, []);
  const onNumbers = useCallback((shown: boolean) => {
    setNumbers(shown);
    // They speak of the implant: it has to be there.
    if (shown) setStep((now) => (IN_PLACE.includes(now) ? now : 'implant'));
  }, []);
  const place = useRef<HTMLDivElement>(null);
  const pictures = useRef<TakePicture | null>(null);
  const drawn = useCallback((shown: number) => ledger.drawn('stage', shown), [ledger]);
  const absent = useCallback(() => ledger.absent('stage'), [ledger]);

  return (
    <>
      <PatientPage
        stores={stores}
        step={step}
        onStep={onStep}
        numbers={numbers}
        onNumbers={onNumbers}
        place={place}
      >
        <Suspense fallback={<p className="unseen">{sayPatient(language, 'patient.loading')}</p>}>
          <ShowStage
            stores={stores}
            step={step}
            language={language}
            place={place}
            pictures={pictures}
            onDrawn={drawn}
            onAbsent={absent}
          />
        </Suspense>
      </PatientPage>
      <TakeHome
        stores={stores}
        numbers={numbers}
        picture={(one) => <ShowPicture step={one} language={language} pictures={pictures} />}
      />
    </>
  );
}
