import { VIEWS, type View } from '../state/session.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { say } from '../words/say.ts';

interface ViewButtonsProps {
  stores: PlanStores;
  /** The camera stands where the hand left it, at none of the views. */
  free: boolean;
  onAsk: (view: View) => void;
}

/** The views as words over the stage. */
export function ViewButtons({ stores, free, onAsk }: ViewButtonsProps) {
  const { session, document } = stores;
  const view = useSelected(session, (state) => state.view);
  const inMouth = useSelected(session, (state) => state.asInMouth);
  const left = useSelected(document, ({ plan }) => plan.site.tooth >= 20);
  const other = { mesial: 'distal', distal: 'mesial' } as const;
  const name = (one: View) =>
    say(left && (one === 'mesial' || one === 'distal') ? `stage.view.${other[one]}` : `stage.view.${one}`);
  return (
    // biome-ignore lint/a11y/useSemanticElements: words in a line, no form
    <div className="views" role="group" aria-label={say('stage.views')}>
      {VIEWS.map((one) => (
        <button key={one} type="button" aria-pressed={view === one && !free} onClick={() => onAsk(one)}>
          {name(one)}
        </button>
      ))}
      {free && <span className="views-free">{say('stage.view.free')}</span>}
      <button type="button" aria-pressed={inMouth} onClick={() => session.set({ asInMouth: !inMouth })}>
        {say('stage.inMouth')}
      </button>
    </div>
  );
}
