import { memo } from 'react';
import { DRAWINGS } from '../state/session.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { say } from '../words/say.ts';

/** How the stage is drawn: as the frame time allows, always in full, or always lightly. */
export const DrawingSelect = memo(function DrawingSelect({ stores }: { stores: PlanStores }) {
  const { session } = stores;
  const drawing = useSelected(session, (state) => state.drawing);
  const choose = (value: string) => {
    const next = DRAWINGS.find((one) => one === value);
    if (next) session.set({ drawing: next });
  };
  return (
    <select
      className="drawing-setting"
      aria-label={say('title.drawing')}
      value={drawing}
      onChange={(event) => choose(event.target.value)}
    >
      {DRAWINGS.map((one) => (
        <option key={one} value={one}>
          {say(`title.drawing.${one}`)}
        </option>
      ))}
    </select>
  );
});
