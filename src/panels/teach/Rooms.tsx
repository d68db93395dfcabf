import { TEACHINGS } from '../../state/session.ts';
import type { PlanStores } from '../../state/stores.ts';
import { useSelected } from '../../state/useSelected.ts';
import { say } from '../../words/sayTeach.ts';

/** What is taught, as words to press; at the head of every part of this place. */
export function Rooms({ stores }: { stores: PlanStores }) {
  const here = useSelected(stores.session, (state) => state.teaching);
  return (
    // biome-ignore lint/a11y/useSemanticElements: words in a line, no form
    <div className="rooms" role="group" aria-label={say('teach.rooms')}>
      {TEACHINGS.map((one) => (
        <button
          key={one}
          type="button"
          aria-pressed={one === here}
          onClick={() => stores.session.set({ teaching: one })}
        >
          {say(`teach.room.${one}`)}
        </button>
      ))}
    </div>
  );
}
