import type { PassRow } from '../core/drilling/rehearsalSummary.ts';
import { type FaultSetting, presentPass } from '../words/presentPasses.ts';
import { say } from '../words/sayDrill.ts';
import { FaultList } from './PassSummary.tsx';

/** What stands of each pass beside the plan. */
const PASS_COLUMNS = ['depth', 'depthOff', 'crest', 'apex', 'angle', 'volume'] as const;

/** A pass as a row, and under it what went wrong. */
function PassRows({ row, setting }: { row: PassRow; setting: FaultSetting }) {
  const { title, tool, state, rows, faults } = presentPass(row, setting);
  return (
    <>
      <tr data-printed-pass={row.index}>
        <th scope="row">
          {say('pass.named', { pass: title, tool })} {state !== '' && <small>{state}</small>}
        </th>
        {PASS_COLUMNS.map((column) => (
          <td key={column}>
            {rows.find(({ key }) => key === column)?.value ?? '–'}
            {column === 'apex' && row.carriedOn && <small> {say('pass.carried')}</small>}
          </td>
        ))}
      </tr>
      {faults.length > 0 && (
        <tr className="pass-faults">
          <td colSpan={PASS_COLUMNS.length + 1}>
            <FaultList faults={faults} notes />
          </td>
        </tr>
      )}
    </>
  );
}

interface PassTableProps {
  rows: readonly PassRow[];
  setting: FaultSetting;
  className: string;
}

/** Passes beside the plan as a table, as they stand on paper. */
export function PassTable({ rows, setting, className }: PassTableProps) {
  return (
    <table className={className}>
      <thead>
        <tr>
          <th scope="col">{say('hand.pass')}</th>
          {PASS_COLUMNS.map((column) => (
            <th key={column} scope="col">
              {say(`pass.${column}`)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <PassRows key={row.index} row={row} setting={setting} />
        ))}
      </tbody>
    </table>
  );
}
