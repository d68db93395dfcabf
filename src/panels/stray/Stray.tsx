import { useMemo, useState } from 'react';
import type { Forgiving } from '../../core/spread/forgiving.ts';
import type { HandOutlook } from '../../core/spread/handOutlook.ts';
import { firstChoice, handChoices } from '../../core/teaching/hands.ts';
import type { PlanStores } from '../../state/stores.ts';
import { usePlan } from '../../state/usePlan.ts';
import { useSelected } from '../../state/useSelected.ts';
import {
  presentCrossed,
  presentForgiving,
  presentHandSource,
  sayAny,
  sayAnyThere,
  sayHand,
  sayWorking,
} from '../../words/presentStray.ts';
import { say } from '../../words/sayStray.ts';
import { StrayCloud } from './StrayCloud.tsx';
import { useOutlook } from './useOutlook.ts';
import './stray.css';

/** Limits shown: the commonest. */
const MOST = 6;

function Crossed({ outlook }: { outlook: HandOutlook }) {
  const rows = presentCrossed(outlook, MOST);
  if (rows.length === 0) return null;
  return (
    <table className="stray-crossed">
      <thead>
        <tr>
          <th scope="col">{say('stray.limit')}</th>
          <th scope="col">{say('stray.share')}</th>
          <th scope="col">{say('stray.shareThen')}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ id, label, here, there }) => (
          <tr key={id} data-crossed={id}>
            <th scope="row">{label}</th>
            <td>{here}</td>
            <td>{there}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface ForgivesProps {
  readonly stores: PlanStores;
  readonly outlook: HandOutlook;
  readonly close: () => void;
}

/** The pose that forgives most, and what may be done with it; nothing is moved until that is pressed. */
function Forgives({ stores, outlook, close }: ForgivesProps) {
  const plan = usePlan(stores);
  const { forgiving, there } = outlook;
  if (forgiving === undefined) return <p>{say('stray.searching')}</p>;
  const { sentence, moves } = presentForgiving(plan, forgiving);
  const take = ({ pose }: Forgiving) => {
    close();
    stores.document.edit(say('edit.forgiving'), (now) => ({ ...now, pose }));
  };
  const keep = ({ pose }: Forgiving) => {
    close();
    stores.session.set({ kept: { pose, implant: plan.implant } });
  };
  return (
    <>
      <p data-forgiving={forgiving?.after.id ?? ''}>{sentence}</p>
      {forgiving && moves.length > 0 && (
        <>
          <ul className="stray-moves">
            {moves.map((move) => (
              <li key={move}>{move}</li>
            ))}
          </ul>
          {there && <p>{sayAnyThere(there)}</p>}
          <div className="rail-words">
            <button type="button" className="rail-word" onClick={() => take(forgiving)}>
              {say('stray.take')}
            </button>
            <button type="button" className="rail-word" onClick={() => keep(forgiving)}>
              {say('stray.keep')}
            </button>
          </div>
        </>
      )}
    </>
  );
}

interface StrayProps {
  readonly stores: PlanStores;
  readonly close: () => void;
}

/** Where a hand would put the plan time after time, the limits it would break, and the pose that forgives it most. */
export default function Stray({ stores, close }: StrayProps) {
  const plan = usePlan(stores);
  const attempts = useSelected(stores.own, (state) => state.attempts);
  const choices = useMemo(() => handChoices(attempts), [attempts]);
  const [id, setId] = useState(() => firstChoice(choices).id);
  const choice = choices.find((one) => one.id === id) ?? firstChoice(choices);
  const outlook = useOutlook(stores, choice.hand);
  return (
    <>
      <label className="stray-whose">
        <span className="caption">{say('stray.whose')}</span>
        <select value={choice.id} onChange={(event) => setId(event.target.value)}>
          {choices.map((one) => (
            <option key={one.id} value={one.id}>
              {sayHand(one)}
            </option>
          ))}
        </select>
      </label>
      {presentHandSource(choice).map((line) => (
        <p key={line} className="caption">
          {line}
        </p>
      ))}
      {outlook?.cloud && (
        <div className="stray-pair">
          <div>
            <StrayCloud plan={plan} cloud={outlook.cloud} />
          </div>
          <div>
            <p className="stray-any" data-any={outlook.cloud.any}>
              {sayAny(outlook.cloud)}
            </p>
            <Crossed outlook={outlook} />
            <h3>{say('stray.heading')}</h3>
            <Forgives stores={stores} outlook={outlook} close={close} />
          </div>
        </div>
      )}
      <p className="caption" role="status" data-stray={outlook?.done === 1 ? 'done' : 'working'}>
        {outlook && sayWorking(outlook)}
      </p>
      <p className="caption">{say('stray.caution')}</p>
    </>
  );
}
