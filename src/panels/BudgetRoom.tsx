import type { Room } from '../core/drilling/budget.ts';
import type { BudgetNow } from '../core/plan/budgetNow.ts';
import { formatNumber, formatQuantity } from '../words/format.ts';
import { say } from '../words/sayDrill.ts';

const mm = (value: number): string => formatNumber({ value, unit: 'mm' });

/** More than this is any tilt a hand would make, degrees. */
const ANY = 45;

function roomText({ shift, tilt }: Room): string {
  if (shift < 0) return say('budget.roomNone');
  const turn =
    tilt.either > ANY ? say('budget.anyTilt') : formatQuantity({ value: tilt.either, unit: 'deg' });
  return say('budget.roomOf', { shift: mm(shift), tilt: turn });
}

/** Room to shift and to tilt by depth: it shrinks with every millimetre. */
export function BudgetRoom({ now }: { now: BudgetNow }) {
  const { rows, diameters } = now;
  const neck = rows.some((row) => row.neck !== null);
  return (
    <table className="budget-table budget-room">
      <caption>
        {say('budget.room')} <small>{say('budget.roomNote')}</small>
      </caption>
      <thead>
        <tr>
          <th scope="col">{say('budget.roomDepth')}</th>
          <th scope="col">{say('budget.roomNext', { diameter: mm(diameters.next) })}</th>
          <th scope="col">{say('budget.roomKit', { diameter: mm(diameters.last) })}</th>
          {neck && <th scope="col">{say('budget.roomNeck')}</th>}
          <th scope="col">{say('budget.roomImplant')}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ depth, hand, kit, neck: cutter, implant }) => (
          <tr key={depth}>
            <th scope="row">{mm(depth)}</th>
            <td>{roomText(hand)}</td>
            <td>{roomText(kit)}</td>
            {neck && <td>{cutter ? roomText(cutter) : say('limit.none')}</td>}
            <td>{roomText(implant)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
