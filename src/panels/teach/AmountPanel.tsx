import { StatusGlyph } from '../../marks/StatusGlyph.tsx';
import { PLAYING } from '../../state/amountPlayer.ts';
import type { TeachStores } from '../../state/teach.ts';
import { useSelected } from '../../state/useSelected.ts';
import { presentBreaks } from '../../words/presentTeach.ts';
import { say } from '../../words/sayTeach.ts';
import { AmountDial } from './AmountDial.tsx';
import { stepped } from './stepAmount.ts';

/** Where each limit breaks along the trajectory, as lines. */
function BreakLines({ stores }: { stores: TeachStores }) {
  const breaks = useSelected(stores.found, (state) => state.breaks);
  if (!breaks) return <p className="break-lines">{say('teach.working')}</p>;
  return (
    <ul className="break-lines">
      {presentBreaks(breaks).map(({ mark, text }) => (
        <li key={text}>
          {mark !== 'none' && <StatusGlyph mark={mark} size={18} />}
          <span>{text}</span>
        </li>
      ))}
    </ul>
  );
}

/** From the plan to the full size and back again, at a press. */
function Play({ stores: { live, player } }: { stores: TeachStores }) {
  const playing = useSelected(live, (state) => state.dragging === PLAYING);
  const whole = useSelected(live, (state) => state.amount === 1);
  const word = playing ? 'stop' : whole ? 'back' : 'play';
  const press = () => (playing ? player.stop() : player.playTo(whole ? 0 : 1));
  return (
    <button type="button" className="dial-play" onClick={press}>
      {say(`teach.${word}`)}
    </button>
  );
}

/** How much of the trajectory, and where along it each limit breaks. */
export function AmountPanel({ stores }: { stores: TeachStores }) {
  const { live, player } = stores;
  const hidden = useSelected(live, (state) => state.answerHidden);
  const step = (steps: number) => {
    player.stop();
    live.set({ amount: stepped(live.getState().amount, steps) });
  };
  return (
    <div className="amount">
      <AmountDial stores={stores} hidden={hidden} />
      <div className="amount-beside">
        {!hidden && <BreakLines stores={stores} />}
        <div className="amount-presses">
          <button type="button" aria-label={say('teach.less')} onClick={() => step(-1)}>
            −
          </button>
          <button type="button" aria-label={say('teach.more')} onClick={() => step(1)}>
            +
          </button>
          <Play stores={stores} />
        </div>
      </div>
    </div>
  );
}
