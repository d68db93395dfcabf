import { memo } from 'react';
import { SECTIONS } from '../state/session.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { say } from '../words/say.ts';
import { SpinField } from './SpinField.tsx';

/** Levels at which the axis can be looked at across, mm apical of the entry. */
const LEVELS = { least: -4, most: 20 } as const;

/** Which section is drawn, as words under its heading, and the level of the one across. */
export const SectionWords = memo(function SectionWords({ stores }: { stores: PlanStores }) {
  const { session } = stores;
  const kind = useSelected(session, (state) => state.section);
  const level = useSelected(session, (state) => state.sectionLevel);
  return (
    // biome-ignore lint/a11y/useSemanticElements: words in a line, no form
    <div className="section-words" role="group" aria-label={say('section.kinds')}>
      <b aria-hidden="true">{say('section.heading')}</b>
      {SECTIONS.map((one) => (
        <button
          key={one}
          type="button"
          aria-pressed={kind === one}
          onClick={() => session.set({ section: one })}
        >
          {say(`section.${one}`)}
        </button>
      ))}
      {kind === 'across' && (
        <SpinField
          name={say('section.level')}
          value={level}
          unit="mm"
          {...LEVELS}
          step={0.5}
          page={2}
          onCommit={(sectionLevel) => session.set({ sectionLevel })}
        />
      )}
    </div>
  );
});
