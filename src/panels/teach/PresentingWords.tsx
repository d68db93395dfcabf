import type { TeachStores } from '../../state/teach.ts';
import { useSelected } from '../../state/useSelected.ts';
import { say } from '../../words/sayTeach.ts';

/** What one does before a class beside turning the dial: ask first, and point. */
export function PresentingWords({ stores: { live } }: { stores: TeachStores }) {
  const hidden = useSelected(live, (state) => state.answerHidden);
  const pointer = useSelected(live, (state) => state.pointer);
  return (
    <div className="presenting">
      <button
        type="button"
        aria-pressed={hidden}
        aria-keyshortcuts="h"
        onClick={() => live.set({ answerHidden: !hidden })}
      >
        {say('teach.hide')}
      </button>
      <button
        type="button"
        aria-pressed={pointer}
        aria-keyshortcuts="p"
        onClick={() => live.set({ pointer: !pointer })}
      >
        {say('teach.pointer')}
      </button>
    </div>
  );
}
