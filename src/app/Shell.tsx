import type { ReactNode } from 'react';
import type { Place } from '../state/session.ts';
import { type MessageKey, say } from '../words/say.ts';
import { Boundary } from './Boundary.tsx';
import { TitleBlock, type TitleBlockProps } from './TitleBlock.tsx';

/** The parts of the page that come and go with the work, each behind a boundary of its own. */
export interface Parts {
  sentence?: ReactNode;
  rail?: ReactNode;
  stage?: ReactNode;
  section?: ReactNode;
  profile?: ReactNode;
  readings?: ReactNode;
}

export interface ShellProps {
  place: Place;
  header: ReactNode;
  title: TitleBlockProps;
  parts: Parts;
  /** What stands on paper only, under the rest. */
  printed?: ReactNode;
  /** The stage has failed and draws nothing until it is tried again. */
  onStageFault?: () => void;
}

interface PanelProps {
  place: keyof Parts;
  name: string;
  /** Whether the heading is drawn; it is always there for a screen reader. */
  heading?: boolean;
  onFault?: () => void;
  children: ReactNode;
}

function Panel({ place, name, heading = false, onFault, children }: PanelProps) {
  return (
    <section className={`panel panel-${place}`} aria-label={name}>
      <h2 className={heading ? undefined : 'unseen'}>{name}</h2>
      <Boundary name={name} onFault={onFault}>
        {children}
      </Boundary>
    </section>
  );
}

/** What the rail is called in each place. */
const RAIL = {
  site: 'panel.site',
  place: 'panel.pose',
  rehearse: 'panel.rehearse',
  seat: 'panel.seat',
} as const satisfies Record<Place, MessageKey>;

/** What the drawing beside the section and the panel under both are called in each place. */
const BESIDE = {
  site: { profile: 'panel.profile', readings: 'panel.readings' },
  place: { profile: 'panel.profile', readings: 'panel.readings' },
  rehearse: { profile: 'panel.strip', readings: 'panel.hole' },
  seat: { profile: 'panel.contact', readings: 'panel.readings' },
} as const satisfies Record<Place, Record<'profile' | 'readings', MessageKey>>;

/** The sheet with its places: header, sentence, pose rail, stage, section, wall profile, readings, title block. */
export function Shell({ place, header, title, parts, printed, onStageFault }: ShellProps) {
  return (
    <div className="sheet">
      {header}
      <section className="sentence" aria-label={say('sentence.label')}>
        <Boundary name={say('sentence.label')}>{parts.sentence}</Boundary>
      </section>
      <main className="place" data-place={place}>
        <Panel place="rail" name={say(RAIL[place])}>
          {parts.rail}
        </Panel>
        <Panel place="stage" name={say('panel.stage')} onFault={onStageFault}>
          {parts.stage}
        </Panel>
        <div className="right">
          <div className="pair">
            <Panel place="section" name={say('panel.section')}>
              {parts.section}
            </Panel>
            <Panel place="profile" name={say(BESIDE[place].profile)} heading>
              {parts.profile}
            </Panel>
          </div>
          <Panel place="readings" name={say(BESIDE[place].readings)}>
            {parts.readings}
          </Panel>
        </div>
      </main>
      {printed}
      <TitleBlock {...title} />
    </div>
  );
}
