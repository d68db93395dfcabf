import { memo } from 'react';
import type { Reading, ReadingId } from '../core/measure/reading.ts';
import { StatusGlyph } from '../marks/StatusGlyph.tsx';
import type { PlanStores } from '../state/stores.ts';
import { useEvaluation } from '../state/usePlan.ts';
import { useReport } from '../state/useReport.ts';
import { formatQuantity } from '../words/format.ts';
import { presentReading } from '../words/presentReading.ts';
import { say } from '../words/sayDrill.ts';
import './readings.css';
import './budget.css';

/** What a hole is read by, in the order of the table. */
export const HOLE_ROWS = [
  'facial-wall-1mm',
  'facial-wall-3mm',
  'facial-wall-5mm',
  'facial-wall-thinnest',
  'facial-wall-true',
  'palatal-wall-1mm',
  'palatal-wall-3mm',
  'palatal-wall-5mm',
  'palatal-wall-thinnest',
  'palatal-wall-true',
  'centring-crest',
  'centring-apex',
  'incisal-line-offset',
  'incisal-line-angle',
  'root-mesial',
  'root-distal',
  'apex-to-floor',
  'canal',
] as const satisfies readonly ReadingId[];

const find = (readings: readonly Reading[] | undefined, id: ReadingId): Reading | undefined =>
  readings?.find((reading) => reading.id === id);

interface RowProps {
  id: ReadingId;
  plan: Reading | undefined;
  pass: Reading | undefined;
  worst: Reading | undefined;
}

/** One reading: the plan's, the last pass's, the worst of the hole; judged by the worst where there is one. */
function Row({ id, plan, pass, worst }: RowProps) {
  const judged = worst ?? pass;
  const shown = judged && presentReading(judged);
  const label = judged ?? plan;
  const number = (reading: Reading | undefined) =>
    reading ? presentReading(reading).number : say('limit.none');
  const limit = presentReading(judged ?? plan ?? ({} as Reading)).limit;
  return (
    <tr data-hole-reading={id} data-status={shown?.mark ?? 'none'}>
      <td>{shown && <StatusGlyph mark={shown.mark} size={15} />}</td>
      <th scope="row">{label && presentReading(label).label}</th>
      <td data-of="plan">{number(plan)}</td>
      <td data-of="pass">{number(pass)}</td>
      <td data-of="worst">{number(worst)}</td>
      <td className="hole-limit">{limit === '' ? say('limit.none') : limit}</td>
      <td className="hole-status">{shown?.status}</td>
    </tr>
  );
}

/** Readings of the hole so far beside the plan's, and the bone that was taken. */
export const HoleReadings = memo(function HoleReadings({ stores }: { stores: PlanStores }) {
  const { readings } = useEvaluation(stores);
  const { report, fresh } = useReport(stores);
  const volume = (value: number) => formatQuantity({ value, unit: 'mm3' });
  return (
    <section className={fresh ? 'hole' : 'hole budget-stale'} aria-label={say('hole.heading')}>
      <h3>{say('hole.heading')}</h3>
      <p className="caption" data-removed>
        {report
          ? say('hole.removed', { removed: volume(report.removed), last: volume(report.collected) })
          : say('hole.nothing')}
      </p>
      <table className="budget-table hole-table">
        <caption className="unseen">{say('hole.caption')}</caption>
        <thead>
          <tr>
            <td />
            <th scope="col">{say('readings.reading')}</th>
            <th scope="col">{say('hole.plan')}</th>
            <th scope="col">{say('hole.pass')}</th>
            <th scope="col">{say('hole.worst')}</th>
            <th scope="col">{say('readings.limitLine')}</th>
            <th scope="col">{say('readings.status')}</th>
          </tr>
        </thead>
        <tbody>
          {HOLE_ROWS.map((id) => (
            <Row
              key={id}
              id={id}
              plan={find(readings, id)}
              pass={find(report?.passes.at(-1), id)}
              worst={find(report?.hole, id)}
            />
          ))}
        </tbody>
      </table>
    </section>
  );
});
