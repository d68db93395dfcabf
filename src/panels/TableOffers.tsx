import { withKept } from '../core/plan/compare.ts';
import { BYTE_ORDER_MARK } from '../io/csv.ts';
import {
  comparisonTable,
  readingsTable,
  rehearsalTable,
  type Table,
  tableCsv,
  tableJson,
} from '../io/tables.ts';
import { evaluationOf } from '../state/evaluation.ts';
import type { PlanStores } from '../state/stores.ts';
import { useReport } from '../state/useReport.ts';
import { useSelected } from '../state/useSelected.ts';
import { formatNumber } from '../words/format.ts';
import { say } from '../words/sayFile.ts';
import { download } from './files.ts';
import { Offer, type OfferedKind, OfferGroup } from './Offer.tsx';

/** The tables of the plan on the table: readings, rehearsal, comparison with the kept pose. */
export function TableOffers({ stores }: { stores: PlanStores }) {
  const { document, session } = stores;
  const { report, fresh } = useReport(stores);
  const kept = useSelected(session, (state) => state.kept);
  const planNow = () => document.getState().plan;
  const kindsOf = (table: () => Table): OfferedKind[] => {
    const nameOf = ({ kind }: Table) => {
      const tooth = formatNumber({ value: planNow().site.tooth, unit: 'count' });
      return say(`handOver.file.${kind}`, { tooth });
    };
    return [
      {
        key: 'csv',
        kind: say('handOver.csv'),
        onTake: () => {
          const made = table();
          download(`${nameOf(made)}.csv`, BYTE_ORDER_MARK + tableCsv(made), 'text/csv');
        },
      },
      {
        key: 'json',
        kind: say('handOver.json'),
        onTake: () => {
          const made = table();
          download(`${nameOf(made)}.json`, tableJson(made));
        },
      },
    ];
  };
  return (
    <OfferGroup heading={say('handOver.tables')}>
      <Offer what={say('handOver.readings')} kinds={kindsOf(() => readingsTable(evaluationOf(planNow())))} />
      <Offer
        what={say('handOver.rehearsal')}
        lacking={report && fresh ? '' : say('handOver.noRehearsal')}
        kinds={report ? kindsOf(() => rehearsalTable(planNow(), report)) : []}
      />
      <Offer
        what={say('handOver.comparison')}
        lacking={kept ? '' : say('handOver.noKept')}
        kinds={
          kept
            ? kindsOf(() => comparisonTable(evaluationOf(withKept(planNow(), kept)), evaluationOf(planNow())))
            : []
        }
      />
    </OfferGroup>
  );
}
