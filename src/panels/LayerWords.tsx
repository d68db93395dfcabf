import { memo, useId } from 'react';
import { BONES, LAYERS } from '../state/session.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { say } from '../words/say.ts';
import './layers.css';

interface WordProps {
  word: string;
  pressed: boolean;
  onPress: () => void;
}

function Word({ word, pressed, onPress }: WordProps) {
  return (
    <button type="button" className="layer" aria-pressed={pressed} onClick={onPress}>
      {word}
    </button>
  );
}

/** What the stage shows, as words in the title block: the bone in one of three ways, the rest on or off. */
export const LayerWords = memo(function LayerWords({ stores }: { stores: PlanStores }) {
  const { session } = stores;
  const id = useId();
  const bone = useSelected(session, (state) => state.bone);
  const layers = useSelected(session, (state) => state.layers);
  // The crown's own place says by itself how the crown is shown.
  const ofCrown = useSelected(session, ({ place }) => place === 'crown');
  return (
    <div className="layers">
      {/* biome-ignore lint/a11y/useSemanticElements: three words in a line, no form */}
      <span className="layers-bone" role="group" aria-labelledby={id}>
        <span id={id}>{say('layer.bone')}</span>
        {BONES.map((one) => (
          <Word
            key={one}
            word={say(`layer.bone.${one}`)}
            pressed={bone === one}
            onPress={() => session.set({ bone: one })}
          />
        ))}
      </span>
      {LAYERS.filter((layer) => !(ofCrown && layer === 'crown')).map((layer) => (
        <Word
          key={layer}
          word={say(`layer.${layer}`)}
          pressed={layers[layer]}
          onPress={() => session.toggleLayer(layer)}
        />
      ))}
    </div>
  );
});
