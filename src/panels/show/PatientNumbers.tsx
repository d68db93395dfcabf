import { evaluationOf } from '../../state/evaluation.ts';
import type { PlanStores } from '../../state/stores.ts';
import { useSelected } from '../../state/useSelected.ts';
import type { Language } from '../../words/language.ts';
import { patientNumbers } from '../../words/presentPatient.ts';
import { sayPatient } from '../../words/sayPatient.ts';

interface PatientNumbersProps {
  stores: PlanStores;
  language: Language;
}

/** A few readings of the plan, for who asked for them. */
export function PatientNumbers({ stores, language }: PatientNumbersProps) {
  const plan = useSelected(stores.document, (state) => state.plan);
  return (
    <section className="patient-numbers" aria-label={sayPatient(language, 'patient.numbers.title')}>
      <h3>{sayPatient(language, 'patient.numbers.title')}</h3>
      <dl>
        {patientNumbers(evaluationOf(plan).readings, language).map(({ id, label, quantity }) => (
          <div key={id} data-number={id}>
            <dt>{label}</dt>
            <dd>{quantity}</dd>
          </div>
        ))}
      </dl>
      <p>{sayPatient(language, 'patient.numbers.note')}</p>
    </section>
  );
}
