import { HANDS } from '../state/session.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { say } from '../words/say.ts';

/** Words at the stage's foot: what the arrow keys do, and whether the next press on the model places the entry. */
export function StageTools({ stores }: { stores: PlanStores }) {
  const { session, live } = stores;
  const hand = useSelected(session, (state) => state.hand);
  const placing = useSelected(live, (state) => state.placing);
  return (
    // biome-ignore lint/a11y/useSemanticElements: words in a line, no form
    <div className="views stage-tools" role="group" aria-label={say('stage.tools')}>
      {HANDS.map((one) => (
        <button
          key={one}
          type="button"
          aria-pressed={hand === one}
          onClick={() => session.set({ hand: one })}
        >
          {say(`stage.hand.${one}`)}
        </button>
      ))}
      <button type="button" aria-pressed={placing} onClick={() => live.set({ placing: !placing })}>
        {say('stage.place')}
      </button>
    </div>
  );
}
